#include "science/solution_ph.h"

#include <cmath>

#include "science/solubility.h"
#include "science/speciation.h"

namespace sudsmark::science {
namespace {

constexpr double room_celsius = 25.0;

void put(Thermodynamics& thermo, Component component, double pk) {
  thermo.beta[index_of(component) - first_acid][1] = std::pow(10.0, pk);
}

}  // namespace

Thermodynamics among_micelles(const MicellePk& pk) {
  Thermodynamics thermo = Thermodynamics::at(room_celsius);
  put(thermo, Component::betaine, pk.betaine);
  put(thermo, Component::carboxylate, pk.carboxylate);
  put(thermo, Component::fatty_acid, pk.fatty_acid);
  return thermo;
}

std::optional<double> free_base(const Totals& held, double ph, const Thermodynamics& thermo) {
  for (const double total : held.mol_per_kg) {
    if (!(total >= 0.0 && total <= largest_total)) return std::nullopt;
  }
  Speciation water(held, thermo, full_model, std::nullopt);
  const double ln_h = -ph * std::log(10.0);
  // The strong ion that evens the charges out counts in the ionic strength too, and that in turn in
  // the charges: a few rounds settle far below what a pH meter tells apart.
  constexpr int rounds = 6;
  double base = 0.0;
  double strength = 0.0;
  for (int round = 0; round < rounds; ++round) {
    water.set_medium(strength, 1.0);
    base = -water.charge(ln_h);
    strength = water.solutes().ionic_strength + 0.5 * std::abs(base);
  }
  if (!water.sound() || !std::isfinite(base)) return std::nullopt;
  return base;
}

SolutionPh solution_ph(Totals totals, double strong_base, const Thermodynamics& thermo,
                       const Equilibrium* near) {
  totals[strong_base > 0.0 ? Component::other_cation : Component::other_anion] +=
      std::abs(strong_base);
  const Dissolution dissolved = dissolve_bitartrate(totals, thermo, full_model, near);
  return {dissolved.state, dissolved.solid};
}

}  // namespace sudsmark::science
