// Neighbours of a draft: formulas that leave out, say otherwise or name otherwise one thing, among
// what its rule asks about.
#pragma once

#include <string>
#include <vector>

#include "catalogue/catalogue.h"
#include "proof/draft.h"
#include "rules/ruleset.h"

namespace sudsmark::proof {

class Neighbours {
 public:
  Neighbours(const rules::Rule& rule, const rules::Ruleset& ruleset,
             const catalogue::Catalogue& catalogue);

  /// Adds the neighbours of a draft; not all of them can be read.
  void add_of(const Draft& draft, std::vector<Draft>& out) const;

 private:
  static void leave_out(const Draft& draft, std::vector<Draft>& out);
  static void put_in_doubt(const Draft& draft, std::vector<Draft>& out);
  void make_own(const Draft& draft, std::vector<Draft>& out) const;
  void say_otherwise(const Draft& draft, std::vector<Draft>& out) const;
  void take_other_materials(const Draft& draft, std::vector<Draft>& out) const;

  void gather_words(const rules::Rule& rule, const rules::Ruleset& ruleset);
  void add_materials(const std::string& word);
  void add_rows(const catalogue::Table& table);

  const catalogue::Catalogue& catalogue_;
  std::vector<std::string> words_;      ///< of the rule's selections
  std::vector<std::string> materials_;  ///< to be tried in the place of others
};

}  // namespace sudsmark::proof
