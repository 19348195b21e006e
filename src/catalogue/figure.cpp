#include "catalogue/figure.h"

#include <algorithm>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/messages.h"
#include "quantity/number.h"
#include "text/yaml_fields.h"

namespace sudsmark::catalogue {
namespace {

using quantity::Dimension;
using quantity::Range;
using quantity::Unit;

constexpr double infinity = std::numeric_limits<double>::infinity();

/// A figure taken apart: "at least 65 - 72 %" would be all of it.
struct Parts {
  enum class Bound { exact, below, at_least };
  Bound bound = Bound::exact;
  double low = 0;
  double high = 0;
  bool range = false;
  std::string_view unit;
};

/// Takes a figure apart from the left.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  std::optional<Parts> parts() {
    Parts parts;
    if (take_word("below")) {
      parts.bound = Parts::Bound::below;
    } else if (take_word("at least")) {
      parts.bound = Parts::Bound::at_least;
    }
    const auto low = take_number();
    if (!low) return std::nullopt;
    parts.low = parts.high = *low;
    const bool apart = rest_.starts_with(' ');
    skip_blanks();
    if (apart && (take_word("to") || take_word("-"))) {
      const auto high = take_number();
      if (!high || parts.bound != Parts::Bound::exact) return std::nullopt;
      parts.high = *high;
      parts.range = true;
    }
    skip_blanks();
    parts.unit = rest_;
    if (!rest_.empty() && std::string_view("0123456789.,-+").find(rest_[0]) != rest_.npos) {
      return std::nullopt;
    }
    return parts;
  }

 private:
  void skip_blanks() { rest_.remove_prefix(std::min(rest_.find_first_not_of(' '), rest_.size())); }

  /// Takes a word and the blanks after it, of which there must be one.
  bool take_word(std::string_view word) {
    if (!rest_.starts_with(word) || !rest_.substr(word.size()).starts_with(' ')) return false;
    rest_.remove_prefix(word.size());
    skip_blanks();
    return true;
  }

  std::optional<double> take_number() {
    const bool negative = rest_.starts_with('-');
    if (negative) rest_.remove_prefix(1);
    const std::size_t size = std::min(rest_.find_first_not_of("0123456789."), rest_.size());
    const auto number = quantity::read_number(rest_.substr(0, size));
    rest_.remove_prefix(size);
    if (!number) return std::nullopt;
    return negative ? -*number : *number;
  }

  std::string_view rest_;
};

std::string example(const Dimension& wanted) {
  const Unit& unit = quantity::usual_unit(wanted);
  return unit.word == "1" ? "2 - 3" : "2 - 3 " + std::string(unit.word);
}

/// The unit of a figure, if it is one of the dimension wanted.
std::optional<Unit> unit_of(const Parts& parts, const Dimension& wanted, const text::Node& node,
                            std::string_view whole, text::Diagnostics& diagnostics) {
  const auto unit = quantity::find_unit(parts.unit.empty() ? "1" : parts.unit);
  if (!unit) {
    std::vector<std::string> known;
    for (const Unit& each : quantity::units()) known.emplace_back(each.word);
    diagnostics.add(messages::unknown_unit, node.span,
                    {std::string(parts.unit), text::hint(parts.unit, known)});
  } else if (!quantity::comparable(unit->dimension, wanted)) {
    diagnostics.add(messages::wrong_dimension, node.span,
                    {std::string(quantity::described(wanted)),
                     std::string(quantity::described(unit->dimension)), std::string(whole)});
  } else {
    return unit;
  }
  return std::nullopt;
}

Range in_base(const Parts& parts, const Unit& unit, bool temperature, bool share) {
  const double low = unit.to_base(parts.low);
  const double high = unit.to_base(parts.high);
  switch (parts.bound) {
    case Parts::Bound::below:
      return {temperature ? -infinity : 0.0, high};
    case Parts::Bound::at_least:
      return {low, share ? 1.0 : infinity};
    case Parts::Bound::exact:
      break;
  }
  return {low, high};
}

}  // namespace

std::optional<Range> read_figure(const text::Node& node, const Dimension& wanted,
                                 text::Diagnostics& diagnostics) {
  const auto whole = text::text_of(node, diagnostics);
  if (!whole) return std::nullopt;
  const auto parts = Scanner(*whole).parts();
  const bool temperature = quantity::comparable(wanted, quantity::dimension::temperature);
  const bool negative = parts && (parts->low < 0 || parts->high < 0);
  if (!parts || (negative && !temperature)) {
    diagnostics.add(messages::bad_figure, node.span,
                    {std::string(quantity::described(wanted)), example(wanted), *whole});
    return std::nullopt;
  }
  const auto unit = unit_of(*parts, wanted, node, *whole, diagnostics);
  if (!unit) return std::nullopt;
  if (parts->low > parts->high) {
    diagnostics.add(messages::reversed_range, node.span);
    return std::nullopt;
  }
  const bool share = wanted.bare() && wanted.flavour == quantity::Flavour::share;
  return in_base(*parts, *unit, temperature, share);
}

std::optional<double> read_exact(const text::Node& node, text::Diagnostics& diagnostics) {
  const auto figure = read_figure(node, quantity::dimension::number, diagnostics);
  if (!figure) return std::nullopt;
  if (!figure->exact()) {
    diagnostics.add(messages::one_figure, node.span);
    return std::nullopt;
  }
  return figure->low;
}

}  // namespace sudsmark::catalogue
