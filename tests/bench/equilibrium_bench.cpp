// Cost of bath chemistry. One equilibrium is meant to take at most 20 microseconds, ion pairs
// included; a path point (partly aired) is two of them.

#include <benchmark/benchmark.h>

#include "science/bath_doubt.h"

namespace {

using namespace sudsmark::science;

Totals fizzing(NamedWater water) {
  constexpr double bicarbonate = 60.0 / 84.007;  // mol of 60 g
  constexpr double citric = 30.0 / 192.124;      // mol of 30 g
  Bath bath;
  bath.water = named_water(water);
  bath.moles[index_of(Component::sodium)] = bicarbonate;
  bath.moles[index_of(Component::carbonate)] = bicarbonate;
  bath.moles[index_of(Component::citrate)] = citric;
  return totals_of(bath);
}

void solve(benchmark::State& state, const CarbonDioxide& gas, const BathModel& model) {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  Totals totals = fizzing(NamedWater::medium);
  for (auto _ : state) {
    totals[Component::citrate] *= 1.0 + 1e-9;  // no two baths are quite the same
    benchmark::DoNotOptimize(equilibrate(totals, thermo, gas, model));
  }
}

void closed_with_pairs(benchmark::State& state) {
  solve(state, closed_to_air(), full_model);
}
void open_with_pairs(benchmark::State& state) {
  solve(state, open_to_air(), full_model);
}
void partly_aired_with_pairs(benchmark::State& state) {
  solve(state, partly_aired(0.5), full_model);
}
void closed_without_pairs(benchmark::State& state) {
  solve(state, closed_to_air(), simple_model);
}

void everything_at_once(benchmark::State& state) {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  Totals totals = fizzing(NamedWater::hard);
  for (double& total : totals.mol_per_kg) total += 5e-4;
  for (auto _ : state) {
    totals[Component::citrate] *= 1.0 + 1e-9;
    benchmark::DoNotOptimize(equilibrate(totals, thermo));
  }
}

void constants_at_a_temperature(benchmark::State& state) {
  double celsius = 38.0;
  for (auto _ : state) {
    celsius += 1e-9;
    benchmark::DoNotOptimize(Thermodynamics::at(celsius));
  }
}

void uncertainty_of_an_aired_bath(benchmark::State& state) {
  const Thermodynamics thermo = Thermodynamics::at(38.0);
  const Totals totals = fizzing(NamedWater::hard);
  for (auto _ : state) {
    benchmark::DoNotOptimize(ph_uncertainty(totals, thermo, open_to_air()));
  }
}

BENCHMARK(closed_with_pairs)->Unit(benchmark::kMicrosecond);
BENCHMARK(open_with_pairs)->Unit(benchmark::kMicrosecond);
BENCHMARK(partly_aired_with_pairs)->Unit(benchmark::kMicrosecond);
BENCHMARK(closed_without_pairs)->Unit(benchmark::kMicrosecond);
BENCHMARK(everything_at_once)->Unit(benchmark::kMicrosecond);
BENCHMARK(constants_at_a_temperature)->Unit(benchmark::kMicrosecond);
BENCHMARK(uncertainty_of_an_aired_bath)->Unit(benchmark::kMicrosecond);

}  // namespace
