#include "page/answers.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include <sudsmark/suggest.h>

#include "page/margin.h"
#include "page/names.h"
#include "page/note.h"
#include "page/practice.h"
#include "page/reports.h"

namespace sudsmark::page {
namespace {

using report::Json;

Json wrong(std::string message) {
  Problem problem;
  problem.message = std::move(message);
  return {{"problems", problems({problem})}};
}

Json margin_answer(const Asked& asked, const Rulesets& rulesets, Session& /*session*/) {
  CheckOptions options = asked.options;
  options.lines = true;
  return margin(check(asked.card, rulesets, options), rulesets);
}

Json names_answer(const Asked& /*asked*/, const Rulesets& rulesets, Session& /*session*/) {
  return names(rulesets);
}

Json report_answer(const Asked& asked, const Rulesets& rulesets, Session& /*session*/) {
  return written_report(asked, rulesets);
}

/// The answer of `suggest` that the page asks for, as a tweak of the card.
Json tweak_answer(const Asked& asked, const Rulesets& rulesets, Session& /*session*/) {
  const auto made = suggest(asked.card, rulesets, asked.options, {});
  if (!made) return {{"problems", problems(made.problems)}};
  if (asked.number >= made->answers.size()) return wrong("there is no such answer");
  return {{"text", suggested_tweak(*made, asked.number, asked.card.path, asked.options.batch)}};
}

Json deal_answer(const Asked& asked, const Rulesets& rulesets, Session& session) {
  return dealt(asked, rulesets, session);
}

Json judge_answer(const Asked& asked, const Rulesets& /*rulesets*/, Session& session) {
  return judged(asked, session);
}

Json hints_answer(const Asked& /*asked*/, const Rulesets& /*rulesets*/, Session& session) {
  return hinted(session);
}

Json solution_answer(const Asked& /*asked*/, const Rulesets& /*rulesets*/, Session& session) {
  return solved(session);
}

struct Row {
  std::string_view what;
  Json (*write)(const Asked& asked, const Rulesets& rulesets, Session& session);
};

constexpr std::array rows{Row{"margin", margin_answer}, Row{"names", names_answer},
                          Row{"report", report_answer}, Row{"tweak", tweak_answer},
                          Row{"deal", deal_answer},     Row{"judge", judge_answer},
                          Row{"hints", hints_answer},   Row{"solution", solution_answer}};

bool same(const std::vector<RulesetText>& one, const std::vector<RulesetText>& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [](const RulesetText& a, const RulesetText& b) {
                      return a.path == b.path && a.text == b.text;
                    });
}

/// With the reader's own files, which are read once and not at every keystroke.
Result<Rulesets> rulesets_of(const Asked& asked, Session& session) {
  if (asked.rules.empty()) return {session.built_in, {}};
  if (session.own && same(session.own_texts, asked.rules)) return {*session.own, {}};
  auto made = session.built_in.with(asked.rules);
  session.own = made.value;
  session.own_texts = asked.rules;
  return made;
}

}  // namespace

std::string refusal(const std::vector<Problem>& all) {
  return Json{{"problems", problems(all)}}.text(-1, false);
}

std::string answer(const Asked& asked, Session& session) {
  for (const Row& row : rows) {
    if (row.what != asked.what) continue;
    const auto rulesets = rulesets_of(asked, session);
    return rulesets ? row.write(asked, *rulesets, session).text(-1, false)
                    : refusal(rulesets.problems);
  }
  return wrong("nobody answers '" + asked.what + "'").text(-1, false);
}

}  // namespace sudsmark::page
