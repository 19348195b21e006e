#include "science/bath_doubt.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "science/solubility.h"

namespace sudsmark::science {
namespace {

constexpr double standards_agreement = 0.02;  // tests/reference/iupac_ph_standards.cpp

/// Takes up to `wanted` mol/kg of hardness out, calcium before magnesium; returns how much.
double take_hardness(Totals& totals, double wanted) {
  const double calcium = std::min(totals[Component::calcium], wanted);
  const double magnesium = std::min(totals[Component::magnesium], wanted - calcium);
  totals[Component::calcium] -= calcium;
  totals[Component::magnesium] -= magnesium;
  return calcium + magnesium;
}

/// Takes salts of the hardness with acids that have no ion pairs here out of the water.
Totals without_unknown_salts(Totals totals) {
  // Ca3(PO4)2 holds the most protons off, so phosphate has the first claim on calcium.
  const double phosphate = std::min(totals[Component::phosphate], totals[Component::calcium] / 1.5);
  totals[Component::phosphate] -= phosphate;
  totals[Component::calcium] = std::max(0.0, totals[Component::calcium] - 1.5 * phosphate);
  for (const Component acid : {Component::tartrate, Component::malate, Component::adipate,
                               Component::succinate, Component::fumarate}) {
    totals[acid] -= take_hardness(totals, totals[acid]);
  }
  for (const Component acid : {Component::fatty_acid, Component::lactate, Component::ascorbate}) {
    totals[acid] = std::max(0.0, totals[acid] - 2.0 * take_hardness(totals, 0.5 * totals[acid]));
  }
  return totals;
}

Totals without_sulfate_pairs(Totals totals) {
  const double magnesium = std::min(totals[Component::magnesium], totals[Component::sulfate]);
  totals[Component::magnesium] -= magnesium;
  totals[Component::sulfate] -= magnesium;
  const double calcium = std::min(totals[Component::calcium], totals[Component::sulfate]);
  totals[Component::calcium] -= calcium;
  totals[Component::sulfate] -= calcium;
  return totals;
}

/// Multiplies the affinity of an acid's base for each proton by ten to the `shift`.
void shift_protonation(Thermodynamics& thermo, Component component, double shift) {
  const std::size_t i = index_of(component) - first_acid;
  for (std::size_t n = 1; n < thermo.beta[i].size(); ++n) {
    thermo.beta[i][n] *= std::pow(10.0, shift * static_cast<double>(n));
  }
}

double strength_doubt(double ionic_strength) {
  if (ionic_strength > davies_limit) return 0.3;
  return std::max(0.0, 0.1 * (ionic_strength - 0.1) / (davies_limit - 0.1));
}

/// Runs variants of one bath against it and gathers what they differ by.
class Doubts {
 public:
  Doubts(const Totals& totals, const Thermodynamics& thermo, const CarbonDioxide& gas,
         const BathModel& model, const Equilibrium* near)
      : totals_(totals), thermo_(thermo), gas_(gas), model_(model) {
    plain_ = equilibrate(totals_, thermo_, gas_, model_, near);
    result_.status = plain_.status;
  }

  [[nodiscard]] const Equilibrium& plain() const { return plain_; }

  void add(PhDoubtCause cause, double ph) {
    if (ph < 0.0005) return;
    result_.doubts.push_back({cause, ph});
    result_.half_width += ph;
  }

  void compare(PhDoubtCause cause, const Equilibrium& other) {
    if (other.status != SolveStatus::converged) result_.status = other.status;
    add(cause, std::abs(other.ph - plain_.ph));
  }

  void compare(PhDoubtCause cause, const Totals& other) {
    if (other.mol_per_kg != totals_.mol_per_kg) {
      compare(cause, equilibrate(other, thermo_, gas_, model_, &plain_));
    }
  }

  void compare(PhDoubtCause cause, const Thermodynamics& other) {
    compare(cause, equilibrate(totals_, other, gas_, model_, &plain_));
  }

