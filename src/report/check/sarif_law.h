// The entries of the law that findings and rules point to, as SARIF's taxonomies.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "front/parts.h"
#include "report/json_document.h"

namespace sudsmark::report {

/// One taxonomy for each file of rules whose authority is law; a taxon for each entry that a
/// finding names ("EU and NI: Annex III 67") and for each place of the law that a rule leans on.
class SarifLaw {
 public:
  /// Of these rules, and of what the run found of them.
  SarifLaw(const front::Parts& parts, const std::vector<const rules::Rule*>& listed,
           const RunResult& run);

  [[nodiscard]] bool empty() const { return taxonomies_.empty(); }
  [[nodiscard]] Json taxonomies() const;
  /// References to all taxonomies, for the driver.
  [[nodiscard]] Json supported() const;
  /// The relationships of a rule; empty if it is no law.
  [[nodiscard]] Json relationships(const rules::Rule& rule) const;
  /// The taxa of a finding of that rule; empty if it is no law.
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
  [[nodiscard]] Json reference(const Taxonomy& taxonomy, const std::string& id) const;

  const front::Parts& parts_;
  std::vector<Taxonomy> taxonomies_;
  std::map<std::uint32_t, std::size_t> by_file_;
};

}  // namespace sudsmark::report
