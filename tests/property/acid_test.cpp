// More acid in the place of something that is neither acid nor base never raises the bath's pH,
// with its carbon dioxide in the water and without; more bicarbonate never lowers it.
#include <doctest/doctest.h>

#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// A dose of 100 g in which an inert salt makes room for what is added.
std::string salts(double acid, const std::string& name, double base, const std::string& water) {
  return "formula \"Bath\"\n  product bath salts\n  bath 100 g in 150 l at 38 C\n  water " + water +
         "\nphase \"all\"\n  " + figure(acid) + " % " + name + "\n  " + figure(base) +
         " % sodium bicarbonate\n  q.s. sodium chloride\n";
}

Figure measured(const FormulaResult& result, const std::string& name) {
  for (const MeasureResult& one : result.measures) {
    if (one.name == name) return one.figure;
  }
  FAIL("no measure " << name);
  return {};
}

/// pH that an equilibrium's last digits may be off.
constexpr double slack = 1e-6;

}  // namespace

TEST_CASE("more acid never raises the pH of the bath") {
  const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options = on_a_day();
  options.verdicts = false;
  options.particulars = false;
  for (const std::string water : {"pure", "soft", "medium", "hard"}) {
    for (const std::string acid :
         {"citric acid", "tartaric acid", "malic acid", "cream of tartar", "lactic acid"}) {
      for (const double base : {5.0, 30.0, 60.0}) {
        std::optional<double> first;
        std::optional<Figure> closed;
        std::optional<Figure> aired;
        for (const double share : {0.1, 1.0, 4.0, 10.0, 20.0, 30.0, 38.0}) {
          const std::string text = salts(share, acid, base, water);
          CAPTURE(text);
          const FormulaResult result = result_of(text, rulesets, options);
          for (const auto& one :
               {std::pair{"bath.ph", &closed}, std::pair{"bath.ph_aired", &aired}}) {
            const char* const name = one.first;
            auto* const last = one.second;
            const Figure now = measured(result, name);
            REQUIRE(now.low);
            REQUIRE(now.high);
            CHECK(*now.low > 2);
            CHECK(*now.high < 12);
            if (*last) {
              CHECK_MESSAGE(*now.low <= *(*last)->low + slack, name);
              CHECK_MESSAGE(*now.high <= *(*last)->high + slack, name);
            }
            *last = now;
          }
          if (!first) first = closed->low;
        }
        // and it does fall, so that the test could fail
        CHECK(*closed->low < *first - 0.05);
      }
    }
  }
}

TEST_CASE("more bicarbonate never lowers it where acid is there") {
  const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options = on_a_day();
  options.verdicts = false;
  options.particulars = false;
  for (const std::string water : {"soft", "hard"}) {
    for (const std::string acid : {"citric acid", "cream of tartar"}) {
      std::optional<double> last;
      for (const double base : {1.0, 5.0, 15.0, 30.0, 50.0, 70.0}) {
        const std::string text = salts(25, acid, base, water);
        CAPTURE(text);
        const Figure now = measured(result_of(text, rulesets, options), "bath.ph_aired");
        REQUIRE(now.low);
        if (last) CHECK(*now.low >= *last - slack);
        last = *now.low;
      }
    }
  }
}
