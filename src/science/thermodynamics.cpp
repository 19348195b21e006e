#include "science/thermodynamics.h"

#include <cmath>

#include "science/log_k.h"

namespace sudsmark::science {
namespace {

// Each table names its source: published = read in the source or in a public
// data file that carries it; from memory = recalled, not found in print.

struct Protonation {
  std::array<LogK, 3> cumulative;  // bare base + 1, 2, 3 H+
};

Protonation steps(const LogK& first) {
  return {{first, {}, {}}};
}

Protonation steps(const LogK& first, const LogK& second) {
  return {{first, first + second, {}}};
}

Protonation steps(const LogK& first, const LogK& second, const LogK& third) {
  return {{first, first + second, first + second + third}};
}

// Dissociation as tabulated (pK, enthalpy and heat capacity of dissociation) turned round.
LogK from_pk(double pk) {
  return constant_log_k(pk);
}
LogK from_pk(double pk, double enthalpy_kj, double heat_capacity_j) {
  return log_k_with_heat_capacity(pk, -enthalpy_kj, -heat_capacity_j);
}

std::array<Protonation, acid_count> protonations() {
  return {{
      // Carbonate: Plummer & Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011 (published).
      {{{{107.8871, 3.252849e-2, -5151.79, -38.92561, 563713.9},
         {464.1965, 9.344813e-2, -26986.16, -165.75951, 2248628.9},
         {}}}},
      // Citrate: Bates & Pinching, J. Am. Chem. Soc. 71 (1949) 1274 (functions from memory; at
      // 25 C within 0.001 of NIST 46.2, published).
      {{{{-6.3664, 2.2389e-2, 1814.9, 0.0, 0.0},
         {-11.8124, 3.8788e-2, 3400.1, 0.0, 0.0},
         {-16.3759, 5.0461e-2, 4655.7, 0.0, 0.0}}}},
      // Tartrate: Goldberg, Kishore & Lennen, J. Phys. Chem. Ref. Data 31 (2002) 231, after Bates &
      // Canham 1951: pK 3.036, 4.366 (from memory; published alternative 3.00, 4.36).
      {{{{-72.061994, 0.0, 3443.5905, 26.219375, 0.0},
         {-121.0113, 0.0, 5899.5136, 43.899413, 0.0},
         {}}}},
      // Malate: Goldberg et al. 2002 (from memory), 25 C.
      steps(from_pk(5.097), from_pk(3.459)),
      // Lactate: hydrochemistry table, read as quoted, 25 C.
      steps(from_pk(3.86)),
      // Adipate: Martell & Smith as carried by an open textbook (published), 25 C.
      steps(from_pk(5.42), from_pk(4.42)),
      // Ascorbate: handbooks (from memory), 24 C.
      steps(from_pk(11.6), from_pk(4.17)),
      // Phosphate: Goldberg et al. 2002 (from memory; published alternative 2.168, 7.207, 12.346
      // in the USGS file phreeqc.dat).
      steps(from_pk(12.35, 16.0, -242.0), from_pk(7.198, 3.6, -230.0),
            from_pk(2.148, -8.0, -141.0)),
      // Hydrogen sulfate: Goldberg et al. 2002 (from memory).
      steps(from_pk(1.987, -22.4, -258.0)),
      // Borate: Goldberg et al. 2002 (from memory; published alternative 9.24 in phreeqc.dat).
      steps(from_pk(9.237, 13.8, -240.0)),
      // Fatty acid, dissolved monomer (from memory), about 25 C. Micelles, acid soap and the
      // solid acid behave otherwise; see ph_uncertainty.
      steps(from_pk(4.9)),
      // Phthalate: Goldberg et al. 2002 (from memory), which follows Hamer, Pinching & Acree.
      steps(from_pk(5.408, -2.17, -295.0), from_pk(2.950, -2.70, -91.0)),
      // Succinate and fumarate: handbooks (from memory), 25 C.
      steps(from_pk(5.64), from_pk(4.21)),
      steps(from_pk(4.38), from_pk(3.02)),
      // A betaine's carboxylate and that of acyl amino acids, single ions (from memory). Among
      // micelles both move; solution_ph.h says how far.
      steps(from_pk(2.0)),
      steps(from_pk(3.6)),
  }};
}

std::array<LogK, pair_count> pair_constants() {
  constexpr double kj_per_kcal = 4.184;
  // USGS: public-domain data file phreeqc.dat of PHREEQC 3.8. NIST: Critical Stability Constants
  // 46.2 as carried by the USGS file minteq.v4.dat. Both published.
  return {{
      {-1228.732, -0.29944, 35512.75, 485.818, 0.0},           // CaCO3, USGS
      {56.273, -4.1779e-2, -11194.0, 0.0, 0.0},                // CaHCO3+, USGS, as printed
      {0.991, 6.67e-3, 0.0, 0.0, 0.0},                         // MgCO3, USGS
      {48.6721, 3.252849e-2, -2614.335, -18.00263, 563713.9},  // MgHCO3+, USGS
      // NaHCO3 and KHCO3, USGS: from the bicarbonate ion, so its own formation comes on top. The
      // function of NaHCO3 gives -0.306 at 25 C, not the -0.433 printed beside it.
      LogK{-3.589, 7.94e-3, 273.0, 0.0, 0.0} +
          LogK{107.8871, 3.252849e-2, -5151.79, -38.92561, 563713.9},
      log_k_with_enthalpy(-0.35, 12.0) + LogK{107.8871, 3.252849e-2, -5151.79, -38.92561, 563713.9},
      constant_log_k(-12.78),                             // CaOH+, USGS, 25 C
      log_k_with_enthalpy(-11.44, 15.952 * kj_per_kcal),  // MgOH+, USGS
      log_k_with_enthalpy(4.87, -8.368),                  // CaCitrate-, NIST
      log_k_with_enthalpy(9.26, -0.8368),                 // CaHCitrate, NIST
      constant_log_k(12.257),                             // CaH2Citrate+, NIST, 25 C
      log_k_with_enthalpy(4.89, 8.368),                   // MgCitrate-, NIST
      log_k_with_enthalpy(8.91, 3.3472),                  // MgHCitrate, NIST
      constant_log_k(12.2),                               // MgH2Citrate+, NIST, 25 C
      log_k_with_enthalpy(1.1, 5.4392),                   // KCitrate-2, NIST
  }};
}

// Fit to Marshall & Franck 1981 as tabulated by the CRC Handbook, residual at most 0.0006.
constexpr LogK water_constant{280.107357, 6.0196532e-2, -11810.5961, -110.100675, 0.0};

// Plummer & Busenberg 1982 (published).
constexpr LogK henry_constant{108.3865, 1.985076e-2, -6919.53, -40.45154, 669365.0};
constexpr LogK calcite_constant{-171.9065, -7.7993e-2, 2839.319, 71.595, 0.0};

// Potassium hydrogen tartrate: -3.27 from the saturated solution of 0.0341 mol/kg at 25 C, and
// -2.91 at 38 C, which is an enthalpy of 49.2 kJ/mol (both derived, not published).
LogK bitartrate_constant() {
  return log_k_with_enthalpy(-3.27, 49.2);
}

double power_of_ten(double x) {
  return std::pow(10.0, x);
}

}  // namespace

Thermodynamics Thermodynamics::at(double celsius) {
  const double kelvin = celsius + zero_celsius_in_kelvin;
  Thermodynamics result;
  result.celsius = celsius;
  result.density = water_density(celsius);
  result.debye_hueckel = science::debye_hueckel(celsius);
  result.water = power_of_ten(water_constant.at(kelvin));
  result.henry = power_of_ten(henry_constant.at(kelvin));
  result.calcite_product = power_of_ten(calcite_constant.at(kelvin));
  result.bitartrate_product = power_of_ten(bitartrate_constant().at(kelvin));

  const auto acid_table = protonations();
  for (std::size_t i = 0; i < acid_count; ++i) {
    result.beta[i][0] = 1.0;
    for (std::size_t n = 1; n <= static_cast<std::size_t>(acids()[i].protons); ++n) {
      result.beta[i][n] = power_of_ten(acid_table[i].cumulative[n - 1].at(kelvin));
    }
  }
  const auto pair_table = pair_constants();
  for (std::size_t i = 0; i < pair_count; ++i) {
    result.pair[i] = power_of_ten(pair_table[i].at(kelvin));
  }
  return result;
}

double neutral_ph(double celsius) {
  return -0.5 * water_constant.at(celsius + zero_celsius_in_kelvin);
}

}  // namespace sudsmark::science
