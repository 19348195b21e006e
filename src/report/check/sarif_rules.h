// The rules of a SARIF log: those that something was found of, or all of them.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "front/parts.h"
#include "report/check/sarif_law.h"
#include "report/json_document.h"

namespace sudsmark::report {

class SarifRules {
 public:
  /// `all`, or those that a run has a result of.
  SarifRules(const front::Parts& parts, const RunResult& run, bool all);

  /// Where a rule stands in the list of the log.
  [[nodiscard]] std::optional<std::size_t> index(std::string_view id) const;
  /// The rule of an id, in the list or not.
  [[nodiscard]] const rules::Rule* rule(std::string_view id) const;
  [[nodiscard]] const std::vector<const rules::Rule*>& list() const { return list_; }
  void write(const SarifLaw& law, JsonDocument& document) const;

 private:
  [[nodiscard]] Json descriptor(const rules::Rule& rule, const SarifLaw& law) const;

  const front::Parts& parts_;
  std::vector<const rules::Rule*> list_;
  std::map<std::string_view, std::size_t> index_;
};

/// Of what could not be read and only has to be spelt otherwise.
inline constexpr std::string_view spelling_rule = "spelling";

/// Whether a finding has a result of its own or a share in one: what is kept has none.
[[nodiscard]] bool has_result(const Finding& finding);

}  // namespace sudsmark::report