  void pairs() {
    compare(PhDoubtCause::missing_pairs, without_unknown_salts(totals_));
    compare(PhDoubtCause::sulfate_pairs, without_sulfate_pairs(totals_));
    if (!model_.ion_pairs) {
      BathModel paired = model_;
      paired.ion_pairs = true;
      compare(PhDoubtCause::left_out_pairs, equilibrate(totals_, thermo_, gas_, paired, &plain_));
    } else if (totals_[Component::calcium] > 0.0) {
      constexpr std::size_t calcium_bicarbonate = 1;  // in ion_pairs()
      Thermodynamics other = thermo_;
      other.pair[calcium_bicarbonate] = std::pow(10.0, 11.43);
      compare(PhDoubtCause::calcium_bicarbonate, other);
    }
  }

  void calcite() {
    if (calcite_saturation_index(plain_, thermo_) > 0.0) {
      compare(PhDoubtCause::calcite,
              precipitate_calcite(totals_, thermo_, gas_, model_, &plain_).state);
    }
  }

  void room_constants() {
    constexpr double per_kelvin = 0.003;
    const double shift = per_kelvin * (thermo_.celsius - 25.0);
    Thermodynamics other = thermo_;
    bool used = false;
    for (const Component acid :
         {Component::malate, Component::lactate, Component::adipate, Component::ascorbate,
          Component::fatty_acid, Component::succinate, Component::fumarate}) {
      shift_protonation(other, acid, shift);
      used = used || totals_[acid] > 0.0;
    }
    if (used && shift != 0.0) compare(PhDoubtCause::room_constants, other);
  }

  void soap() {
    if (!(totals_[Component::fatty_acid] > 0.0)) return;
    Thermodynamics other = thermo_;
    shift_protonation(other, Component::fatty_acid, 8.5 - 4.9);
    compare(PhDoubtCause::soap, other);
  }

  PhUncertainty take() {
    result_.plain = plain_;
    return std::move(result_);
  }

 private:
  Totals totals_;
  Thermodynamics thermo_;
  CarbonDioxide gas_;
  BathModel model_;
  Equilibrium plain_;
  PhUncertainty result_;
};

}  // namespace

std::string_view ph_doubt_text(PhDoubtCause cause) {
  switch (cause) {
    case PhDoubtCause::agreement:
      return "constants and activity law, as far as the pH standards show";
    case PhDoubtCause::missing_pairs:
      return "calcium and magnesium may bind, or fall out with, acids other than citric";
    case PhDoubtCause::sulfate_pairs:
      return "sulfate may bind calcium and magnesium";
    case PhDoubtCause::left_out_pairs:
      return "ion pairs of the hardness were left out";
    case PhDoubtCause::calcium_bicarbonate:
      return "published strengths of the calcium bicarbonate pair differ";
    case PhDoubtCause::calcite:
      return "calcite could fall out of this water";
    case PhDoubtCause::room_constants:
      return "acid constants of 25 C were used at the temperature of the bath";
    case PhDoubtCause::soap:
      return "soap forms micelles and acid soap, which the model does not know";
    case PhDoubtCause::strength:
      return "the water is so salty that the activity law is strained";
  }
  return "";
}

PhUncertainty ph_uncertainty(const Totals& totals, const Thermodynamics& thermo,
                             const CarbonDioxide& carbon_dioxide, const BathModel& model,
                             const Equilibrium* near) {
  Doubts doubts(totals, thermo, carbon_dioxide, model, near);
  if (doubts.plain().status == SolveStatus::converged) {
    doubts.add(PhDoubtCause::agreement, standards_agreement);
    doubts.pairs();
    doubts.calcite();
    doubts.room_constants();
    doubts.soap();
    doubts.add(PhDoubtCause::strength, strength_doubt(doubts.plain().ionic_strength));
  }
  return doubts.take();
}

}  // namespace sudsmark::science
