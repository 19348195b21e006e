// Traces that nobody puts in, summed over the materials that bring them: metals, 1,4-dioxane, what
// releasers can free. What a supplier has not stated stays unknown.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// One trace in the product.
struct TraceSum {
  Range share;                      ///< of the product; without an upper end while one is silent
  std::vector<std::string> stated;  ///< materials whose formula states it
  std::vector<std::string> silent;  ///< materials that may bring it, and of which nobody says
  Span place;                       ///< of the statement that brings most; nowhere if none does
};

/// The sum of a row of `trace-limits`; of a material that neither states the trace nor is of those
/// that may bring it, nothing is counted.
[[nodiscard]] TraceSum trace_sum(const View& view, const catalogue::Table& table,
                                 const catalogue::Row& row);

/// Most formaldehyde that the releasers of a formula can free, as a share of the product; without
/// an upper end where a material holds one of which no row says how much.
[[nodiscard]] Measured freed_formaldehyde(const View& view);

[[nodiscard]] std::span<const Measure> trace_measures();

}  // namespace sudsmark::measures
