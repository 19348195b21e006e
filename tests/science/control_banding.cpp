#include "science/control_banding.h"

#include <doctest/doctest.h>

#include <array>
#include <string_view>

#include "science/hazard_statement.h"

using namespace sudsmark::science;

TEST_CASE("the worst statement decides, and all of its group are named") {
  const std::array<std::string_view, 4> slsa{"H315", "H318", "H335", "H412"};
  const GroupResult result = hazard_group(slsa);
  CHECK(result.group == HazardGroup::c);
  REQUIRE(result.decided_by.size() == 2);
  CHECK(result.decided_by[0] == "H318");
  CHECK(result.decided_by[1] == "H335");
  CHECK(result.disagreements.empty());
}

TEST_CASE("no statement: group A, decided by none") {
  const GroupResult result = hazard_group({});
  CHECK(result.group == HazardGroup::a);
  CHECK(result.decided_by.empty());
  CHECK(group_letter(result.group) == "A");
}

TEST_CASE("kilograms of a dusting surfactant that damages eyes: containment") {
  const ControlApproach result =
      control_approach(HazardGroup::c, AmountBand::medium, DustinessWord::high);
  CHECK(result.approach == 3);
  CHECK(approach_words(result.approach) == "containment");
}

TEST_CASE("a worse group, more powder or more dust never asks for less") {
  for (int g = 0; g < 5; ++g) {
    for (int a = 0; a < 3; ++a) {
      for (int d = 0; d < 3; ++d) {
        const auto approach = [](int group, int amount, int word) {
          return control_approach(static_cast<HazardGroup>(group), static_cast<AmountBand>(amount),
                                  static_cast<DustinessWord>(word))
              .approach;
        };
        const int here = approach(g, a, d);
        if (g < 4) CHECK(approach(g + 1, a, d) >= here);
        if (a < 2) CHECK(approach(g, a + 1, d) >= here);
        if (d < 2) CHECK(approach(g, a, d + 1) >= here);
      }
    }
  }
}

TEST_CASE("plain codes of statements") {
  CHECK(plain_code("H360FD") == "H360");
  CHECK(plain_code(" H350i\t") == "H350");
  CHECK(plain_code("EUH066") == "EUH066");
  CHECK(plain_code("H3") == "H3");
  CHECK(plain_code("  ").empty());
}
