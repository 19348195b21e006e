// What is asked, what somebody typed, and hints in steps.
#include <algorithm>
#include <charconv>
#include <cmath>

#include <sudsmark/drill.h>

#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark {
namespace {

std::size_t lines_of(std::string_view card) {
  return static_cast<std::size_t>(std::count(card.begin(), card.end(), '\n'));
}

/// Without the blanks around it.
std::string_view bare(std::string_view answer) {
  const std::size_t first = answer.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return answer.substr(first, answer.find_last_not_of(" \t\r") + 1 - first);
}

/// A whole number from 1 to `most`; 0 if it is none.
std::size_t whole(std::string_view answer, std::size_t most) {
  const std::string_view typed = bare(answer);
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), number);
  const bool read = error == std::errc() && end == typed.data() + typed.size();
  return read && number <= most ? number : 0;
}

Judged judge_line(const Exercise& exercise, std::string_view answer) {
  const std::string word = text::fold(bare(answer));
  if (word == "fine") {
    return exercise.sound() ? Judged{Judgement::right, "Yes, nothing is wrong with it."}
                            : Judged{Judgement::wrong, "No, something is wrong with it."};
  }
  const std::size_t most = lines_of(exercise.card);
  const std::size_t line = whole(answer, most);
  if (line == 0) {
    return {Judgement::not_understood,
            "Type the number of a line from 1 to " + std::to_string(most) + ", or fine."};
  }
  const std::string here = "line " + std::to_string(line);
  if (exercise.sound()) {
    return {Judgement::wrong, "No: nothing is wrong with " + here + ", nor with another."};
  }
  const auto& lines = exercise.lines;
  const bool right = std::find(lines.begin(), lines.end(), line) != lines.end();
  return right ? Judged{Judgement::right, "Yes, " + here + "."}
               : Judged{Judgement::wrong, "No, it is not " + here + "."};
}

Judged judge_choice(const std::vector<Choice>& choices, std::string_view answer) {
  const std::size_t number = whole(answer, choices.size());
  if (number == 0) {
    return {Judgement::not_understood,
            "Type a number from 1 to " + std::to_string(choices.size()) + "."};
  }
  return choices[number - 1].right ? Judged{Judgement::right, "Yes."}
                                   : Judged{Judgement::wrong, "No, not that."};
}

/// "12.5", "12.5 g", "12.5g": the figure in the unit that was asked for.
Judged judge_figure(const Sum& sum, std::string_view answer) {
  std::string_view typed = bare(answer);
  const std::size_t digits = std::min(typed.find_first_not_of("0123456789."), typed.size());
  const auto figure = quantity::read_number(typed.substr(0, digits));
  const std::string unit(bare(typed.substr(digits)));
  if (!figure || (!unit.empty() && text::fold(unit) != text::fold(sum.unit))) {
    return {Judgement::not_understood, "Type a figure in " + sum.unit + ", such as 12.5."};
  }
  const double off = std::abs(*figure - sum.answer);
  if (off <= sum.tolerance * (1 + 1e-9)) return {Judgement::right, "Yes."};
  return {Judgement::wrong, *figure < sum.answer ? "No, it is more." : "No, it is less."};
}

}  // namespace

std::vector<Step> steps(const Exercise& exercise) {
  if (exercise.kind == ExerciseKind::sum) return {Step::figure};
  std::vector<Step> out{Step::line};
  if (exercise.reasons.size() > 1) out.push_back(Step::reason);
  if (exercise.mends.size() > 1) out.push_back(Step::mend);
  return out;
}

Judged judge(const Exercise& exercise, Step step, std::string_view answer) {
  switch (step) {
    case Step::line:
      return judge_line(exercise, answer);
    case Step::reason:
      return judge_choice(exercise.reasons, answer);
    case Step::mend:
      return judge_choice(exercise.mends, answer);
    case Step::figure:
      break;
  }
  return exercise.sum ? judge_figure(*exercise.sum, answer) : Judged{};
}

std::vector<std::string> hints(const Exercise& exercise) {
  if (exercise.sum) {
    return {exercise.sum->working.begin(), exercise.sum->working.end() - 1};
  }
  if (exercise.sound()) {
    return {"Go through it by subject: foam, acid and base, oil and emulsifier, scent, weighing.",
            "Hold each amount against its limit: 'sudsmark explain course' has them.",
            "It may be that nothing is wrong."};
  }
  return {"It is about this subject: " + exercise.subject + ".",
          "It stands under: " + exercise.section,
          "It is line " + std::to_string(exercise.lines.front()) + "."};
}

}  // namespace sudsmark
