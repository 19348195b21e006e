#include "science/bath.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <utility>

using namespace sudsmark::science;
using C = Component;

namespace {

Bath fizzing(NamedWater water, double bicarbonate, double citric) {
  Bath bath{.water = named_water(water), .litres = 150.0, .celsius = 38.0};
  bath.add(*find_substance("sodium bicarbonate"), bicarbonate);
  bath.add(*find_substance("citric acid"), citric);
  return bath;
}

}  // namespace

TEST_CASE("150 litres at 38 C are 149.0 kg") {
  CHECK(water_mass(Bath{}) == doctest::Approx(149.0).epsilon(0.0005));
  // Source: Kell 1975 (from memory); 0.99705 kg/l at 25 C.
  CHECK(water_density(25.0) == doctest::Approx(0.99705).epsilon(1e-5));
}

TEST_CASE("grams of a substance become mol/kg of its parts, on top of the water") {
  Bath bath{.water = named_water(NamedWater::medium), .litres = 150.0, .celsius = 38.0};
  bath.add(*find_substance("borax decahydrate"), 381.37);
  bath.add(C::potassium, 0.5);
  const Totals totals = totals_of(bath);
  const double kg = water_mass(bath);
  CHECK(totals[C::sodium] == doctest::Approx(0.90e-3 + 2.0 / kg));
  CHECK(totals[C::borate] == doctest::Approx(4.0 / kg));
  CHECK(totals[C::potassium] == doctest::Approx(0.5 / kg));
  CHECK(totals[C::calcium] == doctest::Approx(1.20e-3));
}

TEST_CASE("the monohydrate of citric acid is 9.4 % heavier for the same bath") {
  const Bath anhydrous = fizzing(NamedWater::medium, 60.0, 20.0);
  Bath hydrate = fizzing(NamedWater::medium, 60.0, 0.0);
  hydrate.add(*find_substance("citric acid monohydrate"), 20.0 * 210.139 / 192.124);
  CHECK(bath_ph(hydrate).held.ph == doctest::Approx(bath_ph(anhydrous).held.ph).epsilon(1e-9));
}

TEST_CASE("the two limits of one bath lie far apart") {
  const BathPh ph = bath_ph(fizzing(NamedWater::medium, 50.0, 25.0));
  REQUIRE(ph.held.status == SolveStatus::converged);
  REQUIRE(ph.aired.status == SolveStatus::converged);
  CHECK(ph.held.ph < 6.8);
  CHECK(ph.aired.ph > 8.6);
}

TEST_CASE("an acid and its salts differ by their sodium alone") {
  const auto held = [](std::initializer_list<std::pair<const char*, double>> content) {
    Bath bath{.water = named_water(NamedWater::soft)};
    for (const auto& [name, mol] : content) {
      const Substance* const found = find_substance(name);
      REQUIRE(found != nullptr);
      bath.add(*found, mol * found->molar_mass);
    }
    return bath_ph(bath).held.ph;
  };
  CHECK(held({{"trisodium citrate dihydrate", 0.1}}) ==
        doctest::Approx(held({{"citric acid", 0.1}, {"sodium hydroxide", 0.3}})).epsilon(1e-9));
  CHECK(held({{"sodium sesquicarbonate", 0.2}}) ==
        doctest::Approx(held({{"sodium carbonate", 0.2}, {"sodium bicarbonate", 0.2}}))
            .epsilon(1e-9));
  CHECK(held({{"borax decahydrate", 0.1}}) ==
        doctest::Approx(held({{"boric acid", 0.4}, {"sodium hydroxide", 0.2}})).epsilon(1e-9));
}

TEST_CASE("an acid without constants is booked as given off, and counted") {
  Bath bath;
  bath.add(*find_substance("sodium acid pyrophosphate"), 221.94);
  CHECK(bath.undetermined_protons == doctest::Approx(2.0));
  CHECK(bath.moles[index_of(C::sodium)] == doctest::Approx(2.0));
  CHECK(bath.moles[index_of(C::other_anion)] == doctest::Approx(4.0));
}

TEST_CASE("1 % of cream of tartar does not dissolve altogether, and its pH is the standard's") {
  std::array<double, component_count> per_gram{};
  const double mol = 1.0 / find_substance("potassium hydrogen tartrate")->molar_mass;
  per_gram[index_of(C::potassium)] = mol;
  per_gram[index_of(C::tartrate)] = mol;
  const SolutionPh solution = solution_ph(per_gram);
  REQUIRE(solution.state.status == SolveStatus::converged);
  CHECK(solution.bitartrate_left_out == doctest::Approx(10.0 / 0.990 * mol - 0.0341).epsilon(0.03));
  CHECK(std::abs(solution.state.ph - 3.557) <= 0.02);
}

TEST_CASE("1 % of bicarbonate: about 8.2, and nothing left out") {
  std::array<double, component_count> per_gram{};
  per_gram[index_of(C::sodium)] = per_gram[index_of(C::carbonate)] = 1.0 / 84.007;
  const SolutionPh solution = solution_ph(per_gram);
  CHECK(solution.bitartrate_left_out == 0.0);
  // Industry data sheet (quoted): approximately 8.3 at 25 C
  CHECK(std::abs(solution.state.ph - 8.3) <= 0.2);
  CHECK(std::isinf(solution.calcite_index));
}
