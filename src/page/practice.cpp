#include "page/practice.h"

#include <string>
#include <string_view>
#include <utility>

#include "page/note.h"

namespace sudsmark::page {
namespace {

using report::Json;

std::string_view word(Step step) {
  switch (step) {
    case Step::line:
      return "line";
    case Step::reason:
      return "reason";
    case Step::mend:
      return "mend";
    case Step::figure:
      break;
  }
  return "figure";
}

std::string_view word(Judgement judgement) {
  switch (judgement) {
    case Judgement::right:
      return "right";
    case Judgement::wrong:
      return "wrong";
    case Judgement::not_understood:
      break;
  }
  return "not understood";
}

/// "Which of these does it break? The others hold.", without what there is to choose from.
std::string first_line(const std::string& text) {
  return text.substr(0, text.find('\n'));
}

/// What stands above the card.
std::string preface(const Exercise& exercise) {
  if (exercise.sum) return exercise.sum->question;
  const bool two = exercise.kind == ExerciseKind::compare || exercise.kind == ExerciseKind::tweak;
  return two ? first_line(exercise_text(exercise)) : std::string();
}

Json choices(const std::vector<Choice>& all) {
  Json out = Json::array();
  for (const Choice& choice : all) out.push_back(choice.words);
  return out;
}

Json step_of(const Exercise& exercise, Step step) {
  Json out{{"step", word(step)}, {"asks", first_line(question_text(exercise, step))}};
  if (step == Step::reason) out["choices"] = choices(exercise.reasons);
  if (step == Step::mend) out["choices"] = choices(exercise.mends);
  return out;
}

Json nothing_dealt() {
  Problem problem;
  problem.message = "no exercise was dealt";
  return {{"problems", problems({problem})}};
}

}  // namespace

Json dealt(const Asked& asked, const Rulesets& rulesets, Session& session) {
  DrillOptions options;
  if (!asked.name.empty()) options.about = {asked.name};
  options.on = asked.options.on;
  auto made = exercise(rulesets, asked.deal, asked.number, options);
  if (!made) return {{"problems", problems(made.problems)}};
  session.exercise = std::move(*made);
  const Exercise& exercise = *session.exercise;
  Json asked_for = Json::array();
  for (const Step step : steps(exercise)) asked_for.push_back(step_of(exercise, step));
  return {{"subject", exercise.subject},
          {"preface", preface(exercise)},
          {"card", exercise.card},
          {"sound", exercise.sound()},
          {"steps", std::move(asked_for)}};
}

Json judged(const Asked& asked, const Session& session) {
  if (!session.exercise) return nothing_dealt();
  for (const Step step : steps(*session.exercise)) {
    if (word(step) != asked.name) continue;
    const Judged said = judge(*session.exercise, step, asked.typed);
    return {{"judgement", word(said.judgement)}, {"words", said.words}};
  }
  return nothing_dealt();
}

Json hinted(const Session& session) {
  if (!session.exercise) return nothing_dealt();
  return {{"hints", Json(hints(*session.exercise))}};
}

Json solved(const Session& session) {
  if (!session.exercise) return nothing_dealt();
  Json items = Json::array();
  for (const SheetItem& item : solution_items(*session.exercise)) {
    // where the terminal tells more, the page has a button
    if (item.label == "more") continue;
    items.push_back({{"label", item.label}, {"words", item.words}});
  }
  return {{"items", std::move(items)}, {"rule", session.exercise->rule}};
}

}  // namespace sudsmark::page
