// The part of a bench sheet about the person: what each task asks for, what to mind, and what to do
// when it went wrong.
#pragma once

#include "measures/registry.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// Control approach, hazards, bounds of dust and combustible dust of each task.
void write_tasks(const measures::View& whole, wording::Page& page);

/// What to wear and where no flame may be, for all that the tasks and premixes handle: before the
/// first powder is opened.
void write_precautions(const measures::View& whole, wording::Page& page);

/// Cleaning and first aid, for the same.
void write_cautions(const measures::View& whole, wording::Page& page);

/// How premixes keep, by the humidity of the room.
void write_keeping(const measures::View& whole, wording::Page& page);

}  // namespace sudsmark::worksheet
