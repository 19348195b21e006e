// Checks a formula that holds far too much citric acid for its base, and says what is wrong with
// it. Ends well only if the answer is what the checker's own program gives.
#include <iostream>
#include <string>

#include <sudsmark/check.h>
#include <sudsmark/rules.h>
#include <sudsmark/version.h>

namespace {

constexpr const char* formula = R"(formula "Gull"
  product bath fizzy
  forming pressed
  market GB
  batch 500 g
  piece 100 g
  bath 1 piece in 150 l at 35 C

phase "all"
  20 % sodium bicarbonate
  60 % citric acid
  q.s. corn starch
)";

}  // namespace

int main() {
  const auto rulesets = sudsmark::Rulesets::built_in();
  const auto rules = rulesets.rules();
  if (rules.empty() || rulesets.files().empty() || sudsmark::version().empty()) return 1;
  const auto run = sudsmark::check({"gull.formula", formula}, rulesets);
  for (const auto& problem : run.problems) std::cout << problem.message << '\n';
  if (run.formulas.size() != 1) return 2;
  const auto& result = run.formulas.front();
  // nobody asked for measures, so that there being none says nothing of the formula
  if (!result.filled.verdicts || result.filled.measures) return 3;
  bool found = false;
  for (const auto& finding : result.findings) {
    if (finding.kind != sudsmark::Kind::fail) continue;
    const auto rule = rulesets.rule(finding.rule);
    if (!rule || rule->title.empty() || rule->remedy.empty()) return 4;
    std::cout << finding.line << ": " << finding.message << " [" << rule->title << "]\n";
    found = found || rule->id == "acid-left-over";
  }
  std::cout << sudsmark::reminder << '\n';
  return found ? 0 : 5;
}
