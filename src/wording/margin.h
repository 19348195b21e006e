// How far a figure is from its limit, as a number to sort by and in words.
#pragma once

#include <string>
#include <string_view>

#include <sudsmark/results.h>

namespace sudsmark::wording {

/// Where a figure stands to its limit.
enum class Side { within, straddles, outside, unknown };

struct Margin {
  Side side = Side::unknown;
  /// From the figure's worst end to the limit's nearest, over the limit: negative where it is
  /// broken. Infinite where there is no limit.
  double relative = 0;
  std::string words;  ///< "0.9 % to spare", "at best 0.2 % to spare, at worst 0.3 % over"
};

[[nodiscard]] Margin margin(const Figure& measured, const Figure& limit);
/// Margin::relative alone, without the words.
[[nodiscard]] double relative_margin(const Figure& measured, const Figure& limit);

/// A unit as people write it: "°C" for the "C" of the language.
[[nodiscard]] std::string people_unit(std::string_view unit);

/// A figure as people write it, from a kilogram on in kilograms.
[[nodiscard]] std::string shown(const Figure& figure);

/// "at most 2.4 %", "12 to 26 %", "at least 0.5": a limit.
[[nodiscard]] std::string wanted(const Figure& limit);

/// "3 %; at most 2.4 %": a figure beside its limit, in short.
[[nodiscard]] std::string shown_beside(const Figure& measured, const Figure& limit);

/// Whether a verdict has no figure worth a picture: nothing measured, or nothing of it there and
/// nothing wanted of it.
[[nodiscard]] bool nothing_to_show(const Finding& finding);

}  // namespace sudsmark::wording
