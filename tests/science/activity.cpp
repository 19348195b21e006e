#include "science/activity.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numeric>

#include "science/species.h"

using namespace sudsmark::science;

namespace {

/// Of all species.
std::array<double, species_count> activity_coefficients(ActivityModel model, double ionic_strength,
                                                        const DebyeHueckel& constants) {
  std::array<std::uint8_t, species_count> all{};
  std::iota(all.begin(), all.end(), std::uint8_t{0});
  std::array<double, species_count> out{};
  add_activity_coefficients(model, ionic_strength, constants, all, out);
  return out;
}

}  // namespace

TEST_CASE("at infinite dilution every activity coefficient is 1") {
  for (const ActivityModel model : {ActivityModel::davies, ActivityModel::ion_sizes}) {
    for (const double gamma : activity_coefficients(model, 0.0, debye_hueckel(25.0))) {
      CHECK(gamma == doctest::Approx(1.0).epsilon(1e-12));
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
  const auto davies = activity_coefficients(ActivityModel::davies, 0.05, constants);
  const auto sized = activity_coefficients(ActivityModel::ion_sizes, 0.05, constants);
  const std::size_t calcium = find_species("Ca+2");
  const std::size_t citrate = find_species("Citrate-3");
  const std::size_t co2 = find_species("CO2");
  CHECK(davies[calcium] != doctest::Approx(sized[calcium]).epsilon(1e-3));
  CHECK(davies[citrate] == sized[citrate]);
  CHECK(davies[co2] == 1.0);
  CHECK(std::log10(sized[co2]) == doctest::Approx(0.066 * 0.05).epsilon(1e-9));
  // -A 4 sqrt(I)/(1 + B 5 sqrt(I)) + 0.165 I with A 0.51002 and B 0.32848
  CHECK(std::log10(sized[calcium]) == doctest::Approx(-0.325402).epsilon(1e-4));
}

TEST_CASE("beyond its end the activity law is held, not followed") {
  const DebyeHueckel constants = debye_hueckel(25.0);
  const auto at_cap = activity_coefficients(ActivityModel::davies, ionic_strength_cap, constants);
  const auto beyond = activity_coefficients(ActivityModel::davies, 6.0, constants);
  CHECK(at_cap == beyond);
}

TEST_CASE("water is less active by 0.017 for a mol of anything in a kilogram") {
  CHECK(water_activity(0.0) == 1.0);
  CHECK(water_activity(0.1) == doctest::Approx(0.9983).epsilon(1e-9));
}
