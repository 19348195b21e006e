#include "text/name.h"

#include <algorithm>
#include <utility>

namespace sudsmark::text {
namespace {

bool separates(char c) {
  return c == ' ' || c == '\t' || c == '-' || c == '_';
}

}  // namespace

void append_folded(std::string& out, std::string_view name) {
  const std::size_t start = out.size();
  for (const char c : name) {
    if (separates(c)) {
      if (out.size() > start && out.back() != ' ') out += ' ';
    } else {
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  if (out.size() > start && out.back() == ' ') out.pop_back();
}

std::string fold(std::string_view name) {
  std::string out;
  out.reserve(name.size());
  append_folded(out, name);
  return out;
}

std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit) {
  const std::size_t gap = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (gap > limit) return limit + 1;
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    std::size_t least = row[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
      least = std::min(least, row[j]);
    }
    if (least > limit) return limit + 1;
    std::swap(before, above);
    std::swap(above, row);
  }
  return std::min(above[b.size()], limit + 1);
}

std::vector<std::string> nearest(std::string_view name, std::span<const std::string> candidates,
                                 std::size_t most) {
  const std::string wanted = fold(name);
  const std::size_t limit = std::clamp<std::size_t>(wanted.size() / 3, 1, 4);
  std::vector<std::pair<std::size_t, std::size_t>> near;
  for (std::size_t at = 0; at < candidates.size(); ++at) {
    const std::string candidate = fold(candidates[at]);
    std::size_t distance = edit_distance(wanted, candidate, limit);
    const bool holds = wanted.size() >= 4 && candidate.find(wanted) != std::string::npos;
    const bool held = candidate.size() >= 4 && wanted.find(candidate) != std::string::npos;
    if (distance > limit && (holds || held)) distance = limit;
    if (distance <= limit) near.emplace_back(distance, at);
  }
  std::sort(near.begin(), near.end());
  std::vector<std::string> names;
  for (const auto& [distance, at] : near) {
    if (names.size() == most) break;
    if (std::find(names.begin(), names.end(), candidates[at]) == names.end()) {
      names.push_back(candidates[at]);
    }
  }
  return names;
}

std::string series(std::span<const std::string> items, std::string_view last) {
  std::string out;
  for (std::size_t at = 0; at < items.size(); ++at) {
    if (at > 0) out += at + 1 == items.size() ? " " + std::string(last) + " " : std::string(", ");
    out += items[at];
  }
  return out;
}

std::string in_quotes(std::string_view name) {
  return "'" + std::string(name) + "'";
}

std::string listed(std::span<const std::string> names, std::string_view last) {
  std::vector<std::string> quoted;
  for (const std::string& name : names) quoted.push_back(in_quotes(name));
  return series(quoted, last);
}

std::string perhaps(std::span<const std::string> near) {
  return near.empty() ? std::string() : "; perhaps " + listed(near);
}

}  // namespace sudsmark::text
