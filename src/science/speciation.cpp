#include "science/speciation.h"

#include <algorithm>
#include <cmath>

namespace sudsmark::science {
namespace {

constexpr std::size_t carbonate = 0;  // in acids()

/// exp(x), and quickly where x is small: the next term of the series is below the last bit.
double exp_of_small(double x) {
  constexpr double small = 1e-3;
  if (std::abs(x) > small) return std::exp(x);
  return 1.0 + x * (1.0 + x / 2.0 * (1.0 + x / 3.0 * (1.0 + x / 4.0 * (1.0 + x / 5.0))));
}

}  // namespace

Speciation::Speciation(const Totals& totals, const Thermodynamics& thermo, const BathModel& model,
                       std::optional<double> pco2)
    : totals_(&totals), thermo_(&thermo), model_(model), pco2_(pco2) {
  for (std::size_t i = 0; i < acid_count; ++i) {
    const bool from_gas = i == carbonate && pco2_.has_value();
    if (from_gas || totals[all_acids[i].component] > 0.0) {
      active_acids_[active_acid_count_++] = i;
    }
  }
  for (std::size_t i = 0; model_.ion_pairs && i < pair_count; ++i) {
    const IonPair& pair = all_ion_pairs[i];
    const bool has_acid =
        pair.acid == IonPair::no_acid ||
        std::find(active_acids_.begin(), active_acids_.begin() + active_acid_count_, pair.acid) !=
            active_acids_.begin() + active_acid_count_;
    if (has_acid && totals.mol_per_kg[pair.metal] > 0.0) {
      active_pairs_[active_pair_count_++] = i;
    }
  }
  paired_ = active_pair_count_ > 0;
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    const bool from_gas = i == carbonate && pco2_.has_value();
    unknown_[i] = !from_gas && totals[all_acids[i].component] > 0.0;
  }
  for (std::size_t i = 0; i < first_acid; ++i) {
    const double charge = all_species[first_ion_species + i].charge * totals.mol_per_kg[i];
    if (i >= metal_count || !paired_) inert_charge_ += charge;
    if (i < metal_count) metal_[i] = totals.mol_per_kg[i];
  }
  note_species();
}

void Speciation::note_species() {
  std::array<bool, species_count> there{};
  there[hydron_species] = there[hydroxide_species] = true;
  for (std::size_t i = 0; i < first_acid; ++i) {
    there[first_ion_species + i] = totals_->mol_per_kg[i] > 0.0;
  }
  for (std::size_t a = 0; a < active_acid_count_; ++a) {
    const AcidSystem& acid = all_acids[active_acids_[a]];
    const auto last = static_cast<std::size_t>(acid.protons);
    for (std::size_t n = 0; n <= last; ++n) there[acid.first_species + n] = true;
  }
  for (std::size_t a = 0; a < active_pair_count_; ++a) {
    there[all_ion_pairs[active_pairs_[a]].species] = true;
  }
  for (std::size_t i = 0; i < species_count; ++i) {
    if (there[i]) active_species_[active_species_count_++] = static_cast<std::uint8_t>(i);
  }
}

void Speciation::begin_near(const Equilibrium& other) {
  for (std::size_t m = 0; m < metal_count; ++m) {
    metal_[m] = std::min(metal_[m], other.molality[first_ion_species + m]);
  }
}

void Speciation::set_medium(double ionic_strength, double water_activity) {
  add_activity_coefficients(model_.activity, ionic_strength, thermo_->debye_hueckel,
                            {active_species_.data(), active_species_count_}, gamma_);
  water_activity_ = water_activity;
  hydroxide_ = thermo_->water * water_activity / gamma_[hydroxide_species];
  for (std::size_t a = 0; a < active_acid_count_; ++a) {
    const std::size_t i = active_acids_[a];
    const AcidSystem& acid = all_acids[i];
    const double base_gamma = gamma_[acid.first_species];
    for (std::size_t n = 0; n <= static_cast<std::size_t>(acid.protons); ++n) {
      beta_[i][n] = thermo_->beta[i][n] * base_gamma / gamma_[acid.first_species + n];
    }
    if (acid.water_released_at > 0) {
      beta_[i][static_cast<std::size_t>(acid.water_released_at)] /= water_activity;
    }
  }
  if (pco2_) {
    open_base_ = thermo_->henry * *pco2_ * water_activity /
                 (thermo_->beta[carbonate][2] * gamma_[all_acids[carbonate].first_species]);
  }
  for (std::size_t a = 0; a < active_pair_count_; ++a) {
    const std::size_t i = active_pairs_[a];
    const IonPair& pair = all_ion_pairs[i];
    const double partner =
        pair.acid == IonPair::no_acid ? water_activity : gamma_[all_acids[pair.acid].first_species];
    pair_[i] =
        thermo_->pair[i] * gamma_[first_ion_species + pair.metal] * partner / gamma_[pair.species];
    if (pair.acid == IonPair::no_acid) {
      hydroxide_pair_[pair.metal] = pair_[i];
      continue;
    }
    const auto protons = static_cast<std::size_t>(pair.protons);
    acid_pair_[pair.acid][protons][pair.metal] = pair_[i];
    acid_pair_charge_[pair.acid][protons][pair.metal] = pair_[i] * all_species[pair.species].charge;
  }
}

