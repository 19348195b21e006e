#include "drill/sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark::drill {
namespace {

constexpr std::array<std::string_view, 9> openers{
    "formula", "phase", "premix", "portion", "fragrance", "material", "workshop", "task", "label"};
constexpr std::array<std::string_view, 7> units{"g per kg", "%", "g", "kg", "oz", "bags", "bag"};

std::string_view bare(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") + 1 - first);
}

/// Whether a line begins with a word that stands by itself.
bool begins(std::string_view line, std::string_view words) {
  if (!line.starts_with(words)) return false;
  return line.size() == words.size() || line[words.size()] == ' ' || words.back() == ' ';
}

bool opens_section(std::string_view line) {
  return std::any_of(openers.begin(), openers.end(),
                     [&](std::string_view word) { return begins(line, word); });
}

/// Takes a number off the front.
std::optional<double> take_number(std::string_view& rest) {
  const std::size_t end = std::min(rest.find_first_not_of("0123456789."), rest.size());
  const auto number = quantity::read_number(rest.substr(0, end));
  if (number) rest = bare(rest.substr(end));
  return number;
}

std::optional<Amount> read_amount(std::string_view line) {
  Amount out;
  const auto low = take_number(line);
  if (!low) return std::nullopt;
  out.low = out.high = *low;
  if (line.starts_with("- ")) {
    line.remove_prefix(2);
    const auto high = take_number(line);
    if (!high) return std::nullopt;
    out.high = *high;
  }
  out.drawn = out.low;
  for (const std::string_view unit : units) {
    if (!begins(line, unit)) continue;
    out.unit = unit;
    out.name = bare(line.substr(unit.size()));
    if (out.name.empty()) return std::nullopt;
    return out;
  }
  return std::nullopt;
}

constexpr std::string_view fill_words = "q.s.";

}  // namespace

bool Section::holds_amounts() const {
  return begins(heading, "phase") || begins(heading, "premix") || begins(heading, "portion");
}

Line read_line(std::string_view text) {
  Line line;
  const std::string_view rest = bare(text);
  if (begins(rest, fill_words)) {
    line.fills = true;
    line.amount = Amount{0, 0, 0, "%", std::string(bare(rest.substr(fill_words.size())))};
  } else if (auto amount = read_amount(rest)) {
    line.amount = std::move(amount);
  } else {
    line.words = rest;
  }
  return line;
}

Sheet read_sheet(std::string_view formula) {
  Sheet sheet;
  while (!formula.empty()) {
    const std::size_t end = std::min(formula.find('\n'), formula.size());
    const std::string_view line = bare(formula.substr(0, end));
    formula.remove_prefix(std::min(end + 1, formula.size()));
    if (line.empty() || line.front() == '#') continue;
    if (sheet.sections.empty() || opens_section(line)) {
      sheet.sections.push_back({std::string(line), {}, 0});
      continue;
    }
    Line read = read_line(line);
    // what a fragrance or a workshop states with a figure is a statement, however it looks
    if (!sheet.sections.back().holds_amounts()) read = {std::string(line), {}, false, 0};
    sheet.sections.back().lines.push_back(std::move(read));
  }
  return sheet;
}

double rounded(double figure) {
  if (figure <= 0) return 0;
  const double step = std::pow(10.0, std::floor(std::log10(figure)) - 2);
  return std::round(figure / step) * step;
}

void draw_amounts(Sheet& sheet, Draws& draws) {
  for (Section& section : sheet.sections) {
    for (Line& line : section.lines) {
      if (!line.amount || line.fills) continue;
      Amount& amount = *line.amount;
      const bool window = amount.high > amount.low;
      amount.drawn = window ? rounded(draws.between(amount.low, amount.high)) : amount.low;
    }
  }
}

void take_middles(Sheet& sheet) {
  for (Section& section : sheet.sections) {
    for (Line& line : section.lines) {
      if (line.amount) line.amount->drawn = (line.amount->low + line.amount->high) / 2;
    }
  }
}

std::optional<Place> find_line(const Sheet& sheet, std::string_view wanted) {
  const std::string folded = text::fold(wanted);
  for (std::size_t section = 0; section < sheet.sections.size(); ++section) {
    const auto& lines = sheet.sections[section].lines;
    for (std::size_t at = 0; at < lines.size(); ++at) {
      const Line& line = lines[at];
      const bool found = line.amount ? text::fold(line.amount->name) == folded
                                     : begins(text::fold(line.words), folded);
      if (found) return Place{section, at};
    }
  }
  return std::nullopt;
}

std::optional<std::size_t> find_section(const Sheet& sheet, std::string_view wanted) {
  for (std::size_t at = 0; at < sheet.sections.size(); ++at) {
    if (begins(sheet.sections[at].heading, wanted)) return at;
  }
  return std::nullopt;
}

std::string words(const Line& line) {
  if (!line.amount) return line.words;
  const Amount& amount = *line.amount;
  std::string figure = line.fills ? std::string(fill_words)
                                  : quantity::machine_number(amount.drawn) + " " + amount.unit;
  constexpr std::size_t column = 10;
  figure.append(figure.size() + 1 < column ? column - figure.size() : 1, ' ');
  return figure + amount.name;
}

}  // namespace sudsmark::drill
