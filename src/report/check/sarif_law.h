// The entries of the law that findings and rules point to, as SARIF's taxonomies.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "front/parts.h"
#include "report/json_document.h"
#include "report/rule_index.h"

namespace sudsmark::report {

/// One taxonomy for each file of rules whose authority is law; a taxon for each entry that a
/// finding names ("EU and NI: Annex III 67") and for each place of the law that a rule leans on.
class SarifLaw {
 public:
  explicit SarifLaw(const front::Parts& parts) : parts_(parts) {}

  /// The entries that findings of a formula name.
  void note(const FormulaResult& formula, const RuleIndex& rules);
  /// The places that a rule leans on; what was noted of other rules' files is left out.
  void list(const std::vector<const rules::Rule*>& rules);

  [[nodiscard]] bool empty() const { return taxonomies_.empty(); }
  [[nodiscard]] Json taxonomies() const;
  /// References to all taxonomies, for the driver.
  [[nodiscard]] Json supported() const;
  /// The relationships of a rule; empty if it is no law.
  [[nodiscard]] Json relationships(const rules::Rule& rule) const;
  /// The taxa of a finding of that rule; empty if it is no law, or names no entry. They are told by
  /// their ids: results leave before it is known which entries there are.
  [[nodiscard]] Json taxa(const rules::Rule& rule, const Finding& finding) const;

 private:
  struct Taxonomy {
    std::uint32_t file = 0;
    std::vector<std::string> taxa;
    std::map<std::string, std::size_t> index;
  };

  void add(Taxonomy& taxonomy, const std::string& id);
  [[nodiscard]] std::vector<std::string> places(const rules::Rule& rule) const;
  [[nodiscard]] const Taxonomy* of(const rules::Rule& rule) const;
  [[nodiscard]] bool is_law(const rules::Rule& rule) const;

  const front::Parts& parts_;
  std::map<std::uint32_t, std::vector<std::string>> noted_;  ///< by file, each once
  std::vector<Taxonomy> taxonomies_;
  std::map<std::uint32_t, std::size_t> by_file_;
};

}  // namespace sudsmark::report
