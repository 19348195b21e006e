#include "science/equilibrium.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "science/bath.h"

namespace {

using namespace sudsmark::science;
using C = Component;

/// Hard water with a bit of everything in it.
Totals busy_bath() {
  Totals totals = named_water(NamedWater::hard);
  for (std::size_t i = 0; i < component_count; ++i) {
    totals.mol_per_kg[i] += 1e-4 * static_cast<double>(i + 1);
  }
  totals[C::sodium] += 0.01;
  totals[C::carbonate] += 0.005;
  return totals;
}

double activity(const Equilibrium& state, const char* name) {
  const std::size_t index = find_species(name);
  REQUIRE(index < species_count);
  return state.activity(index);
}

}  // namespace

TEST_CASE("every total is found again in its species, and the charges cancel") {
  const Totals totals = busy_bath();
  for (const BathModel& model : {simple_model, full_model}) {
    const Equilibrium state = equilibrate(totals, Thermodynamics::at(38.0), closed_to_air(), model);
    REQUIRE(state.status == SolveStatus::converged);
    std::array<double, component_count> found{};
    for (std::size_t i = 0; i < first_acid; ++i) found[i] = state.molality[first_ion_species + i];
    for (const AcidSystem& acid : acids()) {
      for (std::size_t n = 0; n <= static_cast<std::size_t>(acid.protons); ++n) {
        found[index_of(acid.component)] += state.molality[acid.first_species + n];
      }
    }
    for (const IonPair& pair : ion_pairs()) {
      found[pair.metal] += state.molality[pair.species];
      if (pair.acid != IonPair::no_acid) {
        found[index_of(acids()[pair.acid].component)] += state.molality[pair.species];
      }
    }
    for (std::size_t i = 0; i < component_count; ++i) {
      CAPTURE(component_name(static_cast<Component>(i)));
      CHECK(found[i] == doctest::Approx(totals.mol_per_kg[i]).epsilon(1e-9));
    }
    CHECK(state.dic == doctest::Approx(totals[C::carbonate]).epsilon(1e-9));
    CHECK(std::abs(state.charge_error) < 1e-9);
  }
}

TEST_CASE("every reaction is at its constant") {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  const Equilibrium state = equilibrate(busy_bath(), thermo);
  REQUIRE(state.status == SolveStatus::converged);
  const double h = std::pow(10.0, -state.ph);
  CHECK(activity(state, "H+") == doctest::Approx(h).epsilon(1e-9));
  CHECK(activity(state, "H+") * activity(state, "OH-") / state.water_activity ==
        doctest::Approx(thermo.water).epsilon(1e-7));
  for (std::size_t i = 0; i < acid_count; ++i) {
    const AcidSystem& acid = acids()[i];
    const double base = state.activity(acid.first_species);
    for (int n = 1; n <= acid.protons; ++n) {
      const bool releases = acid.water_released_at > 0 && n >= acid.water_released_at;
      const double product = state.activity(acid.first_species + static_cast<std::size_t>(n)) *
                             (releases ? state.water_activity : 1.0);
      CAPTURE(component_name(acid.component));
      CAPTURE(n);
      CHECK(product / (base * std::pow(h, n)) ==
            doctest::Approx(thermo.beta[i][static_cast<std::size_t>(n)]).epsilon(1e-7));
    }
  }
  for (std::size_t i = 0; i < pair_count; ++i) {
    const IonPair& pair = ion_pairs()[i];
    const double partner = pair.acid == IonPair::no_acid
                               ? state.water_activity
                               : state.activity(acids()[pair.acid].first_species);
    CAPTURE(species()[pair.species].name);
    CHECK(state.activity(pair.species) / (state.activity(first_ion_species + pair.metal) * partner *
                                          std::pow(h, pair.protons)) ==
          doctest::Approx(thermo.pair[i]).epsilon(1e-7));
  }
}

TEST_CASE("pure water is neutral at every temperature") {
  for (const double celsius : {5.0, 25.0, 38.0, 50.0}) {
    const Equilibrium water = equilibrate({}, Thermodynamics::at(celsius));
    REQUIRE(water.status == SolveStatus::converged);
    CHECK(water.ph == doctest::Approx(neutral_ph(celsius)).epsilon(1e-4));
  }
}

TEST_CASE("a strong acid gives its protons, a strong base takes them") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  Totals acid;
  acid[C::chloride] = 0.001;
  const Equilibrium sour = equilibrate(acid, thermo, closed_to_air(), simple_model);
  CHECK(sour.molality[hydron_species] == doctest::Approx(0.001).epsilon(1e-6));
  Totals base;
  base[C::sodium] = 0.001;
  const Equilibrium alkaline = equilibrate(base, thermo, closed_to_air(), simple_model);
  CHECK(alkaline.molality[hydroxide_species] == doctest::Approx(0.001).epsilon(1e-6));
}