double Speciation::charge(double ln_h) {
  ln_h_ = ln_h;
  h_ = std::exp(ln_h);
  double charge = inert_charge_ + h_ / gamma_[hydron_species] - hydroxide_ / h_;
  for (std::size_t a = 0; a < active_acid_count_; ++a) {
    const std::size_t i = active_acids_[a];
    const AcidSystem& acid = all_acids[i];
    double state = beta_[i][0];
    double power = h_;
    double sum = state;
    double charge_sum = acid.base_charge * state;
    for (std::size_t n = 1; n <= static_cast<std::size_t>(acid.protons); ++n) {
      state = beta_[i][n] * power;
      sum += state;
      charge_sum += (acid.base_charge + static_cast<int>(n)) * state;
      power *= h_;
    }
    sum_[i] = sum;
    charge_sum_[i] = charge_sum;
    if (i == carbonate && pco2_) {
      base_[i] = open_base_ / (h_ * h_);
    } else if (!pairing(i)) {
      base_[i] = (*totals_)[acid.component] / sum;
    }
  }
  if (paired_) solve_pairs();
  for (std::size_t a = 0; a < active_acid_count_; ++a) {
    const std::size_t i = active_acids_[a];
    charge += base_[i] * charge_sum_[i];
  }
  for (std::size_t m = 0; paired_ && m < metal_count; ++m) {
    const int z = all_species[first_ion_species + m].charge;
    double per_free_metal = z + (z - 1) * hydroxide_of_[m];
    for (std::size_t i = 0; i < pairing_acids; ++i) {
      per_free_metal += base_[i] * pair_charge_[i][m];
    }
    charge += metal_[m] * per_free_metal;
  }
  return charge;
}

void Speciation::gather_pairs() {
  const double twice = h_ * h_;
  for (std::size_t m = 0; m < metal_count; ++m) {
    hydroxide_of_[m] = hydroxide_pair_[m] / h_;
  }
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    const ByProtons& pair = acid_pair_[i];
    const ByProtons& charge = acid_pair_charge_[i];
    for (std::size_t m = 0; m < metal_count; ++m) {
      pair_constant_[i][m] = pair[0][m] + pair[1][m] * h_ + pair[2][m] * twice;
      pair_charge_[i][m] = charge[0][m] + charge[1][m] * h_ + charge[2][m] * twice;
    }
  }
}

/// Bare bases to begin with: on the line through the last two trials, which are near each other as
/// soon as the acidity is; else as if the metals were as free as they were last.
Speciation::ByPairingAcid Speciation::first_guess() {
  constexpr double close = 0.1;      // in ln a(H+): a straight line is as good as its logarithm
  constexpr double reachable = 0.5;  // the same, on a line of logarithms
  ByPairingAcid guess{};
  const double apart = before_[0].ln_h - before_[1].ln_h;
  const double away = ln_h_ - before_[0].ln_h;
  const bool near = solved_count_ > 1 && apart != 0.0 && std::abs(away) < reachable;
  const bool straight = near && std::abs(away) < close && std::abs(apart) < close;
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    if (!unknown_[i]) continue;
    const double last = before_[0].base[i];
    const double first = before_[1].base[i];
    if (straight) {
      guess[i] = last + (last - first) * (away / apart);
      if (guess[i] > 0.5 * last && guess[i] < 2.0 * last) continue;
    }
    if (near) {
      guess[i] = last * std::exp(std::log(last / first) * (away / apart));
      continue;
    }
    double sum = sum_[i];
    for (std::size_t m = 0; m < metal_count; ++m) sum += metal_[m] * pair_constant_[i][m];
    guess[i] = (*totals_)[all_acids[i].component] / sum;
  }
  return guess;
}

// With u = ln(bare base), the mass balances of the acids are the gradient of
//   sum_l (c_l D_l - T_l u_l) + sum_m M_m ln(1 + hydroxide_m + sum_l K_ml c_l),
// which is strictly convex: it has one minimum, and Newton's method with a guard against overshoot
// finds it from anywhere.
Speciation::Balance Speciation::balance() {
  std::array<ByMetal, pairing_acids> held{};  // of the acid, per metal, as a share of its base
  ByMetal free{};
  ByMetal share{};
  // metal by metal side by side, so that the divisions are made at once
  for (std::size_t m = 0; m < metal_count; ++m) {
    held[0][m] = pair_constant_[0][m] * base_[0];
    held[1][m] = pair_constant_[1][m] * base_[1];
    const double whole = 1.0 + hydroxide_of_[m] + held[0][m] + held[1][m];
    free[m] = totals_->mol_per_kg[m] / whole;
    share[m] = free[m] / whole;
  }
  metal_ = free;
  Balance out;
  ByPairingAcid bound{};
  for (std::size_t m = 0; m < metal_count; ++m) {
    bound[0] += free[m] * held[0][m];
    bound[1] += free[m] * held[1][m];
    out.curvature[0] -= share[m] * held[0][m] * held[0][m];
    out.curvature[1] -= share[m] * held[1][m] * held[1][m];
    out.cross -= share[m] * held[0][m] * held[1][m];
  }
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    const double whole = base_[i] * sum_[i] + bound[i];
    out.gradient[i] = unknown_[i] ? whole - (*totals_)[all_acids[i].component] : 0.0;
    out.curvature[i] = unknown_[i] ? out.curvature[i] + whole : 1.0;
  }
  if (!unknown_[0] || !unknown_[1]) out.cross = 0.0;
  return out;
}

