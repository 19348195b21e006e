// Traces by market: what the formula states of them against what each market says, and findings of
// the rules that are `decided by: traces`.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "dossier/dossier.h"
#include "measures/trace_sums.h"
#include "rules/ruleset.h"

namespace sudsmark::dossier {

/// A row of `trace-limits` that the product has to do with: something states the trace, or may
/// bring it.
struct TraceOf {
  std::string market;
  const catalogue::Row* row = nullptr;
  measures::TraceSum sum;
};
[[nodiscard]] std::vector<TraceOf> traces_of(const blend::Blend& blend, const DossierAsk& ask);

/// What is silent, by trace, with each market's rows taken together: "Lead and Arsenic of 'Mica'".
struct SilentTraces {
  std::vector<std::string> traces;
  std::vector<std::string> materials;
  std::size_t rows = 0;  ///< limits that wait for it
};
[[nodiscard]] std::vector<SilentTraces> silent_traces(const std::vector<TraceOf>& traces);

/// A trace above what a market says, or a paper that has to be asked for.
struct TraceFault {
  std::uint32_t rule = 0;  ///< index into the ruleset's rules
  Kind kind = Kind::fail;
  Level level = Level::warning;
  std::string message;
  std::string subject;
  text::Span place;
  bool paper = false;
};
[[nodiscard]] std::vector<TraceFault> trace_faults(const blend::Blend& blend,
                                                   const rules::Ruleset& ruleset,
                                                   const DossierAsk& ask);

}  // namespace sudsmark::dossier
