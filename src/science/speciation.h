// Inside of the equilibrium solver: the water at one trial acidity. Strangers want equilibrium.h.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "science/equilibrium.h"

namespace sudsmark::science {

/// Distributes totals over species for given ionic strength, water activity and acidity.
/// Use: set_medium() once a medium, then charge() as often as wanted; solutes() tells of the state
/// of the last charge() what the next medium depends on, and fill() writes all of it out. What is
/// not in the water is not looked at before fill().
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

  /// What the next medium is made of.
  struct Solutes {
    double ionic_strength = 0.0;  ///< [mol/kg]
    double sum = 0.0;             ///< of all molalities [mol/kg]
  };
  [[nodiscard]] Solutes solutes();

  /// After solutes(): molality, coefficient, dic, pco2 and charge_error of `result`.
  void fill(Equilibrium& result) const;

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

  std::array<std::size_t, acid_count> active_acids_{};
  std::size_t active_acid_count_ = 0;
  std::array<std::size_t, pair_count> active_pairs_{};
  std::size_t active_pair_count_ = 0;
  std::array<std::uint8_t, species_count> active_species_{};  // ascending
  std::size_t active_species_count_ = 0;

  // In the medium: for molalities of everything but H+, which stays an activity.
  std::array<double, species_count> gamma_{};  // of active species
  double water_activity_ = 1.0;
  double hydroxide_ = 0.0;
  double open_base_ = 0.0;  // molality of CO3-2 times a(H+)^2 when open
  std::array<std::array<double, 4>, acid_count> beta_{};
  std::array<double, pair_count> pair_{};
  // Constants of the pairs of an acid, by the protons of the pair and its metal.
  static constexpr std::size_t most_pair_protons = 2;
  using ByProtons = std::array<ByMetal, most_pair_protons + 1>;
  std::array<ByProtons, pairing_acids> acid_pair_{};
  std::array<ByProtons, pairing_acids> acid_pair_charge_{};  // times the charge of the pair
  ByMetal hydroxide_pair_{};

  // At the trial acidity.
  double ln_h_ = 0.0;
  double h_ = 0.0;
  std::array<double, acid_count> sum_{};
  std::array<double, acid_count> charge_sum_{};
  std::array<double, acid_count> base_{};  // molality of the bare base
  ByMetal metal_{};
  ByMetal hydroxide_of_{};
  // Of metal and acid, summed over the protons of the pair.
  std::array<ByMetal, pairing_acids> pair_constant_{};
  std::array<ByMetal, pairing_acids> pair_charge_{};
  std::array<bool, pairing_acids> unknown_{};  // whose bare base the mass balance has to tell

  // Molalities at the last solutes().
  std::array<double, species_count> molality_{};

  // Bare bases that the last two trials came to, for a guess at the next.
  struct Solved {
    double ln_h = 0.0;
    ByPairingAcid base{};
  };
  std::array<Solved, 2> before_{};
  int solved_count_ = 0;
};

}  // namespace sudsmark::science
