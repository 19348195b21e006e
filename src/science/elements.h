// Chemical formulas: which atoms a substance holds, and what they weigh.
//
//     element_share("KAl2(AlSi3O10)(OH)2", "Al");        // 0.2032: aluminium in muscovite
//     share_as("Na2B4O7.10H2O", "B", "H3BO3");           // 0.6485: borax, as boric acid
//     share_as("NaC7H5O2", "C", "C7H6O2");               // 0.8474: sodium benzoate, as its acid
//
// Laws limit many substances as one of their elements or as their acid; these are the shares that
// such a limit is held against.
//
// Atomic masses: standard atomic weights 2021 of the IUPAC commission CIAAW (read); where that
// table gives an interval, IUPAC's conventional value, which lies in it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace sudsmark::science {

/// One element of a formula.
struct Atoms {
  std::string_view symbol;  ///< "Al"; lives as long as the program
  double mass = 0.0;        ///< of one mol of atoms [g/mol]
  double count = 0.0;       ///< in one formula unit
};

/// Standard atomic mass [g/mol] of an element by its symbol ("Zn"); none for a symbol that is none,
/// or of an element that is not met here (noble gases, most radioactive ones).
[[nodiscard]] std::optional<double> atomic_mass(std::string_view symbol);

/// The elements of a formula, each once, in the order of first mention. Symbols with whole counts,
/// brackets of three kinds up to eight deep, and parts joined by `.` or a middle dot, each with a
/// count before it ("2ZnCO3.3Zn(OH)2"). No blanks, charges or fractions. None for all else.
[[nodiscard]] std::optional<std::vector<Atoms>> read_formula(std::string_view formula);

/// Mass of one mol of a formula [g/mol]; none if it cannot be read.
[[nodiscard]] inline std::optional<double> molar_mass(std::string_view formula) {
  const auto atoms = read_formula(formula);
  if (!atoms) return std::nullopt;
  double sum = 0.0;
  for (const Atoms& one : *atoms) sum += one.mass * one.count;
  return sum;
}

/// Atoms of one element in a formula unit; none if the formula cannot be read.
[[nodiscard]] inline std::optional<double> atoms_of(std::string_view formula,
                                                    std::string_view symbol) {
  const auto atoms = read_formula(formula);
  if (!atoms) return std::nullopt;
  for (const Atoms& one : *atoms) {
    if (one.symbol == symbol) return one.count;
  }
  return 0.0;
}

/// Share by mass [1] of one element in a substance; 0 where it holds none of it, none if formula or
/// symbol cannot be read.
[[nodiscard]] inline std::optional<double> element_share(std::string_view formula,
                                                         std::string_view symbol) {
  const auto mass = atomic_mass(symbol);
  const auto count = atoms_of(formula, symbol);
  const auto whole = molar_mass(formula);
  if (!mass || !count || !whole) return std::nullopt;
  return *count * *mass / *whole;
}

/// Grams of another form with as much of `symbol` as one gram of the substance: borax as boric acid
/// by its boron, sodium benzoate as benzoic acid by its carbon. May be above 1. None if anything
/// cannot be read or `form` holds no such element.
[[nodiscard]] inline std::optional<double> share_as(std::string_view formula,
                                                    std::string_view symbol,
                                                    std::string_view form) {
  const auto held = atoms_of(formula, symbol);
  const auto wanted = atoms_of(form, symbol);
  const auto whole = molar_mass(formula);
  const auto other = molar_mass(form);
  if (!held || !wanted || !whole || !other || !(*wanted > 0.0)) return std::nullopt;
  return *held / *wanted * *other / *whole;
}

}  // namespace sudsmark::science
