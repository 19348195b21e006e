// What may stand in a command line's place, as far as a shell can offer it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "cli/declaration.h"

namespace sudsmark::manual {

enum class Value : std::uint8_t {
  nothing,  ///< a number, a day: only the user knows
  words,    ///< one of a few
  words_with_path,
  rules,  ///< ids, with commas between them
  markets,
  file,
  formula,  ///< a *.formula, or a folder
  topic,    ///< what `explain` and `drill` know by name
};

/// By how its value is declared to look.
[[nodiscard]] Value value_of(const cli::DeclaredOption& option);
/// Of the words that a command takes beside options.
[[nodiscard]] Value value_of_words(const cli::Declaration& command);

/// The names that completion offers.
struct Names {
  std::vector<std::string> rules;
  std::vector<std::string> topics;  ///< rules, their subjects, and measures
  std::vector<std::string> markets;
};

/// Those of the built-in rulesets.
[[nodiscard]] Names built_in_names();

/// All of them with a blank between.
[[nodiscard]] std::string in_a_row(const std::vector<std::string>& words);

}  // namespace sudsmark::manual
