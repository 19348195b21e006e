// The weighing part of a bench sheet: each section with its lines, scales, goes and dilutions.
#pragma once

#include "measures/bench_plan.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// "Scale A: 0.01 g steps, up to 500 g", one a line.
void write_scales(const measures::BenchPlan& plan, wording::Page& page);

/// One section of the plan; `number` counts them.
void write_section(const measures::BenchPlan& plan, const measures::BenchSection& section,
                   int number, wording::Page& page);

/// What rounding to the scales' steps does to the mass that it changes most.
void write_rounding(const measures::BenchPlan& plan, wording::Page& page);

/// A mass in g as a scale with this step shows it; three figures that count where none is known.
[[nodiscard]] std::string shown_mass(double grams, double step);

}  // namespace sudsmark::worksheet
