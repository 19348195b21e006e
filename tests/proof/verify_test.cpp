#include "proof/verified.h"

#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// The findings for one rule with these examples, a line each.
std::string verified(std::string_view rule, std::string_view passes, std::string_view fails) {
  const auto example = [](std::string_view kind, std::string_view lines) {
    if (lines.empty()) return std::string();
    return "      " + std::string(kind) + ":\n        - |\n" +
           "          formula \"e\"\n            product bubble bar\n          phase \"all\"\n"
           "            " +
           std::string(lines) + "\n            q.s. bicarb\n";
  };
  Workbench bench(rule_file(std::string(rule) + "    message: no\n    examples:\n" +
                            example("passes", passes) + example("fails", fails)));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  std::string out;
  for (const auto& finding : verify(bench).findings) {
    out += finding.message + "\n";
  }
  return out;
}

constexpr std::string_view little_oil = "    expect: oils <= 2 %\n";

}  // namespace

TEST_CASE("examples that do as they should") {
  CHECK(verified(little_oil, "1 % sweet oil", "3 % sweet oil").empty());
  CHECK(
      verified("    expect: oils <= 2 %\n    sources: [memory]\n", "1 % sweet oil", "3 % sweet oil")
          .empty());
}

TEST_CASE("examples that do not") {
  CHECK(verified(little_oil, "3 % sweet oil", "1 % sweet oil") ==
        "'the-rule': example 1 that should pass gives fail (no; at most 2 %)\n"
        "'the-rule': example 1 that should fail gives pass\n");
  CHECK(verified("    when: forming = pressed\n" + std::string(little_oil), "3 % sweet oil",
                 "1 % sweet oil") ==
        "'the-rule': example 1 that should pass gives open (not known: the forming method "
        "(`forming`); would decide \"The rule\")\n"
        "'the-rule': example 1 that should fail gives pass\n");
  CHECK(verified("    when: product = shampoo bar\n" + std::string(little_oil), "1 % sweet oil",
                 "3 % sweet oil") ==
        "'the-rule': example 1 that should pass gives notApplicable\n"
        "'the-rule': example 1 that should fail gives notApplicable\n");
  CHECK(verified(little_oil, "1 % sweat oil", "") ==
        "'the-rule': example 1 that should pass cannot be read: line 4: 'sweat oil' is not a "
        "material, premix or fragrance that is known; perhaps 'Sweet oil'; a material of your own "
        "is told of in two lines: 'material \"sweat oil\"' and, below it, 'inci \"the INCI name "
        "on its bag\"'\n"
        "'the-rule' has no example that fails\n");
}
