#include "cli/lesson.h"

#include <sudsmark/results.h>

#include "text/name.h"

namespace sudsmark::cli {
namespace {

/// Wrong answers to one step before the next one is asked.
constexpr int most_tries = 3;

constexpr const char* help =
    "Type a number (of a line, or of what you choose), fine if nothing is wrong, or a figure.\n"
    "  hint    tells a little more each time: the subject, the section, the line\n"
    "  answer  shows the solution and goes on\n"
    "  q       ends with the score, as do Ctrl-C and the end of input\n"
    "  ?       this help\n";

}  // namespace

void Lesson::hint(const Exercise& exercise) {
  const auto all = hints(exercise);
  helped_ = true;
  if (hints_given_ < all.size()) {
    speech_.say(all[hints_given_++] + "\n");
  } else {
    speech_.say("There are no more hints; answer shows the solution.\n");
  }
}

Lesson::Answered Lesson::ask_step(const Exercise& exercise, Step step) {
  speech_.say("\n" + question_text(exercise, step));
  for (int wrong = 0; wrong < most_tries;) {
    speech_.say("> ");
    const auto [line, too_long] = typed_line();
    if (too_long) return Answered::refused;
    if (!line) {
      speech_.say("\n");
      return Answered::stopped;
    }
    const std::string word = text::fold(*line);
    if (word == "q" || word == "quit" || word == "enough") return Answered::stopped;
    if (word == "?" || word == "help") {
      speech_.say(help);
    } else if (word == "hint") {
      hint(exercise);
    } else if (word == "answer") {
      return Answered::given_up;
    } else {
      const Judged judged = judge(exercise, step, *line);
      speech_.say(judged.words + "\n");
      if (judged.judgement == Judgement::right) return Answered::right;
      if (judged.judgement == Judgement::not_understood) continue;
      helped_ = true;
      if (step == Step::line && exercise.sound()) return Answered::given_up;
      ++wrong;
    }
  }
  return Answered::given_up;
}

Went Lesson::ask(const Exercise& exercise, const std::string& heading) {
  speech_.say(heading + "\n\n" + exercise_text(exercise));
  hints_given_ = 0;
  helped_ = false;
  for (const Step step : steps(exercise)) {
    const Answered answered = ask_step(exercise, step);
    if (answered == Answered::stopped) return Went::stopped;
    if (answered == Answered::refused) return Went::refused;
    if (answered == Answered::given_up) {
      helped_ = true;
      break;
    }
  }
  Score& score = scores_[exercise.subject];
  ++score.asked;
  score.found += helped_ ? 0 : 1;
  speech_.say("\n" + solution_text(exercise) + "\n");
  return helped_ ? Went::helped : Went::found;
}

void Lesson::tell_score() const {
  Score all;
  std::string lines;
  for (const auto& [subject, score] : scores_) {
    all.found += score.found;
    all.asked += score.asked;
    lines += "  " + std::to_string(score.found) + " of " + std::to_string(score.asked) + "  " +
             subject + "\n";
  }
  speech_.say("Found without help: " + std::to_string(all.found) + " of " +
              std::to_string(all.asked) + "\n" + lines + std::string(reminder) + "\n");
}

}  // namespace sudsmark::cli
