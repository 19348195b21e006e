// Practice: an exercise is dealt, answered step by step, and solved.
#pragma once

#include "page/asked.h"
#include "page/session.h"
#include "report/json.h"

namespace sudsmark::page {

/// The exercise of a seed and a number; it stays until the next is dealt.
[[nodiscard]] report::Json dealt(const Asked& asked, const Rulesets& rulesets, Session& session);
/// What was typed at a step of it, judged.
[[nodiscard]] report::Json judged(const Asked& asked, const Session& session);
/// Its hints, each telling more than the one before.
[[nodiscard]] report::Json hinted(const Session& session);
/// What is wrong with it, why, what to change, and where that comes from.
[[nodiscard]] report::Json solved(const Session& session);

}  // namespace sudsmark::page
