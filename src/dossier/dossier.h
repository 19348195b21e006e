// The dossier of a blend: headings 1 to 10 of part A of Annex I, and the questions that are open.
// The room's own side of <sudsmark/dossier.h>.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include <sudsmark/dossier.h>
#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::dossier {

/// For which markets, and on which day.
struct DossierAsk {
  std::vector<std::string> markets;
  std::chrono::year_month_day on;
};

/// `checked` has verdicts, measures, particulars and labels filled.
[[nodiscard]] Dossier dossier_of(const blend::Blend& blend, FormulaResult checked,
                                 const DossierAsk& ask);

}  // namespace sudsmark::dossier
