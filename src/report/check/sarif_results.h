// The results of a SARIF log: what was found of a formula, and what else is a result.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/report.h>

#include "report/check/sarif_law.h"
#include "report/json_document.h"
#include "report/rule_index.h"

namespace sudsmark::report {

/// As elements of the list that the document has begun. `compared`: with a baseline.
void write_results(const FormulaResult& formula, bool compared, const RuleIndex& rules,
                   const SarifLaw& law, const ReportOptions& options, JsonDocument& document);

/// Of what could not be read and only has to be spelt otherwise. That it stopped the reading is
/// told with the invocation; only a result can bring a change along.
[[nodiscard]] Json misspelt_result(const Problem& problem, const std::string& fingerprint,
                                   bool compared);

/// Of what a baseline has and the run has not.
[[nodiscard]] Json absent_result(const AbsentFinding& finding);

/// What the tool had to say of its input.
[[nodiscard]] Json notification(const Problem& problem, std::string_view level);

}  // namespace sudsmark::report
