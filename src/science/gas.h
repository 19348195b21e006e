// Carbon dioxide of a fizz by stoichiometry: what acid and bases can give off at most.
#pragma once

namespace sudsmark::science {

/// Volume of one mol of an ideal gas [l/mol] at `celsius` [C] and `kilopascal` [kPa];
/// 24.465 at 25 C and 101.325 kPa. CO2 itself takes 0.5 % less.
[[nodiscard]] double molar_volume(double celsius = 25.0, double kilopascal = 101.325);

/// An amount of CO2.
struct GasAmount {
  double mol = 0.0;
  double litres = 0.0;  ///< as an ideal gas at 25 C and 101.325 kPa
};

/// What acid and bases can give off, and what of them is left.
struct GasYield {
  /// The dissolved mixture come to rest: carbonate takes the first protons, and gives no gas until
  /// it has become bicarbonate.
  GasAmount settled;
  /// At most, while it fizzes: every proton meets bicarbonate first, then carbonate, which gives
  /// half as much gas per proton. Equal to `settled` without carbonate or with acid enough.
  GasAmount most;
  double acid_left = 0.0;          ///< protons not used [mol]
  double base_protons_left = 0.0;  ///< protons that the bases could still take [mol]
};

/// CO2 from `acid_protons` (mol of protons that the acids can give to bicarbonate: citric 3,
/// tartaric and malic 2, bitartrate and lactic 1) and `bicarbonate` and `carbonate` [mol].
/// An upper bound by stoichiometry: a bath can keep all of it in solution at usual doses, and it
/// says nothing of how long a piece fizzes. Negative input counts as none.
[[nodiscard]] GasYield gas_yield(double acid_protons, double bicarbonate, double carbonate);

}  // namespace sudsmark::science
