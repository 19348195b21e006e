// Answers: one row for each thing that the page can ask. All of them are made of the street front
// and of the register of reports.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/drill.h>
#include <sudsmark/rulesets.h>

#include "page/asked.h"

namespace sudsmark::page {

/// What is kept between two questions: the rulesets, read once, and the exercises that were dealt.
struct Session {
  Rulesets built_in = Rulesets::built_in();
  std::vector<Exercise> exercises;
};

/// The answer as JSON on one line. What cannot be answered says so under "problems".
[[nodiscard]] std::string answer(const Asked& asked, Session& session);

/// Problems alone, as an answer.
[[nodiscard]] std::string refusal(const std::vector<Problem>& problems);

}  // namespace sudsmark::page
