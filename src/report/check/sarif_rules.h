// The rules of a SARIF log: those that something was found of, or all of them.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "front/parts.h"
#include "report/check/sarif_law.h"
#include "report/json_document.h"

namespace sudsmark::report {

class SarifRules {
 public:
  /// Lists `all`, or those of which something is noted.
  SarifRules(const front::Parts& parts, bool all) : parts_(parts), all_(all) {}

  /// What has a result of its own, or a share in one.
  void note(const FormulaResult& formula);
  void note(std::string_view rule) { noted_.insert(std::string(rule)); }

  /// In the order of the rulesets.
  [[nodiscard]] std::vector<const rules::Rule*> listed() const;
  void write(const SarifLaw& law, JsonDocument& document) const;

 private:
  [[nodiscard]] Json descriptor(const rules::Rule& rule, const SarifLaw& law) const;

  const front::Parts& parts_;
  bool all_;
  std::set<std::string, std::less<>> noted_;
};

/// Of what could not be read and only has to be spelt otherwise.
inline constexpr std::string_view spelling_rule = "spelling";

/// Whether a finding has a result of its own or a share in one: what is kept has none.
[[nodiscard]] bool has_result(const Finding& finding);

}  // namespace sudsmark::report
