// What is fed with bytes of any kind. Each target takes one input, and ends the program where
// something does not hold; whoever runs it looks for inputs that do that, or that never end.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace sudsmark::fuzz {

struct Target {
  std::string_view name;
  /// Where inputs to begin with stand: folders of the project, and how their files end.
  std::string_view seeds;
  std::string_view ending;
  void (*run)(std::string_view input);
};
[[nodiscard]] std::span<const Target> targets();

/// Ends the program with words unless it holds.
void must(bool holds, std::string_view words);

}  // namespace sudsmark::fuzz
