// A card that exercises are made of, line by line: amounts are drawn inside their windows, one line
// is broken, and lines and sections are put into another order, all without losing track of which
// line is which.
//
//     Sheet sheet = read_sheet(card.formula);
//     draw_amounts(sheet, draws);
//     const auto broken = broken_line(sheet, breakage, 0.4, draws);   // its place
//     lay_out(sheet, *broken, draws);
//     const Written written = write(sheet, Style::grams);
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "drill/draws.h"
#include "rules/training.h"

namespace sudsmark::drill {

/// An amount as a card has it: a window, and the figure that was drawn inside it.
struct Amount {
  double low = 0;
  double high = 0;
  double drawn = 0;
  std::string unit;  ///< "%", "g", "g per kg", "bags"
  std::string name;  ///< of the material
};

struct Line {
  std::string words;             ///< a statement; of an amount empty
  std::optional<Amount> amount;  ///< absent of statements
  bool fills = false;            ///< `q.s.`: takes what is left to the whole
  double order = 0;
};

struct Section {
  std::string heading;
  std::vector<Line> lines;
  double order = 0;
  [[nodiscard]] bool holds_amounts() const;
};

struct Place {
  std::size_t section = 0;
  std::size_t line = 0;
  friend bool operator==(const Place&, const Place&) = default;
};

struct Sheet {
  std::vector<Section> sections;
  [[nodiscard]] Line& at(const Place& place) { return sections[place.section].lines[place.line]; }
  [[nodiscard]] const Line& at(const Place& place) const {
    return sections[place.section].lines[place.line];
  }
};

[[nodiscard]] Sheet read_sheet(std::string_view formula);
/// One line of a formula: "2 - 3 % kaolin", "q.s. sea salt", "users adults".
[[nodiscard]] Line read_line(std::string_view words);

/// Draws every amount inside its window, to three digits that count.
void draw_amounts(Sheet& sheet, Draws& draws);
/// Sets every amount to the middle of its window.
void take_middles(Sheet& sheet);

/// The first line whose material is called so, or that begins with these words.
[[nodiscard]] std::optional<Place> find_line(const Sheet& sheet, std::string_view words);
/// The first section whose heading begins so.
[[nodiscard]] std::optional<std::size_t> find_section(const Sheet& sheet, std::string_view words);

/// Three digits that count, as a scale would be asked for them.
[[nodiscard]] double rounded(double figure);
[[nodiscard]] std::string words(const Line& line);

}  // namespace sudsmark::drill
