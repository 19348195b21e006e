// Cases that are alike, or made up at random: all of them; where sanitizers watch, which takes ten
// times as long, one in eight.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

namespace sudsmark::testing {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool sanitized = true;
#elif defined(__has_feature)
inline constexpr bool sanitized = __has_feature(address_sanitizer);
#else
inline constexpr bool sanitized = false;
#endif
inline constexpr std::size_t one_of_those_alike = sanitized ? 8 : 1;

/// So many of `count`, rounded up: as many cases to make up, or as many as have to be found.
constexpr std::size_t of_those_alike(std::size_t count) {
  return (count + one_of_those_alike - 1) / one_of_those_alike;
}

/// Every one of them, or every eighth.
template <class Case>
std::vector<Case> of_those_alike(std::vector<Case> cases) {
  std::vector<Case> out;
  for (std::size_t at = 0; at < cases.size(); at += one_of_those_alike) {
    out.push_back(std::move(cases[at]));
  }
  return out;
}

}  // namespace sudsmark::testing