void Speciation::solve_pairs() {
  gather_pairs();
  const ByPairingAcid guess = first_guess();
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    if (unknown_[i]) {
      base_[i] = guess[i];
    } else if (i != carbonate || !pco2_) {
      base_[i] = 0.0;
    }
  }
  Balance at = balance();
  if (!unknown_[0] && !unknown_[1]) return;
  constexpr int most_steps = 60;
  constexpr double close = 1e-7;  // the step after it would be of the order of its square
  for (int step = 0; step < most_steps; ++step) {
    const double determinant = at.curvature[0] * at.curvature[1] - at.cross * at.cross;
    ByPairingAcid move{
        (at.cross * at.gradient[1] - at.curvature[1] * at.gradient[0]) / determinant,
        (at.cross * at.gradient[0] - at.curvature[0] * at.gradient[1]) / determinant};
    double largest = std::max(std::abs(move[0]), std::abs(move[1]));
    if (largest > 3.0) {
      for (double& one : move) one *= 3.0 / largest;
    }
    const double slope = at.gradient[0] * move[0] + at.gradient[1] * move[1];
    const auto start = base_;
    double share = 1.0;
    for (int halving = 0; halving < 30; ++halving) {
      for (std::size_t i = 0; i < pairing_acids; ++i) {
        if (unknown_[i]) base_[i] = start[i] * exp_of_small(share * move[i]);
      }
      at = balance();
      // Climbing again nearly as steeply as it fell: gone too far.
      if (at.gradient[0] * move[0] + at.gradient[1] * move[1] <= -0.9 * slope) break;
      share *= 0.5;
    }
    if (largest * share < close) return note_solved();
  }
  sound_ = false;
}

void Speciation::note_solved() {
  Solved now;
  now.ln_h = ln_h_;
  for (std::size_t i = 0; i < pairing_acids; ++i) {
    if (unknown_[i]) now.base[i] = base_[i];
  }
  before_ = {now, before_[0]};
  ++solved_count_;
}

Speciation::Solutes Speciation::solutes() {
  molality_[hydron_species] = h_ / gamma_[hydron_species];
  molality_[hydroxide_species] = hydroxide_ / h_;
  for (std::size_t i = 0; i < first_acid; ++i) {
    const bool metal_in_pairs = i < metal_count && paired_;
    molality_[first_ion_species + i] = metal_in_pairs ? metal_[i] : totals_->mol_per_kg[i];
  }
  for (std::size_t a = 0; a < active_acid_count_; ++a) {
    const std::size_t i = active_acids_[a];
    double base = base_[i];
    for (std::size_t n = 0; n <= static_cast<std::size_t>(all_acids[i].protons); ++n) {
      molality_[all_acids[i].first_species + n] = base * beta_[i][n];
      base *= h_;
    }
  }
  for (std::size_t a = 0; a < active_pair_count_; ++a) {
    const std::size_t i = active_pairs_[a];
    const IonPair& pair = all_ion_pairs[i];
    double molality = metal_[pair.metal] * pair_[i];
    if (pair.acid == IonPair::no_acid) {
      molality /= h_;
    } else {
      molality *= base_[pair.acid];
      for (int n = 0; n < pair.protons; ++n) molality *= h_;
    }
    molality_[pair.species] = molality;
  }
  Solutes out;
  for (std::size_t a = 0; a < active_species_count_; ++a) {
    const std::size_t i = active_species_[a];
    const int z = all_species[i].charge;
    out.ionic_strength += 0.5 * (z * z) * molality_[i];
    out.sum += molality_[i];
  }
  return out;
}

void Speciation::fill(Equilibrium& result) const {
  result.molality = molality_;
  result.coefficient = gamma_;
  const std::size_t co3 = all_acids[carbonate].first_species;
  result.dic = molality_[co3] + molality_[co3 + 1] + molality_[co3 + 2];
  for (std::size_t a = 0; a < active_pair_count_; ++a) {
    const IonPair& pair = all_ion_pairs[active_pairs_[a]];
    if (pair.acid == carbonate) result.dic += molality_[pair.species];
  }
  result.pco2 = molality_[co3 + 2] * gamma_[co3 + 2] / thermo_->henry;
  result.charge_error = 0.0;
  for (std::size_t a = 0; a < active_species_count_; ++a) {
    const std::size_t i = active_species_[a];
    result.charge_error += all_species[i].charge * molality_[i];
  }
}

}  // namespace sudsmark::science
