// Exercises and their solutions as text.
#include <algorithm>

#include <sudsmark/drill.h>
#include <sudsmark/report.h>

#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

std::string numbered(std::string_view formula) {
  std::string out;
  std::size_t number = 0;
  while (!formula.empty()) {
    const std::size_t end = std::min(formula.find('\n'), formula.size());
    std::string label = std::to_string(++number);
    label.insert(0, label.size() < 4 ? 4 - label.size() : 0, ' ');
    out += label + "  " + wording::harmless(formula.substr(0, end)) + "\n";
    formula.remove_prefix(std::min(end + 1, formula.size()));
  }
  return out;
}

}  // namespace

std::string exercise_text(const Exercise& exercise, std::size_t number, std::size_t of) {
  return "Exercise " + std::to_string(number) + " of " + std::to_string(of) + ": " +
         wording::harmless(exercise.subject) + "\n\n" + numbered(exercise.formula) +
         "\nWhich line would you change? Its number, or fine if nothing is wrong; hint, answer or "
         "enough.\n";
}

std::string solution_text(const Exercise& exercise) {
  wording::Page page;
  page.entry("rule", exercise.rule + ": " + exercise.title);
  for (const Finding& finding : exercise.findings) {
    const bool own = finding.rule == exercise.rule;
    page.entry("line " + std::to_string(finding.line),
               finding.message + (own ? "" : " (" + finding.rule + ")"));
  }
  if (exercise.sound()) page.entry("here", "it holds, and no other rule is broken either");
  if (!exercise.why.empty()) page.entry("why", exercise.why);
  if (!exercise.sound()) {
    if (!exercise.remedy.empty()) page.entry("to change", exercise.remedy);
    for (const SourceNote& source : exercise.findings.front().sources) {
      page.entry("source", wording::words(source));
    }
  }
  page.entry("more", "sudsmark explain " + exercise.rule);
  return page.text();
}

namespace report {

std::string drill_text(const Handout& handout, const Rulesets&, const ReportOptions& options) {
  std::string out;
  std::size_t number = 0;
  for (const Exercise& exercise : handout.exercises) {
    out += exercise_text(exercise, ++number, handout.exercises.size()) + "\n" +
           solution_text(exercise) + "\n";
  }
  out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace report
}  // namespace sudsmark
