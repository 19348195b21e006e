// The order of a sheet's sections and lines, and its text in the units of a workshop.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "drill/sheet.h"

namespace sudsmark::drill {

/// How amounts are written: with a line that fills up, all in per cent, or weighed for the batch.
enum class Style : std::uint8_t { fills, per_cent, grams };

/// The styles that a sheet can be written in.
[[nodiscard]] std::vector<Style> styles(const Sheet& sheet);

/// Gives sections and lines another order. A line that a fault stands in, or may stand in, is as
/// likely to be the first of the card as the last.
void lay_out(Sheet& sheet, const Place& fault, Draws& draws);

struct Written {
  std::string text;
  /// By section and line of the sheet: its number in the text, from 1.
  std::vector<std::vector<std::uint32_t>> numbers;
  /// By number of a line less 1: the heading that it stands under.
  std::vector<std::string> headings;
  [[nodiscard]] std::uint32_t number(const Place& place) const {
    return numbers[place.section][place.line];
  }
};

[[nodiscard]] Written write(const Sheet& sheet, Style style);

/// A line as that style has it: what it weighs or its share.
[[nodiscard]] std::string words_in(const Sheet& sheet, const Line& line, Style style);

}  // namespace sudsmark::drill
