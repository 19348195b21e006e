// Answers: one row for each thing that the page can ask. All of them are made of the street front
// and of the register of reports.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "page/asked.h"
#include "page/session.h"

namespace sudsmark::page {

/// The answer as JSON on one line. What cannot be answered says so under "problems".
[[nodiscard]] std::string answer(const Asked& asked, Session& session);

/// Problems alone, as an answer.
[[nodiscard]] std::string refusal(const std::vector<Problem>& problems);

}  // namespace sudsmark::page
