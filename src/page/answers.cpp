#include "page/answers.h"

#include <array>
#include <string_view>
#include <utility>

#include <sudsmark/suggest.h>

#include "page/margin.h"
#include "page/names.h"
#include "page/note.h"
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
  DrillOptions options;
  options.deal = asked.deal;
  if (!asked.name.empty()) options.about = {asked.name};
  options.on = asked.options.on;
  auto dealt = exercises(rulesets, options);
  if (!dealt) return {{"problems", problems(dealt.problems)}};
  session.exercises = std::move(*dealt);
  Json out = Json::array();
  for (const Exercise& exercise : session.exercises) {
    out.push_back({{"subject", exercise.subject}, {"formula", exercise.formula}});
  }
  return {{"exercises", std::move(out)}};
}

std::string_view judgement_word(Judgement judgement) {
  switch (judgement) {
    case Judgement::right:
      return "right";
    case Judgement::wrong:
      return "wrong";
    case Judgement::hint_wanted:
      return "hint";
    case Judgement::shown:
      return "shown";
    case Judgement::enough:
      return "enough";
    case Judgement::not_understood:
      break;
  }
  return "not understood";
}

Json judge_answer(const Asked& asked, const Rulesets& /*rulesets*/, Session& session) {
  if (asked.number >= session.exercises.size()) return wrong("there is no such exercise");
  const Exercise& exercise = session.exercises[asked.number];
  const Judged judged = judge(exercise, asked.typed);
  Json out{{"judgement", judgement_word(judged.judgement)}, {"words", judged.words}};
  if (judged.judgement == Judgement::right || judged.judgement == Judgement::shown) {
    out["solution"] = solution_text(exercise);
  }
  return out;
}

struct Row {
  std::string_view what;
  Json (*write)(const Asked& asked, const Rulesets& rulesets, Session& session);
};

constexpr std::array rows{Row{"margin", margin_answer}, Row{"names", names_answer},
                          Row{"report", report_answer}, Row{"tweak", tweak_answer},
                          Row{"deal", deal_answer},     Row{"judge", judge_answer}};

}  // namespace

std::string refusal(const std::vector<Problem>& all) {
  return Json{{"problems", problems(all)}}.text(-1, false);
}

std::string answer(const Asked& asked, Session& session) {
  for (const Row& row : rows) {
    if (row.what != asked.what) continue;
    if (asked.rules.empty()) return row.write(asked, session.built_in, session).text(-1, false);
    const auto own = session.built_in.with(asked.rules);
    return own ? row.write(asked, *own, session).text(-1, false) : refusal(own.problems);
  }
  return wrong("nobody answers '" + asked.what + "'").text(-1, false);
}

}  // namespace sudsmark::page
