// Exercises one after the other: on a terminal or from a pipe, answers are read from standard
// input.
#include <iostream>
#include <string>

#include <sudsmark/drill.h>

#include "cli/commands.h"
#include "cli/run.h"
#include "wording/code_points.h"

namespace sudsmark::cli {
namespace {

/// Tries before the solution is shown.
constexpr int most_tries = 3;

enum class Outcome { solved, shown, stopped };

Outcome ask(const Exercise& exercise) {
  std::string line;
  int tries = 0;
  bool helped = false;
  while (std::cout << "> " << std::flush && std::getline(std::cin, line)) {
    const Judged judged = judge(exercise, line);
    if (!judged.words.empty()) std::cout << judged.words << "\n";
    switch (judged.judgement) {
      case Judgement::right:
        return helped ? Outcome::shown : Outcome::solved;
      case Judgement::shown:
        return Outcome::shown;
      case Judgement::enough:
        return Outcome::stopped;
      case Judgement::wrong:
        if (++tries == most_tries || exercise.sound()) return Outcome::shown;
        break;
      case Judgement::hint_wanted:
        helped = true;
        break;
      case Judgement::not_understood:
        break;
    }
  }
  std::cout << "\n";
  return Outcome::stopped;
}

}  // namespace

Exit drill(const Arguments& arguments) {
  const auto rulesets = load_rulesets(arguments);
  if (!rulesets) return Exit::unusable;
  const auto checking = check_options(arguments, *rulesets);
  if (!checking) return Exit::unusable;
  DrillOptions options;
  options.about = arguments.names;
  options.count = arguments.count;
  options.deal = arguments.deal;
  options.on = checking->on;
  const auto dealt = exercises(*rulesets, options);
  for (const Problem& problem : dealt.problems) complain(problem.message);
  if (!dealt) return Exit::unusable;
  if (dealt->empty()) {
    complain("no rule that was asked for has an example to make an exercise of");
    return Exit::unusable;
  }
  const auto say = [&](const std::string& text) {
    std::cout << (arguments.ascii ? wording::in_ascii(text) : text);
  };
  std::string handout;
  std::size_t solved = 0;
  std::size_t asked = 0;
  for (const Exercise& exercise : *dealt) {
    const std::string question = exercise_text(exercise, asked + 1, dealt->size());
    if (arguments.answers) {
      ++asked;
      handout += question + "\n" + solution_text(exercise) + "\n";
      continue;
    }
    say(question);
    const Outcome outcome = ask(exercise);
    if (outcome == Outcome::stopped) break;
    ++asked;
    solved += outcome == Outcome::solved ? 1 : 0;
    say("\n" + solution_text(exercise) + "\n");
  }
  if (arguments.answers) return deliver(arguments, handout + reminder + "\n", Exit::fine);
  std::cout << "Found without help: " << solved << " of " << asked << ".\n" << reminder << "\n";
  return Exit::fine;
}

}  // namespace sudsmark::cli
