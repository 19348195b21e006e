// How many values an enumeration has, found out from its names, so that nobody has to count them
// anew when one is added.
#pragma once

#include <cstddef>
#include <string_view>

namespace sudsmark::catalogue {
namespace of_enum {

/// Whether a value has a name. In a function's own signature a compiler spells a value that has one
/// by it, "Level::note", and another by its number, "(Level)4".
template <class Enum, Enum value>
[[nodiscard]] constexpr bool has_name() {
  const std::string_view signature = __PRETTY_FUNCTION__;
  std::size_t begin = signature.rfind(']');
  const auto in_word = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
  };
  while (begin > 0 && in_word(signature[begin - 1])) --begin;
  return !(signature[begin] >= '0' && signature[begin] <= '9');
}

template <class Enum, std::size_t first = 0>
[[nodiscard]] constexpr std::size_t count() {
  if constexpr (has_name<Enum, static_cast<Enum>(first)>()) return count<Enum, first + 1>();
  return first;
}

}  // namespace of_enum

/// How many values an enumeration has that counts from zero without a gap.
template <class Enum>
inline constexpr std::size_t enum_size = of_enum::count<Enum>();

}  // namespace sudsmark::catalogue
