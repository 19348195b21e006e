// Units and dimensions.
//
// Inside the program a quantity is a double in the base unit of its dimension: mass in g, volume in
// l, amount of substance in mmol, temperature in degrees Celsius, time in h, a share as a fraction
// of 1. Units only matter where text is read or printed.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace sudsmark::quantity {

/// What a quantity without physical dimension is: a plain number (`2`, a pH), a share of a whole
/// (`5 %`), or a quotient of two like quantities, which may be held against either.
enum class Flavour : std::uint8_t { number, share, ratio };

/// Exponents of mass, volume, amount of substance, temperature and time; flavour where all are 0.
struct Dimension {
  std::int8_t mass = 0;
  std::int8_t volume = 0;
  std::int8_t amount = 0;
  std::int8_t temperature = 0;
  std::int8_t time = 0;
  Flavour flavour = Flavour::number;

  /// No physical dimension: a number, a share or a ratio.
  [[nodiscard]] constexpr bool bare() const {
    return mass == 0 && volume == 0 && amount == 0 && temperature == 0 && time == 0;
  }
  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
};

namespace dimension {
inline constexpr Dimension number{};
inline constexpr Dimension share{0, 0, 0, 0, 0, Flavour::share};
inline constexpr Dimension ratio{0, 0, 0, 0, 0, Flavour::ratio};
inline constexpr Dimension mass{1, 0, 0, 0, 0, Flavour::number};
inline constexpr Dimension volume{0, 1, 0, 0, 0, Flavour::number};
inline constexpr Dimension amount{0, 0, 1, 0, 0, Flavour::number};
inline constexpr Dimension temperature{0, 0, 0, 1, 0, Flavour::number};
inline constexpr Dimension time{0, 0, 0, 0, 1, Flavour::number};
inline constexpr Dimension concentration{1, -1, 0, 0, 0, Flavour::number};
inline constexpr Dimension molality{-1, 0, 1, 0, 0, Flavour::number};
inline constexpr Dimension molarity{0, -1, 1, 0, 0, Flavour::number};
inline constexpr Dimension rate{0, 0, 0, 0, -1, Flavour::number};
}  // namespace dimension

/// Whether two quantities may be added, compared, or one be given for the other: the same physical
/// dimension, and not a share against a plain number.
[[nodiscard]] bool comparable(const Dimension& a, const Dimension& b);
/// Dimension of a product and of a quotient.
[[nodiscard]] Dimension product(const Dimension& a, const Dimension& b);
[[nodiscard]] Dimension quotient(const Dimension& a, const Dimension& b);
/// "a mass", "a share", "a number", "a concentration": for sentences.
[[nodiscard]] std::string_view described(const Dimension& dimension);

/// A unit: value in the base unit = factor * figure + offset.
struct Unit {
  std::string_view word;
  Dimension dimension;
  double factor = 1.0;
  double offset = 0.0;

  // A factor below 1 is the inverse of a whole number (but for F), and dividing by that is exact
  // where multiplying by a rounded fraction is not: 57 % is the double nearest to 0.57.
  [[nodiscard]] constexpr double to_base(double figure) const {
    return (factor < 1 ? figure / (1 / factor) : figure * factor) + offset;
  }
  [[nodiscard]] constexpr double from_base(double value) const {
    return factor < 1 ? (value - offset) * (1 / factor) : (value - offset) / factor;
  }
};

/// All units, in no special order. "1" is the unit of plain numbers, "pH" of pH values.
[[nodiscard]] std::span<const Unit> units();
/// The unit of a word, spelled exactly so; none if there is no such unit.
[[nodiscard]] std::optional<Unit> find_unit(std::string_view word);
/// The unit in which a quantity of this dimension is printed when nobody says otherwise.
[[nodiscard]] const Unit& usual_unit(const Dimension& dimension);

}  // namespace sudsmark::quantity
