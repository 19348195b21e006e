#include "science/thermodynamics.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace sudsmark::science;

namespace {

double pk(Component acid, std::size_t step, double celsius) {
  const std::size_t i = index_of(acid) - first_acid;
  const auto protons = static_cast<std::size_t>(acids()[i].protons);
  const Thermodynamics thermo = Thermodynamics::at(celsius);
  return std::log10(thermo.beta[i][protons - step + 1] / thermo.beta[i][protons - step]);
}

}  // namespace

TEST_CASE("the constants at 25 C are those of their sources") {
  CHECK(pk(Component::tartrate, 1, 25.0) == doctest::Approx(3.036).epsilon(1e-4));
  CHECK(pk(Component::tartrate, 2, 25.0) == doctest::Approx(4.366).epsilon(1e-4));
  CHECK(pk(Component::malate, 1, 25.0) == doctest::Approx(3.459).epsilon(1e-9));
  CHECK(pk(Component::malate, 2, 25.0) == doctest::Approx(5.097).epsilon(1e-9));
  CHECK(pk(Component::lactate, 1, 25.0) == doctest::Approx(3.86).epsilon(1e-9));
  CHECK(pk(Component::adipate, 1, 25.0) == doctest::Approx(4.42).epsilon(1e-9));
  CHECK(pk(Component::adipate, 2, 25.0) == doctest::Approx(5.42).epsilon(1e-9));
  CHECK(pk(Component::phosphate, 1, 25.0) == doctest::Approx(2.148).epsilon(1e-9));
  CHECK(pk(Component::phosphate, 2, 25.0) == doctest::Approx(7.198).epsilon(1e-9));
  CHECK(pk(Component::phosphate, 3, 25.0) == doctest::Approx(12.35).epsilon(1e-9));
  CHECK(pk(Component::borate, 1, 25.0) == doctest::Approx(9.237).epsilon(1e-9));
  CHECK(pk(Component::ascorbate, 1, 25.0) == doctest::Approx(4.17).epsilon(1e-9));
  CHECK(pk(Component::sulfate, 1, 25.0) == doctest::Approx(1.987).epsilon(1e-9));
  CHECK(pk(Component::phthalate, 1, 25.0) == doctest::Approx(2.950).epsilon(1e-9));
  CHECK(pk(Component::phthalate, 2, 25.0) == doctest::Approx(5.408).epsilon(1e-9));
  CHECK(pk(Component::fatty_acid, 1, 25.0) == doctest::Approx(4.9).epsilon(1e-9));
}

TEST_CASE("the ion pairs at 25 C are those of their sources") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  // NaHCO3: the source's function gives -0.306 at 25 C beside its printed -0.433, and the reference
  // runs follow the function.
  const double expected[] = {3.224,         6.27,   2.98,   11.399, 10.329 - 0.306,
                             10.329 - 0.35, -12.78, -11.44, 4.87,   9.26,
                             12.257,        4.89,   8.91,   12.2,   1.1};
  for (std::size_t i = 0; i < pair_count; ++i) {
    CAPTURE(species()[ion_pairs()[i].species].name);
    CHECK(std::abs(std::log10(thermo.pair[i]) - expected[i]) <= 0.016);
  }
}

TEST_CASE("acids without an enthalpy keep their constants, the others do not") {
  for (const Component acid : {Component::malate, Component::lactate, Component::adipate,
                               Component::ascorbate, Component::fatty_acid}) {
    CHECK(pk(acid, 1, 38.0) == doctest::Approx(pk(acid, 1, 25.0)).epsilon(1e-12));
  }
  for (const Component acid : {Component::carbonate, Component::citrate, Component::tartrate,
                               Component::phosphate, Component::borate, Component::sulfate}) {
    CHECK(std::abs(pk(acid, 1, 38.0) - pk(acid, 1, 25.0)) > 0.005);
  }
}

TEST_CASE("acid taken by pH 6 to 8 at 0.015 mol/kg ionic strength, in protons (computed)") {
  // Derived figures beside the neutralising values, reproduced from the constants by Davies.
  struct Row {
    Component acid;
    double offered;  // protons of the substance
    double at_6;
    double at_65;
    double at_7;
    double at_8;
  };
  const Row rows[] = {{Component::citrate, 3, 2.394, 2.695, 2.880, 2.987},
                      {Component::tartrate, 2, 1.984, 1.995, 1.998, 2.000},
                      {Component::malate, 2, 1.920, 1.973, 1.991, 1.999},
                      {Component::adipate, 2, 1.839, 1.945, 1.982, 1.998},
                      {Component::lactate, 1, 0.994, 0.998, 0.999, 1.000},
                      {Component::phosphate, 2, 0.084, 0.225, 0.478, 0.902}};
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  const auto given_off = [&](const Row& row, double ph) {
    const std::size_t i = index_of(row.acid) - first_acid;
    const AcidSystem& acid = acids()[i];
    const double unit = 0.51002 * (std::sqrt(0.015) / (1.0 + std::sqrt(0.015)) - 0.3 * 0.015);
    double sum = 0.0;
    double held = 0.0;
    for (int n = 0; n <= acid.protons; ++n) {
      const int z = acid.base_charge + n;
      const double log_gammas = unit * (z * z - acid.base_charge * acid.base_charge);
      const double form =
          thermo.beta[i][static_cast<std::size_t>(n)] * std::pow(10.0, log_gammas - ph * n);
      sum += form;
      held += n * form;
    }
    return row.offered - held / sum;
  };
  for (const Row& row : rows) {
    CAPTURE(component_name(row.acid));
    CHECK(std::abs(given_off(row, 6.0) - row.at_6) <= 0.002);
    CHECK(std::abs(given_off(row, 6.5) - row.at_65) <= 0.002);
    CHECK(std::abs(given_off(row, 7.0) - row.at_7) <= 0.002);
    CHECK(std::abs(given_off(row, 8.0) - row.at_8) <= 0.002);
  }
}
