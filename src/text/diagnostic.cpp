#include "text/diagnostic.h"

#include <algorithm>
#include <utility>

#include "text/digits.h"

namespace sudsmark::text {
namespace {

std::string words(const Argument& argument) {
  if (const auto* text = std::get_if<std::string>(&argument)) return *text;
  constexpr int digits = 6;
  return general_digits(std::get<double>(argument), digits);
}

}  // namespace

std::string sentence(const Diagnostic& diagnostic) {
  std::string out;
  const std::string_view pattern = diagnostic.message->pattern;
  for (std::size_t at = 0; at < pattern.size(); ++at) {
    const bool hole = pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 2] == '}' &&
                      pattern[at + 1] >= '0' && pattern[at + 1] <= '9';
    if (!hole) {
      out += pattern[at];
      continue;
    }
    const auto index = static_cast<std::size_t>(pattern[at + 1] - '0');
    if (index < diagnostic.arguments.size()) out += words(diagnostic.arguments[index]);
    at += 2;
  }
  return out;
}

std::string instead(const Diagnostic& diagnostic) {
  const int at = diagnostic.message->instead;
  if (at < 0 || static_cast<std::size_t>(at) >= diagnostic.arguments.size()) return {};
  return words(diagnostic.arguments[static_cast<std::size_t>(at)]);
}

void Diagnostics::add(const Message& message, Span place, std::vector<Argument> arguments) {
  add(Diagnostic{&message, std::move(arguments), {place}});
}

void Diagnostics::add(const Message& message, std::initializer_list<Span> places,
                      std::vector<Argument> arguments) {
  add(Diagnostic{&message, std::move(arguments), places});
}

void Diagnostics::add(Diagnostic diagnostic) {
  ++count_;
  const FileIndex file = diagnostic.places.empty() ? no_file : diagnostic.places.front().file;
  const auto same_file = [&](const Diagnostic& item) {
    return !item.places.empty() && item.places.front().file == file;
  };
  if (static_cast<std::size_t>(std::count_if(items_.begin(), items_.end(), same_file)) >= most)
    return;
  items_.push_back(std::move(diagnostic));
}

std::vector<Diagnostic> Diagnostics::in_order() const {
  std::vector<Diagnostic> sorted = items_;
  const auto key = [](const Diagnostic& item) {
    const Span place = item.places.empty() ? Span{} : item.places.front();
    return std::pair(place.file, place.begin);
  };
  std::stable_sort(sorted.begin(), sorted.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
  return sorted;
}

}  // namespace sudsmark::text
