// Laws that hold for every bath, on random ones with a fixed seed.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <random>
#include <string_view>
#include <vector>

#include "matter.h"
#include "science/bath.h"

namespace {

using namespace sudsmark::science;
using namespace sudsmark::testing;

class RandomBaths {
 public:
  explicit RandomBaths(std::uint64_t seed) : engine_(seed) {}

  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  bool chance(double probability) { return uniform(0.0, 1.0) < probability; }
  double spread(double low, double high) {
    return std::exp(uniform(std::log(low), std::log(high)));
  }

  /// Each component present with a chance of `density`, from 1e-9 of `most` to `most` [mol/kg].
  Totals anything(double most, double density) {
    Totals totals;
    for (double& total : totals.mol_per_kg) {
      if (chance(density)) total = spread(1e-9 * most, most);
    }
    return totals;
  }

  /// One of the named waters with a few things in it, up to 0.1 mol/kg each.
  Totals bath() {
    constexpr NamedWater waters[] = {NamedWater::pure, NamedWater::soft, NamedWater::medium,
                                     NamedWater::hard};
    Totals totals = named_water(waters[static_cast<std::size_t>(uniform(0.0, 3.999))]);
    const Totals more = anything(0.1, 0.3);
    for (std::size_t i = 0; i < component_count; ++i) totals.mol_per_kg[i] += more.mol_per_kg[i];
    return totals;
  }

 private:
  std::mt19937_64 engine_;
};

Totals with(Totals totals, std::string_view substance, double mol_per_kg) {
  put(totals, substance, mol_per_kg);
  return totals;
}

constexpr double rounding = 1e-6;  // pH

}  // namespace

TEST_CASE("the solver converges for everything within its bounds, and quickly") {
  RandomBaths random(20250101);
  std::vector<Thermodynamics> temperatures;
  for (int i = 0; i <= 9; ++i) temperatures.push_back(Thermodynamics::at(5.0 + 5.0 * i));
  int most_iterations = 0;
  for (int i = 0; i < 30000; ++i) {
    const Totals totals = random.anything(random.chance(0.5) ? largest_total : 0.05, 0.5);
    const double log10_pco2 = random.uniform(-8.0, 1.0);
    const double kind = random.uniform(0.0, 1.0);
    const CarbonDioxide gas = kind < 0.4   ? closed_to_air()
                              : kind < 0.7 ? open_to_air(log10_pco2)
                                           : partly_aired(random.uniform(0.0, 1.0), log10_pco2);
    const BathModel model{
        .ion_pairs = random.chance(0.7),
        .activity = random.chance(0.5) ? ActivityModel::davies : ActivityModel::ion_sizes};
    const Equilibrium state =
        equilibrate(totals, temperatures[static_cast<std::size_t>(i) % 10], gas, model);
    if (state.status == SolveStatus::outside_bounds) {
      // Open water can take up more carbonate than the closed solver of the path may be given.
      REQUIRE(gas.exchange == CarbonDioxide::Exchange::partly);
      continue;
    }
    CAPTURE(i);
    REQUIRE(state.status == SolveStatus::converged);
    REQUIRE(std::isfinite(state.ph));
    REQUIRE(state.ph > -2.0);
    REQUIRE(state.ph < 17.0);
    REQUIRE(std::abs(state.charge_error) <= 1e-4 * state.ionic_strength);
    for (const double molality : state.molality) REQUIRE(molality >= 0.0);
    most_iterations = std::max(most_iterations, state.iterations);
  }
  CHECK(most_iterations <= 20);
}

TEST_CASE("a search that begins near by ends where one ends that begins anywhere") {
  RandomBaths random(20251130);
  for (int i = 0; i < 6000; ++i) {
    const Totals totals = random.chance(0.5) ? random.bath() : random.anything(0.2, 0.5);
    const Thermodynamics thermo = Thermodynamics::at(random.uniform(5.0, 50.0));
    const CarbonDioxide gas = random.chance(0.5) ? closed_to_air() : open_to_air();
    const Equilibrium plain = equilibrate(totals, thermo, gas);
    REQUIRE(plain.status == SolveStatus::converged);
    // what doubts and solids make of a bath: less hardness, less of everything, more acid
    Totals soft = totals;
    soft[Component::calcium] *= random.chance(0.5) ? 0.0 : random.uniform(0.0, 1.0);
    soft[Component::carbonate] *= random.uniform(0.2, 1.0);
    Totals thin = totals;
    for (double& total : thin.mol_per_kg) total *= random.uniform(0.3, 1.0);
    const Totals sour = with(totals, "citric acid", random.spread(1e-6, 0.05));
    Equilibrium last = plain;
    for (const Totals& other : {totals, soft, thin, sour}) {
      const Equilibrium anywhere = equilibrate(other, thermo, gas);
      if (anywhere.beyond_activity_law) continue;
      for (const bool chained : {false, true}) {
        const Equilibrium& near = chained ? last : plain;
        const Equilibrium found = equilibrate(other, thermo, gas, full_model, &near);
        CAPTURE(i);
        REQUIRE(found.status == anywhere.status);
        CHECK(std::abs(found.ph - anywhere.ph) <= rounding);
        last = found;
      }
    }
  }
}

