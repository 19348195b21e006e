#include "science/elements.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace sudsmark::science {
namespace {

struct Element {
  std::string_view symbol;
  double mass;  ///< [g/mol]
};

constexpr Element elements[] = {
    {"H", 1.008},      {"Li", 6.94},     {"B", 10.81},      {"C", 12.011},   {"N", 14.007},
    {"O", 15.999},     {"F", 18.998403}, {"Na", 22.989769}, {"Mg", 24.305},  {"Al", 26.981538},
    {"Si", 28.085},    {"P", 30.973762}, {"S", 32.06},      {"Cl", 35.45},   {"K", 39.0983},
    {"Ca", 40.078},    {"Ti", 47.867},   {"V", 50.9415},    {"Cr", 51.9961}, {"Mn", 54.938043},
    {"Fe", 55.845},    {"Co", 58.93319}, {"Ni", 58.6934},   {"Cu", 63.546},  {"Zn", 65.38},
    {"As", 74.921595}, {"Se", 78.971},   {"Br", 79.904},    {"Sr", 87.62},   {"Zr", 91.224},
    {"Ag", 107.8682},  {"Cd", 112.414},  {"Sn", 118.71},    {"Sb", 121.76},  {"I", 126.90447},
    {"Ba", 137.327},   {"Ce", 140.116},  {"Au", 196.96657}, {"Hg", 200.592}, {"Tl", 204.38},
    {"Pb", 207.2},     {"Bi", 208.9804},
};

constexpr std::size_t longest_formula = 200;
constexpr std::size_t deepest_bracket = 8;
constexpr double greatest_count = 10000.0;

const Element* find_element(std::string_view symbol) {
  const auto* const found = std::find_if(std::begin(elements), std::end(elements),
                                         [&](const Element& e) { return e.symbol == symbol; });
  return found == std::end(elements) ? nullptr : found;
}

bool upper(char c) {
  return c >= 'A' && c <= 'Z';
}
bool lower(char c) {
  return c >= 'a' && c <= 'z';
}
bool digit(char c) {
  return c >= '0' && c <= '9';
}

void add(std::vector<Atoms>& sum, const Atoms& atoms, double times) {
  for (Atoms& one : sum) {
    if (one.symbol == atoms.symbol) {
      one.count += atoms.count * times;
      return;
    }
  }
  sum.push_back({atoms.symbol, atoms.mass, atoms.count * times});
}

/// Walks a formula once; the first thing that is none ends the walk.
class Walk {
 public:
  explicit Walk(std::string_view formula) : left_(formula) {}

  std::optional<std::vector<Atoms>> whole() {
    std::vector<Atoms> sum;
    do {
      const std::optional<double> times = count();
      const auto part = times ? group('\0', 0) : std::nullopt;
      if (!part) return std::nullopt;
      for (const Atoms& atoms : *part) add(sum, atoms, *times);
    } while (joint());
    if (!left_.empty()) return std::nullopt;
    return sum;
  }

 private:
  /// A whole number, 1 where none stands; none for 0 and absurd ones.
  std::optional<double> count() {
    if (left_.empty() || !digit(left_.front())) return 1.0;
    double value = 0.0;
    while (!left_.empty() && digit(left_.front())) {
      value = 10.0 * value + (left_.front() - '0');
      if (value > greatest_count) return std::nullopt;
      left_.remove_prefix(1);
    }
    if (value == 0.0) return std::nullopt;
    return value;
  }

  /// What joins the parts of a hydrate.
  bool joint() {
    for (const std::string_view dot : {".", "\xC2\xB7"}) {
      if (left_.substr(0, dot.size()) == dot) {
        left_.remove_prefix(dot.size());
        return true;
      }
    }
    return false;
  }

  std::optional<std::vector<Atoms>> atom() {
    const std::size_t letters = left_.size() > 1 && lower(left_[1]) ? 2 : 1;
    const Element* const element = find_element(left_.substr(0, letters));
    if (element == nullptr) return std::nullopt;
    left_.remove_prefix(letters);
    return std::vector<Atoms>{{element->symbol, element->mass, 1.0}};
  }

  std::optional<std::vector<Atoms>> bracket(std::size_t depth) {
    const char opened = left_.front();
    left_.remove_prefix(1);
    return group(opened == '(' ? ')' : opened == '[' ? ']' : '}', depth + 1);
  }

  /// Atoms and brackets up to `end`, or to a joint or the formula's end; at least one.
  std::optional<std::vector<Atoms>> group(char end, std::size_t depth) {
    if (depth > deepest_bracket) return std::nullopt;
    std::vector<Atoms> sum;
    while (!left_.empty()) {
      const char next = left_.front();
      const bool opens = next == '(' || next == '[' || next == '{';
      if (!opens && !upper(next)) break;
      const auto part = opens ? bracket(depth) : atom();
      const std::optional<double> times = part ? count() : std::nullopt;
      if (!times) return std::nullopt;
      for (const Atoms& atoms : *part) add(sum, atoms, *times);
    }
    if (sum.empty()) return std::nullopt;
    if (end == '\0') return sum;
    if (left_.empty() || left_.front() != end) return std::nullopt;
    left_.remove_prefix(1);
    return sum;
  }

  std::string_view left_;
};

}  // namespace

std::optional<double> atomic_mass(std::string_view symbol) {
  const Element* const element = find_element(symbol);
  if (element == nullptr) return std::nullopt;
  return element->mass;
}

std::optional<std::vector<Atoms>> read_formula(std::string_view formula) {
  if (formula.empty() || formula.size() > longest_formula) return std::nullopt;
  return Walk(formula).whole();
}

}  // namespace sudsmark::science
