// What is settled before any figure is asked for is settled as with all figures: the machine that
// runs every condition in full is the judge.
#include <doctest/doctest.h>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "property/recipes.h"
#include "rules/check.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

struct Asking {
  std::vector<rules::Verdict> verdicts;
  blend::MissingTable missing;
};

/// `in_full`: somebody wants to know what every test came to, so that every one is run.
Asking asked(const rules::Ruleset& ruleset, const blend::Blend& blend, bool in_full) {
  Asking out;
  std::vector<rules::Asked> tests;
  rules::EvaluateOptions options;
  options.on = *on_a_day().on;
  if (in_full) options.asked = &tests;
  out.verdicts = rules::evaluate(ruleset, blend, out.missing, options);
  return out;
}

}  // namespace

TEST_CASE("conditions that are settled without figures are settled as with them") {
  const Rulesets rulesets = Rulesets::built_in();
  const front::Parts& parts = front::parts(rulesets);
  std::size_t applied = 0;
  for (std::uint64_t seed = 0; seed < 150; ++seed) {
    const std::string text = recipe(seed).text();
    CAPTURE(text);
    text::Sources sources;
    text::Diagnostics diagnostics;
    const auto file = sources.add("bar.formula", text);
    const auto card = formula::assemble(sources, file, {}, diagnostics);
    REQUIRE(card.has_value());
    const auto blend = blend::mix(*card, parts.catalogue, diagnostics);
    REQUIRE(blend.has_value());
    const Asking quick = asked(parts.ruleset, *blend, false);
    const Asking full = asked(parts.ruleset, *blend, true);
    REQUIRE(quick.verdicts.size() == full.verdicts.size());
    REQUIRE(quick.missing.items().size() == full.missing.items().size());
    for (std::size_t at = 0; at < full.verdicts.size(); ++at) {
      const rules::Verdict& one = quick.verdicts[at];
      const rules::Verdict& other = full.verdicts[at];
      CAPTURE(parts.ruleset.rules[other.rule].id);
      CHECK(one.rule == other.rule);
      CHECK(one.kind == other.kind);
      CHECK(one.subject == other.subject);
      CHECK(one.message == other.message);
      CHECK(one.missing == other.missing);
      applied += one.kind == Kind::not_applicable ? 0 : 1;
    }
  }
  CHECK(applied > 150 * 50);
}
