// The part of a bench sheet about the person: what each task asks for, what to mind, and what to do
// when it went wrong.
#pragma once

#include "measures/registry.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// Control approach, hazards, bounds of dust and combustible dust of each task.
void write_tasks(const measures::View& whole, wording::Page& page);

/// Precautions, fire and cleaning, first aid, for all that the tasks and premixes handle.
void write_cautions(const measures::View& whole, wording::Page& page);

/// How premixes keep, by the humidity of the room.
void write_keeping(const measures::View& whole, wording::Page& page);

}  // namespace sudsmark::worksheet
