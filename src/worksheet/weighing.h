// The weighing part of a bench sheet: each section with its lines, scales, goes and dilutions.
#pragma once

#include <string>
#include <vector>

#include "measures/bench_plan.h"
#include "wording/page.h"

namespace sudsmark::worksheet {

/// "Scale A: 0.01 g steps, up to 500 g", one a line.
void write_scales(const measures::BenchPlan& plan, wording::Page& page);

/// One section of the plan; `number` counts them. A portion begins with its share of the mix.
void write_section(const blend::Blend& blend, const measures::BenchPlan& plan,
                   const measures::BenchSection& section, int number, wording::Page& page);

/// What rounding to the scales' steps does to the mass that it changes most.
void write_rounding(const measures::BenchPlan& plan, wording::Page& page);

/// How many pieces the batch makes, and what is left over.
void write_pieces(const blend::Blend& blend, const measures::BenchPlan& plan, wording::Page& page);

/// A figure as a scale with this step shows it, rounded to the step; three figures that count where
/// none is known.
[[nodiscard]] std::string shown_mass(double figure, double step);
/// A mass [g] with the unit in which a scale of this step [g] shows it: "12.50 g", "1.35 oz".
[[nodiscard]] std::string mass_words(double grams, double step);
/// The same of a mass that no scale shows: three figures that count.
[[nodiscard]] std::string small_mass(double grams, double step);
/// The coarsest step [g].
[[nodiscard]] double coarsest(const std::vector<science::Scale>& scales);

}  // namespace sudsmark::worksheet
