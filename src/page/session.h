// What is kept between two questions.
#pragma once

#include <optional>
#include <vector>

#include <sudsmark/drill.h>
#include <sudsmark/rulesets.h>

namespace sudsmark::page {

struct Session {
  Rulesets built_in = Rulesets::built_in();
  std::vector<RulesetText> own_texts;  ///< the reader's own files, as they were asked with last
  std::optional<Rulesets> own;         ///< what they come to with the built-in ones
  std::optional<Exercise> exercise;    ///< that was dealt last
};

}  // namespace sudsmark::page