TEST_CASE("open water has the pressure of the air and counts what left") {
  Totals totals;
  totals[C::sodium] = totals[C::carbonate] = 0.004;
  totals[C::citrate] = 0.001;
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  const Equilibrium held = equilibrate(totals, thermo, closed_to_air());
  const Equilibrium aired = equilibrate(totals, thermo, open_to_air());
  CHECK(held.co2_released == doctest::Approx(0.0).scale(1.0).epsilon(1e-12));
  CHECK(std::log10(aired.pco2) == doctest::Approx(outdoor_log10_pco2).epsilon(1e-9));
  CHECK(aired.co2_released == doctest::Approx(totals[C::carbonate] - aired.dic).epsilon(1e-12));
  CHECK(aired.ph > held.ph + 1.0);

  SUBCASE("closing the aired water again changes nothing") {
    Totals left = totals;
    left[C::carbonate] = aired.dic;
    CHECK(equilibrate(left, thermo).ph == doctest::Approx(aired.ph).epsilon(1e-7));
  }
  SUBCASE("the path between starts and ends at the two limits and rises on the way") {
    CHECK(equilibrate(totals, thermo, partly_aired(1.0)).ph ==
          doctest::Approx(held.ph).epsilon(1e-7));
    CHECK(equilibrate(totals, thermo, partly_aired(0.0)).ph ==
          doctest::Approx(aired.ph).epsilon(1e-7));
    double before = held.ph;
    for (int i = 9; i >= 0; --i) {
      const Equilibrium state = equilibrate(totals, thermo, partly_aired(0.1 * i));
      REQUIRE(state.status == SolveStatus::converged);
      CHECK(state.ph > before);
      CHECK(state.co2_released ==
            doctest::Approx((1.0 - 0.1 * i) * aired.co2_released).epsilon(1e-6));
      before = state.ph;
    }
  }
}

TEST_CASE("input outside the bounds is refused by its status") {
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  const auto refused = [](const Equilibrium& state) {
    return state.status == SolveStatus::outside_bounds;
  };
  Totals negative;
  negative[C::sodium] = -1e-6;
  CHECK(refused(equilibrate(negative, thermo)));
  Totals huge;
  huge[C::citrate] = 1.001 * largest_total;
  CHECK(refused(equilibrate(huge, thermo)));
  Totals nothing;
  nothing[C::citrate] = std::numeric_limits<double>::quiet_NaN();
  CHECK(refused(equilibrate(nothing, thermo)));
  CHECK(refused(equilibrate({}, Thermodynamics::at(4.9))));
  CHECK(refused(equilibrate({}, Thermodynamics::at(50.1))));
  CHECK(refused(equilibrate({}, thermo, open_to_air(1.1))));
  CHECK(refused(equilibrate({}, thermo, open_to_air(-8.1))));
  CHECK(refused(equilibrate({}, thermo, partly_aired(-0.1))));
  CHECK(refused(equilibrate({}, thermo, partly_aired(1.1))));
}

TEST_CASE("a brine is solved and marked") {
  Totals brine;
  brine[C::sodium] = brine[C::chloride] = 1.0;
  const Equilibrium state = equilibrate(brine, Thermodynamics::at(25.0));
  CHECK(state.status == SolveStatus::converged);
  CHECK(state.beyond_activity_law);
  brine[C::sodium] = brine[C::chloride] = 0.1;
  CHECK_FALSE(equilibrate(brine, Thermodynamics::at(25.0)).beyond_activity_law);
}

TEST_CASE("without the pairs an acid-rich bath comes out too high") {
  // Up to 0.65 closed and 1.15 open over doses in soft, medium and hard water; from 1.5 parts of
  // bicarbonate to 1 of citric acid at most 0.09 (computed with PHREEQC 3.8.9).
  const Thermodynamics thermo = Thermodynamics::at(25.0);
  double worst_closed = 0.0;
  double worst_open = 0.0;
  double worst_usual = 0.0;
  const auto compare = [&](NamedWater water, double bicarbonate, double citric) {
    Totals totals = named_water(water);
    totals[C::sodium] += bicarbonate / 84.007 / 150.0;
    totals[C::carbonate] += bicarbonate / 84.007 / 150.0;
    totals[C::citrate] += citric / 192.124 / 150.0;
    const auto error = [&](const CarbonDioxide& gas) {
      return equilibrate(totals, thermo, gas, simple_model).ph -
             equilibrate(totals, thermo, gas, full_model).ph;
    };
    worst_closed = std::max(worst_closed, error(closed_to_air()));
    worst_open = std::max(worst_open, error(open_to_air()));
    if (bicarbonate >= 1.5 * citric) worst_usual = std::max(worst_usual, error(closed_to_air()));
  };
  for (const NamedWater water : {NamedWater::soft, NamedWater::medium, NamedWater::hard}) {
    for (const double bicarbonate : {0.0, 10.0, 25.0, 50.0, 75.0, 100.0, 150.0, 200.0}) {
      for (const double citric : {5.0, 10.0, 25.0, 50.0, 75.0, 100.0}) {
        compare(water, bicarbonate, citric);
      }
    }
  }
  CHECK(worst_closed == doctest::Approx(0.65).epsilon(0.02));
  CHECK(worst_open == doctest::Approx(1.15).epsilon(0.02));
  CHECK(worst_usual <= 0.095);
}
