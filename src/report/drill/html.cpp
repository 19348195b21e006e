// Papers for a class: a page for each exercise without its answer, and one with all answers.
#include <sudsmark/drill.h>
#include <sudsmark/report.h>

#include "report/html_page.h"
#include "report/item_page.h"
#include "report/prose.h"
#include "wording/page.h"

namespace sudsmark::report {
namespace {

std::string heading_of(std::size_t number, const Handout& handout) {
  return "Exercise " + std::to_string(number) + " of " + std::to_string(handout.exercises.size()) +
         ", seed " + std::to_string(handout.seed);
}

void write_card(Markup& page, std::string_view card) {
  std::size_t number = 0;
  std::string lines;
  while (!card.empty()) {
    const std::size_t end = std::min(card.find('\n'), card.size());
    std::string label = std::to_string(++number);
    label.insert(0, label.size() < 3 ? 3 - label.size() : 0, ' ');
    lines += end == 0 ? "\n" : label + "  " + std::string(card.substr(0, end)) + "\n";
    card.remove_prefix(std::min(end + 1, card.size()));
  }
  page.element("pre", lines);
}

void write_choices(Markup& page, std::string_view question, const std::vector<Choice>& choices) {
  if (choices.empty()) return;
  prose_element(page, "p", {}, question);
  page.open("ol");
  for (const Choice& choice : choices) prose_element(page, "li", {}, choice.words);
  page.close();
}

void write_exercise(Markup& page, const Exercise& exercise) {
  if (exercise.sum) {
    prose_element(page, "p", {}, exercise.sum->question);
    prose_element(page, "p", {}, "Working, and the figure in " + exercise.sum->unit + ":");
    return;
  }
  if (exercise.kind == ExerciseKind::compare) {
    prose_element(page, "p", {}, "Two cards of one kind; something may be wrong with one of them.");
  } else if (exercise.kind == ExerciseKind::tweak) {
    prose_element(page, "p", {}, "A card that is sound, and what is to be changed of it.");
  }
  write_card(page, exercise.card);
  prose_element(page, "p", {}, "Which line would you change? Or is it fine?");
  write_choices(page, "Which of these does it break? The others hold.", exercise.reasons);
  write_choices(page, "Which change makes it sound?", exercise.mends);
}

std::string right_choices(const Exercise& exercise) {
  const auto right = [](const std::vector<Choice>& choices) {
    for (std::size_t at = 0; at < choices.size(); ++at) {
      if (choices[at].right) return std::to_string(at + 1);
    }
    return std::string("none");
  };
  if (exercise.sum || exercise.sound()) return {};
  return "Reason " + right(exercise.reasons) + ", mend " + right(exercise.mends) + ".";
}

std::string paper(const Handout& handout, std::size_t number, const ReportOptions& options) {
  Markup page(options.ascii);
  const std::string heading = heading_of(number, handout);
  open_page(page, heading);
  write_masthead(page, "sudsmark drill", {});
  page.open("main");
  page.element("h1", heading);
  write_exercise(page, handout.exercises[number - 1]);
  page.close();
  write_foot(page, {});
  return page.finished();
}

void write_answer(Markup& page, const Handout& handout, std::size_t number) {
  const Exercise& exercise = handout.exercises[number - 1];
  page.element("h2", heading_of(number, handout));
  const std::string choices = right_choices(exercise);
  if (!choices.empty()) prose_element(page, "p", {}, choices);
  write_items(page, solution_items(exercise), false);
}

}  // namespace

/// All of it on one page, the answers at its end.
std::string drill_html(const Handout& handout, const Rulesets&, const ReportOptions& options) {
  Markup page(options.ascii);
  const std::string title =
      std::to_string(handout.exercises.size()) + " exercises, seed " + std::to_string(handout.seed);
  open_page(page, title);
  write_masthead(page, "sudsmark drill", {});
  page.open("main");
  page.element("h1", title);
  for (std::size_t number = 1; number <= handout.exercises.size(); ++number) {
    page.element("h2", heading_of(number, handout));
    write_exercise(page, handout.exercises[number - 1]);
  }
  page.element("h2", "Answers");
  for (std::size_t number = 1; number <= handout.exercises.size(); ++number) {
    write_answer(page, handout, number);
  }
  page.close();
  write_foot(page, {});
  return page.finished();
}

std::vector<ReportPage> drill_pages(const Handout& handout, const Rulesets&,
                                    const ReportOptions& options) {
  std::vector<ReportPage> out;
  for (std::size_t number = 1; number <= handout.exercises.size(); ++number) {
    out.push_back(
        {"exercise-" + std::to_string(number) + ".html", paper(handout, number, options)});
  }
  Markup page(options.ascii);
  const std::string title = "Answers, seed " + std::to_string(handout.seed);
  open_page(page, title);
  write_masthead(page, "sudsmark drill", {});
  page.open("main");
  page.element("h1", title);
  for (std::size_t number = 1; number <= handout.exercises.size(); ++number) {
    write_answer(page, handout, number);
  }
  page.close();
  write_foot(page, {});
  out.push_back({"answers.html", page.finished()});
  return out;
}

}  // namespace sudsmark::report
