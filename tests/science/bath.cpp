#include "science/bath.h"

#include <doctest/doctest.h>

#include <initializer_list>
#include <utility>

#include "matter.h"

using namespace sudsmark::science;
using namespace sudsmark::testing;
using C = Component;

namespace {

Bath fizzing(NamedWater water, double bicarbonate, double citric) {
  Bath bath{.water = named_water(water), .litres = 150.0, .celsius = 38.0};
  put(bath, "sodium bicarbonate", bicarbonate);
  put(bath, "citric acid", citric);
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
  put(bath, "borax", 381.37);
  bath.moles[index_of(C::potassium)] += 0.5;
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
  put(hydrate, "citric acid monohydrate", 20.0 * 210.139 / 192.124);
  CHECK(held(hydrate).ph == doctest::Approx(held(anhydrous).ph).epsilon(1e-9));
}

TEST_CASE("the two limits of one bath lie far apart") {
  const Bath bath = fizzing(NamedWater::medium, 50.0, 25.0);
  REQUIRE(held(bath).status == SolveStatus::converged);
  REQUIRE(aired(bath).status == SolveStatus::converged);
  CHECK(held(bath).ph < 6.8);
  CHECK(aired(bath).ph > 8.6);
}

TEST_CASE("an acid and its salts differ by their sodium alone") {
  const auto ph_of = [](std::initializer_list<std::pair<const char*, double>> content) {
    Bath bath{.water = named_water(NamedWater::soft)};
    for (const auto& [name, mol] : content) {
      put(bath, name, mol * molar_mass(name));
    }
    return held(bath).ph;
  };
  CHECK(ph_of({{"trisodium citrate dihydrate", 0.1}}) ==
        doctest::Approx(ph_of({{"citric acid", 0.1}, {"test lye", 0.3}})).epsilon(1e-9));
  CHECK(ph_of({{"sodium sesquicarbonate", 0.2}}) ==
        doctest::Approx(ph_of({{"sodium carbonate", 0.2}, {"sodium bicarbonate", 0.2}}))
            .epsilon(1e-9));
  CHECK(ph_of({{"borax", 0.1}}) ==
        doctest::Approx(ph_of({{"test boric acid", 0.4}, {"test lye", 0.2}})).epsilon(1e-9));
}
