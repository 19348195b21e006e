// Exercises and their solutions as text.
#include <algorithm>
#include <cmath>

#include <sudsmark/drill.h>
#include <sudsmark/report.h>

#include "quantity/number.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

std::string numbered(std::string_view card) {
  std::string out;
  std::size_t number = 0;
  while (!card.empty()) {
    const std::size_t end = std::min(card.find('\n'), card.size());
    std::string label = std::to_string(++number);
    label.insert(0, label.size() < 4 ? 4 - label.size() : 0, ' ');
    const std::string_view line = card.substr(0, end);
    out += line.empty() ? "\n" : label + "  " + wording::harmless(line) + "\n";
    card.remove_prefix(std::min(end + 1, card.size()));
  }
  return out;
}

std::string listed(const std::vector<Choice>& choices) {
  wording::Page page;
  std::size_t number = 0;
  for (const Choice& choice : choices) page.entry(std::to_string(++number), choice.words);
  return page.text();
}

std::string paragraph(std::string_view words) {
  wording::Page page;
  page.paragraph(words);
  return page.text();
}

std::string line_numbers(const Exercise& exercise) {
  std::vector<std::string> numbers;
  for (const std::uint32_t line : exercise.lines) numbers.push_back(std::to_string(line));
  return "line " + wording::joined(numbers, "or");
}

void sum_solution(const Sum& sum, wording::Page& page) {
  for (const std::string& line : sum.working) page.entry("working", line);
  page.entry("answer", quantity::printed(sum.answer) + " " + sum.unit + "; within " +
                           quantity::printed(sum.tolerance) + " counts as right");
}

/// How much it weighs, in the words of a check.
std::string weight_of(const Finding& finding) {
  const std::string_view depends =
      finding.kind == Kind::review ? ", depending on true figures" : "";
  const std::string_view weight = finding.level == Level::error     ? "must change"
                                  : finding.level == Level::warning ? "should change"
                                                                    : "worth knowing";
  return std::string(weight) + std::string(depends);
}

void fault_solution(const Exercise& exercise, wording::Page& page) {
  page.entry("where", line_numbers(exercise) + ", under " + exercise.section);
  if (!exercise.is.empty()) page.entry("it says", exercise.is);
  page.entry(exercise.is.empty() ? "left out" : "without it",
             exercise.was.empty() ? "the line was not there" : exercise.was);
  page.entry("rule", exercise.rule + ": " + exercise.title);
  if (exercise.finding) {
    page.entry("figures", exercise.finding->message);
    page.entry("weight", weight_of(*exercise.finding));
  }
  if (!exercise.why.empty()) page.entry("why", exercise.why);
  if (!exercise.remedy.empty()) page.entry("to change", exercise.remedy);
  if (exercise.finding) {
    for (const SourceNote& source : exercise.finding->sources) {
      page.entry("source", wording::words(source));
    }
  }
  for (const std::string& caution : exercise.cautions) page.entry("care", caution);
  page.entry("more", "sudsmark explain " + exercise.rule);
}

}  // namespace

std::string exercise_text(const Exercise& exercise) {
  if (exercise.sum) return paragraph(exercise.sum->question);
  std::string out;
  if (exercise.kind == ExerciseKind::compare) {
    out = "Two cards of one kind; something may be wrong with one of them.\n\n";
  } else if (exercise.kind == ExerciseKind::tweak) {
    out = "A card that is sound, and what is to be changed of it.\n\n";
  }
  return out + numbered(exercise.card);
}

std::string question_text(const Exercise& exercise, Step step) {
  switch (step) {
    case Step::line:
      return "Which line would you change? Its number, or fine.\n";
    case Step::reason:
      return "Which of these does it break? The others hold.\n" + listed(exercise.reasons);
    case Step::mend:
      return "Which change makes it sound?\n" + listed(exercise.mends);
    case Step::figure:
      break;
  }
  return exercise.sum ? "Your figure in " + exercise.sum->unit + ":\n" : std::string();
}

namespace {

wording::Page solution(const Exercise& exercise) {
  wording::Page page;
  if (exercise.sum) {
    sum_solution(*exercise.sum, page);
  } else if (exercise.sound()) {
    page.entry("here", "nothing is wrong: no rule asks for a change of it");
  } else {
    fault_solution(exercise, page);
  }
  return page;
}

}  // namespace

std::string solution_text(const Exercise& exercise) {
  return solution(exercise).text();
}

std::vector<SheetItem> solution_items(const Exercise& exercise) {
  return solution(exercise).items();
}

namespace report {

std::string drill_text(const Handout& handout, const Rulesets&, const ReportOptions& options) {
  std::string out = "Seed " + std::to_string(handout.seed) + "\n\n";
  const std::string of = " of " + std::to_string(handout.exercises.size());
  std::size_t number = 0;
  for (const Exercise& exercise : handout.exercises) {
    out += "Exercise " + std::to_string(++number) + of + "\n\n" + exercise_text(exercise) + "\n";
    for (const Step step : steps(exercise)) out += question_text(exercise, step);
    out += "\n";
  }
  out += "Answers\n\n";
  number = 0;
  for (const Exercise& exercise : handout.exercises) {
    out += "Exercise " + std::to_string(++number) + of + "\n" + solution_text(exercise) + "\n";
  }
  out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace report
}  // namespace sudsmark
