#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

#include "science/species.h"

namespace sudsmark::science {

/// A pure substance of the trade as bath chemistry sees it. One mol of it brings `parts` into the
/// water; the protons of an acid are not listed, since the charge balance finds them. Borax, say,
/// is 2 sodium and 4 borate; citric acid is 1 citrate and nothing else.
struct Substance {
  struct Part {
    Component component = Component::sodium;
    double mol = 0.0;  ///< per mol of the substance; 0 ends the list
  };

  std::string_view name;     ///< lower case English, "citric acid monohydrate"
  std::string_view formula;  ///< "C6H8O7.H2O"
  std::string_view cas;      ///< CAS number (from memory, check digit right), or empty
  double molar_mass;         ///< [g/mol]
  double acid_protons;       ///< protons it can give to bicarbonate [mol/mol]
  double bicarbonate;        ///< HCO3- in it [mol/mol]
  double carbonate;          ///< CO3-2 in it [mol/mol]
  std::array<Part, 3> parts{};
  /// Protons of an acid whose dissociation constants are not at hand (fumaric, succinic, gluconic,
  /// pyrophosphoric). Its anion is booked as `other_anion` with these protons given off, and
  /// `ph_uncertainty` pays for their staying on. 0 for all others [mol/mol].
  double undetermined_protons = 0.0;
};

/// Protons that its bases can take up from an acid, bicarbonate 1 and carbonate 2 [mol/mol].
constexpr double base_protons(const Substance& substance) {
  return substance.bicarbonate + 2.0 * substance.carbonate;
}

/// The substances known by name. Molar masses from atomic masses (computed).
std::span<const Substance> bath_substances();

/// The substance of that name or CAS number, or null.
const Substance* find_substance(std::string_view name_or_cas);

}  // namespace sudsmark::science
