// COSHH Essentials (HSG193): hazard groups and exposure bands (quoted); amounts, target
// concentrations and the table of approaches (from memory).
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "science/control_banding.h"

using namespace sudsmark::science;

namespace {
constexpr std::array groups{HazardGroup::a, HazardGroup::b, HazardGroup::c, HazardGroup::d,
                            HazardGroup::e};
constexpr std::array amounts{AmountBand::small, AmountBand::medium, AmountBand::large};
constexpr std::array words{DustinessWord::low, DustinessWord::medium, DustinessWord::high};

HazardGroup group_of(std::string_view statement) {
  const std::array<std::string_view, 1> one{statement};
  return hazard_group(one).group;
}
}  // namespace

TEST_CASE("HSG193 (quoted): groups of the statements that bath powders carry") {
  CHECK(group_of("H319") == HazardGroup::a);
  CHECK(group_of("H302") == HazardGroup::b);
  CHECK(group_of("H335") == HazardGroup::c);
  CHECK(group_of("H318") == HazardGroup::c);
  CHECK(group_of("H317") == HazardGroup::c);
  CHECK(group_of("H360FD") == HazardGroup::d);
  CHECK(group_of("H334") == HazardGroup::e);
  CHECK(group_of("H412") == HazardGroup::a);
}

TEST_CASE("HSG193 (quoted): exposure bands by amount and dustiness") {
  constexpr int expected[3][3] = {{1, 1, 2}, {2, 3, 3}, {2, 4, 4}};
  for (std::size_t a = 0; a < 3; ++a) {
    for (std::size_t d = 0; d < 3; ++d)
      CHECK(control_approach(HazardGroup::a, amounts[a], words[d]).exposure == expected[a][d]);
  }
}

TEST_CASE("HSG193 (from memory): amounts") {
  CHECK(amount_band(0.999) == AmountBand::small);
  CHECK(amount_band(1.0) == AmountBand::medium);
  CHECK(amount_band(999) == AmountBand::medium);
  CHECK(amount_band(1000) == AmountBand::large);
}

TEST_CASE("HSG193: the two tellings differ in one cell, and the stricter is followed and told") {
  int different = 0;
  for (const HazardGroup group : groups) {
    for (const AmountBand amount : amounts) {
      for (const DustinessWord word : words) {
        const ControlApproach result = control_approach(group, amount, word);
        CHECK(result.approach == std::max(result.by_matrix, result.by_recall));
        CHECK(result.disagreements.empty() == (result.by_matrix == result.by_recall));
        if (result.by_matrix != result.by_recall) ++different;
      }
    }
  }
  CHECK(different == 1);
  const ControlApproach cell =
      control_approach(HazardGroup::a, AmountBand::medium, DustinessWord::high);
  CHECK(cell.by_matrix == 1);
  CHECK(cell.by_recall == 2);
  CHECK(cell.approach == 2);
}

TEST_CASE("HSG193 against another public tool: the group of H319 is told as disputed") {
  const std::array<std::string_view, 2> eye{"H319", "H412"};
  const GroupResult result = hazard_group(eye);
  CHECK(result.group == HazardGroup::a);
  REQUIRE(result.disagreements.size() == 1);
  CHECK(result.disagreements.front().about == "hazard group of H319");
  REQUIRE(result.not_listed.size() == 1);
  CHECK(result.not_listed.front() == "H412");
}
