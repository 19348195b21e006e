// Hazard statements in the words of a workshop, and what to do when it happened all the same.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measures/task_hazards.h"

namespace sudsmark::worksheet {

/// What a statement says, in our own words: "damages eyes for good" for H318. Empty for a code that
/// nobody meets in a bath workshop; then the code has to speak for itself.
[[nodiscard]] std::string_view hazard_words(std::string_view code);

/// A piece of advice and where it comes from.
struct Advice {
  std::string about;  ///< "in the eyes"
  std::string words;
  std::string source;  ///< "published: …", "common practice"
};

/// What to wear and mind for statements that apply or may.
[[nodiscard]] std::vector<Advice> precautions(const measures::HandledHazards& hazards);
/// First aid that follows from them.
[[nodiscard]] std::vector<Advice> first_aid(const measures::HandledHazards& hazards);

}  // namespace sudsmark::worksheet
