#include "proof/amounts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "text/digits.h"

namespace sudsmark::proof {

std::vector<Digits> amounts_in(const std::string& line) {
  std::vector<Digits> out;
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  bool quoted = false;
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (line[at] == '"') quoted = !quoted;
    if (quoted || !digit(line[at])) continue;
    std::size_t end = at;
    while (end < line.size() && (digit(line[end]) || (line[end] == '.' && end + 1 < line.size() &&
                                                      digit(line[end + 1])))) {
      ++end;
    }
    const bool alone = at == 0 || line[at - 1] == ' ' || line[at - 1] == ':';
    const bool ends = end == line.size() || line[end] == ' ' || line[end] == '%';
    const Digits one{at, end, text::read_digits(line.substr(at, end - at)).value_or(0)};
    if (alone && ends && one.value > 0) out.push_back(one);
    at = end;
  }
  return out;
}

std::string figure(double value, int digits) {
  const int whole = static_cast<int>(std::floor(std::log10(value))) + 1;
  std::string out = text::fixed_digits(value, std::max(digits - whole, 0));
  if (out.find('.') != std::string::npos) {
    out.erase(out.find_last_not_of('0') + 1);
    if (out.back() == '.') out.pop_back();
  }
  return out;
}

std::optional<std::size_t> name_in(const std::string& line) {
  const bool fill = line.starts_with("q.s. ");
  const std::vector<Digits> amounts = amounts_in(line);
  if (!fill && (amounts.empty() || amounts.front().begin != 0)) return std::nullopt;
  std::size_t at = fill ? 5 : amounts.front().end;
  if (!fill) {
    if (line.compare(at, 3, " - ") == 0 && amounts.size() > 1) at = amounts[1].end;
    constexpr std::array<std::string_view, 5> units{" % ", " g ", " kg ", " ml ", " parts "};
    const auto unit = std::find_if(units.begin(), units.end(), [&](std::string_view one) {
      return line.compare(at, one.size(), one) == 0;
    });
    if (unit == units.end()) return std::nullopt;
    at += unit->size();
  }
  at = line.find_first_not_of(' ', at);
  if (at == std::string::npos) return std::nullopt;
  return at;
}

}  // namespace sudsmark::proof
