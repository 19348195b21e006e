// Labels of a blend, market by market: the room's own side of FormulaResult::labels.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "blend/blend.h"

namespace sudsmark::label {

/// For whom and when a label is written.
struct LabelAsk {
  std::string market;
  std::chrono::year_month_day on;
  std::chrono::year_month_day counted_from;  ///< Blend::counted_from
};

/// The markets that a formula names, or those named in their place.
[[nodiscard]] std::vector<std::string> label_markets(const blend::Blend& blend,
                                                     const std::vector<std::string>& instead);
/// What one market asks for.
[[nodiscard]] MarketLabel label_for(const blend::Blend& blend, const LabelAsk& ask);

/// The words that a substance or the kind of product puts on a label.
void add_label_words(const blend::Blend& blend, const LabelAsk& ask, std::vector<LabelWords>& out);
void add_label_points(const blend::Blend& blend, const LabelAsk& ask, std::vector<LabelPoint>& out);
void add_label_duties(const blend::Blend& blend, const LabelAsk& ask, std::vector<LabelPaper>& out);
/// What a safety assessment asks for and the formula does not answer.
void add_papers(const blend::Blend& blend, const std::vector<std::string>& markets,
                std::vector<LabelPaper>& out);

}  // namespace sudsmark::label
