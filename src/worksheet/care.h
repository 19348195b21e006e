// Care at the bench that no hazard statement asks for by itself: heat, wet hands, work alone,
// loads, static, the air of the room, and the law behind it.
#pragma once

#include "measures/registry.h"
#include "measures/task_hazards.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

void write_care(const measures::View& whole, const measures::HandledHazards& hazards,
                wording::Page& page);
/// Alcohol while it dries, and the gas of a batch that gets wet; nothing where there is neither.
void write_air(const measures::View& whole, wording::Page& page);
/// The law of the workplace by market, a line each.
void write_workplace_law(const blend::Blend& blend, wording::Page& page);

}  // namespace sudsmark::worksheet
