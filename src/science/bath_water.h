// The water before anything is put in, as totals in mol/kg.
#pragma once

#include "science/equilibrium.h"

namespace sudsmark::science {

/// Tap waters by name. In mmol/kg: soft Ca 0.20 Mg 0.06 Na 0.35 Cl 0.2704 DIC 0.6392; medium
/// Ca 1.20 Mg 0.35 Na 0.90 Cl 1.0020 DIC 3.1882; hard Ca 2.60 Mg 0.80 Na 1.20 Cl 2.0040 DIC 6.4656;
/// pure nothing. Figures of the formula language's definition.
enum class NamedWater { pure, soft, medium, hard };

[[nodiscard]] Totals named_water(NamedWater water);

/// A supplier's water report.
struct WaterReport {
  double alkalinity = 0.0;  ///< [mg/l as CaCO3]
  double hardness = 0.0;    ///< calcium and magnesium [mg/l as CaCO3]
  double ph = 7.5;          ///< as measured in the laboratory, taken to be at 25 C
};

struct WaterTotals {
  SolveStatus status = SolveStatus::outside_bounds;
  Totals totals;
};

/// Totals of a water with that report.
/// Assumptions: alkalinity is carbonate; calcium to magnesium as in the named medium water (1.20 to
/// 0.35); what the charges lack is chloride, or sodium where the water is softer than it is
/// alkaline; a litre counts as a kilogram (0.3 %, below 0.002 pH).
/// Errors: outside_bounds for a negative or absurd figure (alkalinity or hardness above
/// 2000 mg/l, pH outside 4.5 to 11), not_converged for a pH that this alkalinity cannot have (more
/// CO2 than under one atmosphere, or none at all).
[[nodiscard]] WaterTotals water_of_report(const WaterReport& report,
                                          const BathModel& model = full_model);

}  // namespace sudsmark::science
