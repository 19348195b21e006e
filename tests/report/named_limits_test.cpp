// The limits that a maker knows by name. Figures are worked out by hand from the formula's shares.
#include "report/named_limits.h"

#include <algorithm>

#include <sudsmark/check.h>

#include <doctest/doctest.h>

#include "front/parts.h"

using namespace sudsmark;

namespace {

constexpr const char* low_water = R"(formula "Low Water"
  product   bubble bar
  forming   pressed
  market    GB
  batch     2 kg
  piece     100 g
  bath      1 piece in 150 l at 38 C
  users     adults
phase "dry"
  44 %      sodium bicarbonate
  15 %      cream of tartar
  24 %      SLSA
  q.s.      corn starch
phase "wet"
  4 %       glycerin
  0.5 %     polysorbate 80
  1 %       rice bran oil
  3 %       "Weed"
  0.05 %    blue 1 lake
fragrance "Weed"
  limit     2.4 %
  category  9
  undeclared none
workshop "shed"
  humidity    45 - 50 %
  temperature 18 - 22 C
  scale       0.1 g to 3 kg
  mask        FFP2
)";

const report::NamedLimit* find(const std::vector<report::NamedLimit>& limits,
                               const std::string& name) {
  const auto found = std::find_if(limits.begin(), limits.end(),
                                  [&](const auto& limit) { return limit.name == name; });
  return found == limits.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("limits known by name, in the order of their ranks, each by its gravest finding") {
  const Rulesets rulesets = Rulesets::built_in();
  const RunResult run = check({"low-water.formula", low_water}, rulesets);
  REQUIRE(run.formulas.size() == 1);
  const auto limits = report::named_limits(run.formulas.front(), front::parts(rulesets));
  std::vector<std::string> names;
  for (const auto& limit : limits) names.push_back(limit.name);
  CHECK(names == std::vector<std::string>{"foamer in the bath", "scent of its certificate",
                                          "emulsifier to oil", "acid to base", "wet to dry",
                                          "scale"});

  const auto* scent = find(limits, "scent of its certificate");
  REQUIRE(scent != nullptr);
  CHECK(scent->verdict == "must change");
  CHECK(*scent->measured->low == doctest::Approx(3));
  CHECK(*scent->limit->high == doctest::Approx(2.4));

  // 0.5 of polysorbate to 1 of oil and 3 of scent
  const auto* emulsifier = find(limits, "emulsifier to oil");
  REQUIRE(emulsifier != nullptr);
  CHECK(emulsifier->verdict == "should change");
  CHECK(*emulsifier->measured->high == doctest::Approx(0.125));

  // 24 g of SLSA in a piece, 65 to 72 % of it active; what is too little and what is too much is
  // one band
  const auto* foamer = find(limits, "foamer in the bath");
  REQUIRE(foamer != nullptr);
  CHECK(foamer->verdict == "kept");
  CHECK(*foamer->measured->low == doctest::Approx(24 * 0.65).epsilon(0.02));
  CHECK(*foamer->limit->low < *foamer->measured->low);
  CHECK(*foamer->limit->high > *foamer->measured->high);

  // 1 g of lake on steps of 0.1 g is the worst weighing
  const auto* scale = find(limits, "scale");
  REQUIRE(scale != nullptr);
  CHECK(scale->finding->subject == "Blue 1 lake");
  CHECK(*scale->measured->high == doctest::Approx(10));
  for (const auto& limit : limits) {
    CAPTURE(limit.name);
    CHECK_FALSE(limit.words.empty());
  }
}
