// Inside of the equilibrium solver: the water at one trial acidity. Strangers want equilibrium.h.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "science/equilibrium.h"

namespace sudsmark::science {

/// Distributes totals over species for given ionic strength, water activity and acidity.
/// Use: set_medium() once a medium, then charge() as often as wanted; fill() writes out the state
/// of the last charge().
class Speciation {
 public:
  /// With `pco2` [atm] the total of carbonate is not used; the gas rules instead.
  Speciation(const Totals& totals, const Thermodynamics& thermo, const BathModel& model,
             std::optional<double> pco2);

  /// Takes the metals to be as free as they are in nearly the same water, to begin with.
  void begin_near(const Equilibrium& other);

  /// Turns constants at zero ionic strength into ones for molalities.
  void set_medium(double ionic_strength, double water_activity);

  /// Sum of charges [mol/kg] at ln a(H+) = `ln_h`; strictly rising in it.
  double charge(double ln_h);

  /// Molalities of the last charge() into `result`: molality, coefficient, ionic_strength, dic,
  /// pco2 and the sum of all molalities, which it returns [mol/kg].
  [[nodiscard]] double fill(Equilibrium& result) const;

  /// False if a Newton iteration of the ion pairs has ever run out of steps.
  [[nodiscard]] bool sound() const { return sound_; }

 private:
  static constexpr std::size_t pairing_acids = 2;  // carbonate and citrate, first in acids()
  using ByPairingAcid = std::array<double, pairing_acids>;
  using ByMetal = std::array<double, metal_count>;

  /// The mass balances of the pairing acids where their bare bases are `base_`.
  struct Balance {
    ByPairingAcid gradient{};
    ByPairingAcid curvature{};
    double cross = 0.0;
  };

  void note_species();
  void gather_pairs();
  ByPairingAcid first_guess();
  [[nodiscard]] Balance balance();
  void note_solved();
  void solve_pairs();
  [[nodiscard]] bool pairing(std::size_t acid) const { return acid < pairing_acids && paired_; }

  const Totals* totals_;
  const Thermodynamics* thermo_;
  BathModel model_;
  std::optional<double> pco2_;
  bool paired_ = false;
  bool sound_ = true;
  double inert_charge_ = 0.0;

  std::array<std::uint8_t, acid_count> active_acids_{};
  std::size_t active_acid_count_ = 0;
  std::array<std::uint8_t, pair_count> active_pairs_{};
  std::size_t active_pair_count_ = 0;
  std::array<std::uint8_t, species_count> active_species_{};  // what any of the water can be
  std::size_t active_species_count_ = 0;

  // In the medium: for molalities of everything but H+, which stays an activity. Of active species.
  std::array<double, species_count> gamma_{};
  double water_activity_ = 1.0;
  double hydroxide_ = 0.0;
  double open_base_ = 0.0;  // molality of CO3-2 times a(H+)^2 when open
  std::array<std::array<double, 4>, acid_count> beta_{};
  std::array<double, pair_count> pair_{};

  // At the trial acidity.
  double ln_h_ = 0.0;
  double h_ = 0.0;
  std::array<std::array<double, 4>, acid_count> states_{};  // beta times h^n
  std::array<double, acid_count> sum_{};
  std::array<double, acid_count> charge_sum_{};
  std::array<double, acid_count> base_{};  // molality of the bare base
  ByMetal metal_{};
  ByMetal hydroxide_of_{};
  // Of metal and acid, summed over the protons of the pair.
  std::array<ByMetal, pairing_acids> pair_constant_{};
  std::array<ByMetal, pairing_acids> pair_charge_{};
  std::array<bool, pairing_acids> unknown_{};  // whose bare base the mass balance has to tell

  // Bare bases that the last two trials came to [ln mol/kg], for a guess at the next.
  struct Solved {
    double ln_h = 0.0;
    ByPairingAcid ln_base{};
  };
  std::array<Solved, 2> before_{};
  int solved_count_ = 0;
};

}  // namespace sudsmark::science
