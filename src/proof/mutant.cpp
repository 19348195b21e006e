#include "proof/mutant.h"

#include <algorithm>

#include "rules/grammar.h"

namespace sudsmark::proof {

Breeder::Breeder(rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue)
    : ruleset_(ruleset), catalogue_(catalogue), compiler_(ruleset, catalogue, ignored_) {}

std::vector<Mutant> Breeder::of_rule(std::uint32_t rule) {
  std::vector<Mutant> out;
  breed(ruleset_.rules[rule].words->when_text, Mutant::Part::when, rule, out);
  breed(ruleset_.rules[rule].words->expect_text, Mutant::Part::expect, rule, out);
  return out;
}

std::vector<Mutant> Breeder::of_measure(std::uint32_t measure) {
  std::vector<Mutant> out;
  breed(ruleset_.measures[measure].text, Mutant::Part::measure, measure, out);
  return out;
}

void Breeder::breed(const std::string& text, Mutant::Part part, std::uint32_t subject,
                    std::vector<Mutant>& into) {
  rules::SyntaxError error;
  const auto tree = rules::parse_expression(text, error);
  if (!tree) return;  // there is none
  const rules::Placing nowhere = [](std::uint32_t, std::uint32_t) { return text::Span{}; };
  const bool measure = part == Mutant::Part::measure;
  rules::Scope scope;
  if (!measure) scope = {ruleset_.rules[subject].each, ruleset_.rules[subject].table};
  scope.sides = !measure;
  const rules::Program before = measure                      ? ruleset_.measures[subject].program
                                : part == Mutant::Part::when ? ruleset_.rules[subject].when
                                                             : ruleset_.rules[subject].expect;
  for (const Change& change : changes_of(*tree, text, catalogue_)) {
    const rules::Source source{text, change.tree, scope, nowhere};
    quantity::Dimension dimension;
    const auto program =
        measure ? compiler_.figure(source, dimension) : compiler_.truth(source, true);
    if (!program || says_the_same(before, *program)) continue;
    if (measure && !quantity::comparable(dimension, ruleset_.measures[subject].dimension)) continue;
    constexpr std::string_view heads[]{"when: ", "expect: ", ""};
    std::string words(heads[static_cast<std::size_t>(part)]);
    std::replace_copy(change.words.begin(), change.words.end(), std::back_inserter(words), '\n',
                      ' ');
    into.push_back({part, subject, change.kind, std::move(words), *program, false});
  }
}

bool Breeder::says_the_same(const rules::Program& a, const rules::Program& b) const {
  const auto& code = ruleset_.pool.code;
  const auto at = [&](std::uint32_t index) {
    return code.begin() + static_cast<std::ptrdiff_t>(index);
  };
  return a.end - a.begin == b.end - b.begin && std::equal(at(a.begin), at(a.end), at(b.begin));
}

}  // namespace sudsmark::proof
