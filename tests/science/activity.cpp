#include "science/activity.h"

#include <doctest/doctest.h>

#include <cmath>

#include "science/species.h"

using namespace sudsmark::science;

TEST_CASE("at infinite dilution every activity coefficient is 1") {
  for (const ActivityModel model : {ActivityModel::davies, ActivityModel::ion_sizes}) {
    const ActivityLaw law(model, 0.0, debye_hueckel(25.0));
    for (const Species& one : species()) {
      CHECK(law.coefficient(one) == doctest::Approx(1.0).epsilon(1e-12));
    }
  }
}

TEST_CASE("Davies at 0.1 mol/kg and 25 C") {
  // sqrt(0.1)/(1 + sqrt(0.1)) - 0.03 = 0.210253; times A = 0.51002
  CHECK(log_gamma_davies(1, 0.1, 0.51002) == doctest::Approx(-0.107233).epsilon(1e-5));
  CHECK(log_gamma_davies(-2, 0.1, 0.51002) == doctest::Approx(-0.428933).epsilon(1e-5));
  CHECK(log_gamma_davies(3, 0.1, 0.51002) == doctest::Approx(-0.965099).epsilon(1e-5));
  CHECK(log_gamma_davies(0, 0.1, 0.51002) == 0.0);
}

TEST_CASE("an ion size replaces Davies only where the model wants it") {
  const DebyeHueckel constants = debye_hueckel(25.0);
  const ActivityLaw davies(ActivityModel::davies, 0.05, constants);
  const ActivityLaw sized(ActivityModel::ion_sizes, 0.05, constants);
  const Species& calcium = species()[find_species("Ca+2")];
  const Species& citrate = species()[find_species("Citrate-3")];
  const Species& co2 = species()[find_species("CO2")];
  CHECK(davies.coefficient(calcium) != doctest::Approx(sized.coefficient(calcium)).epsilon(1e-3));
  CHECK(davies.coefficient(citrate) == sized.coefficient(citrate));
  CHECK(davies.coefficient(co2) == 1.0);
  CHECK(std::log10(sized.coefficient(co2)) == doctest::Approx(0.066 * 0.05).epsilon(1e-9));
  // -A 4 sqrt(I)/(1 + B 5 sqrt(I)) + 0.165 I with A 0.51002 and B 0.32848
  CHECK(std::log10(sized.coefficient(calcium)) == doctest::Approx(-0.325402).epsilon(1e-4));
  for (const int z : {1, 2, 3}) {
    const Species one{"", z, {}};
    CHECK(std::log10(davies.coefficient(one)) ==
          doctest::Approx(log_gamma_davies(z, 0.05, constants.a)).epsilon(1e-12));
  }
}

TEST_CASE("beyond its end the activity law is held, not followed") {
  const DebyeHueckel constants = debye_hueckel(25.0);
  const ActivityLaw at_cap(ActivityModel::davies, ionic_strength_cap, constants);
  const ActivityLaw beyond(ActivityModel::davies, 6.0, constants);
  for (const Species& one : species()) CHECK(at_cap.coefficient(one) == beyond.coefficient(one));
}

TEST_CASE("water is less active by 0.017 for a mol of anything in a kilogram") {
  CHECK(water_activity(0.0) == 1.0);
  CHECK(water_activity(0.1) == doctest::Approx(0.9983).epsilon(1e-9));
}