TEST_CASE("more acid never raises the pH, closed or open") {
  RandomBaths random(7);
  for (int i = 0; i < 3000; ++i) {
    const Totals totals = random.bath();
    const Thermodynamics thermo = Thermodynamics::at(random.uniform(5.0, 50.0));
    const double amount = random.spread(1e-5, 0.1);
    const BathModel model = random.chance(0.5) ? full_model : simple_model;
    for (const CarbonDioxide& gas : {closed_to_air(), open_to_air(random.uniform(-5.0, -1.0))}) {
      const Equilibrium before = equilibrate(totals, thermo, gas, model);
      REQUIRE(before.status == SolveStatus::converged);
      for (const std::string_view acid :
           {"citric acid", "tartaric acid", "malic acid", "lactic acid", "adipic acid",
            "ascorbic acid", "sodium bisulfate", "test lauric acid", "fumaric acid"}) {
        const Equilibrium after = equilibrate(with(totals, acid, amount), thermo, gas, model);
        REQUIRE(after.status == SolveStatus::converged);
        if (after.beyond_activity_law) continue;
        CAPTURE(acid);
        CAPTURE(before.ph);
        CHECK(after.ph <= before.ph + rounding);
      }
    }
  }
}

TEST_CASE("more base never lowers the pH") {
  // Sodium hydroxide always; any carbonate once air supplies the carbon dioxide. Closed, a
  // carbonate pulls the water towards its own pH, so it counts as a base only below that.
  RandomBaths random(8);
  for (int i = 0; i < 3000; ++i) {
    const Totals totals = random.bath();
    const Thermodynamics thermo = Thermodynamics::at(random.uniform(5.0, 50.0));
    const double amount = random.spread(1e-5, 0.03);
    const auto check = [&](const CarbonDioxide& gas, std::string_view base, double up_to_ph) {
      const Equilibrium before = equilibrate(totals, thermo, gas);
      const Equilibrium after = equilibrate(with(totals, base, amount), thermo, gas);
      REQUIRE(before.status == SolveStatus::converged);
      REQUIRE(after.status == SolveStatus::converged);
      if (before.ph > up_to_ph || after.ionic_strength > 0.3) return;
      CAPTURE(base);
      CAPTURE(before.ph);
      CHECK(after.ph >= before.ph - rounding);
    };
    check(closed_to_air(), "test lye", 14.0);
    check(closed_to_air(), "sodium bicarbonate", 7.3);
    check(closed_to_air(), "potassium bicarbonate", 7.3);
    check(closed_to_air(), "sodium carbonate", 10.9);
    check(closed_to_air(), "borax", 8.8);
    for (const std::string_view base :
         {"test lye", "sodium bicarbonate", "potassium bicarbonate", "sodium carbonate",
          "magnesium carbonate", "calcium carbonate"}) {
      check(open_to_air(), base, 14.0);
    }
  }
}

TEST_CASE("less carbon dioxide never lowers the pH") {
  RandomBaths random(9);
  for (int i = 0; i < 1000; ++i) {
    const Totals totals = random.bath();
    const Thermodynamics thermo = Thermodynamics::at(random.uniform(5.0, 50.0));
    double before = -10.0;
    for (const double log10_pco2 : {0.5, -1.0, -2.0, -3.4, -5.0}) {
      const Equilibrium state = equilibrate(totals, thermo, open_to_air(log10_pco2));
      REQUIRE(state.status == SolveStatus::converged);
      if (state.beyond_activity_law) continue;
      CHECK(state.ph >= before - rounding);
      before = state.ph;
    }
  }
}

TEST_CASE("a bath twice as large with twice the dose is the same bath") {
  RandomBaths random(10);
  for (int i = 0; i < 200; ++i) {
    Bath bath{.water = named_water(NamedWater::medium),
              .litres = random.uniform(50.0, 300.0),
              .celsius = random.uniform(30.0, 42.0)};
    put(bath, "sodium bicarbonate", random.uniform(1.0, 200.0));
    put(bath, "citric acid", random.uniform(1.0, 100.0));
    Bath twice = bath;
    twice.litres *= 2.0;
    for (double& mol : twice.moles) mol *= 2.0;
    CHECK(held(twice).ph == doctest::Approx(held(bath).ph).epsilon(1e-9));
  }
}
