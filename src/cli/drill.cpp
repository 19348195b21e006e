// `drill`: exercises one after the other. On a terminal or from a pipe, answers are read from
// standard input.
#include <sudsmark/drill.h>

#include <iostream>

#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"
#include "wording/code_points.h"

namespace sudsmark::cli {
namespace {

/// Tries before the solution is shown.
constexpr int most_tries = 3;
/// Longer than anything that would be understood.
constexpr std::size_t longest_answer = 1000;
constexpr std::size_t most_exercises = 1000;
constexpr std::size_t most_deals = 1'000'000'000;

enum class Ended { solved, shown, stopped, refused };

/// What was typed, and whether it is a line that a person would type.
struct Answer {
  std::optional<std::string> line;  ///< none at the end of standard input
  bool too_long = false;
};

Answer read_answer() {
  std::string line;
  for (int c = std::cin.get(); c != '\n'; c = std::cin.get()) {
    if (c == std::char_traits<char>::eof()) {
      if (line.empty()) return {};
      break;
    }
    if (line.size() == longest_answer) return {std::nullopt, true};
    line += static_cast<char>(c);
  }
  return {std::move(line)};
}

Ended ask(const Exercise& exercise) {
  int tries = 0;
  bool helped = false;
  while (std::cout << "> " << std::flush) {
    const Answer answer = read_answer();
    if (answer.too_long) return Ended::refused;
    if (!answer.line) break;
    const Judged judged = judge(exercise, *answer.line);
    if (!judged.words.empty()) std::cout << judged.words << "\n";
    switch (judged.judgement) {
      case Judgement::right:
        return helped ? Ended::shown : Ended::solved;
      case Judgement::shown:
        return Ended::shown;
      case Judgement::enough:
        return Ended::stopped;
      case Judgement::wrong:
        if (++tries == most_tries || exercise.sound()) return Ended::shown;
        break;
      case Judgement::hint_wanted:
        helped = true;
        break;
      case Judgement::not_understood:
        break;
    }
  }
  std::cout << "\n";
  return Ended::stopped;
}

/// Asks one exercise after the other until somebody has had enough.
Exit ask_all(const std::vector<Exercise>& dealt, bool ascii) {
  const auto say = [&](const std::string& text) {
    std::cout << (ascii ? wording::in_ascii(text) : text);
  };
  std::size_t solved = 0;
  std::size_t asked = 0;
  for (const Exercise& exercise : dealt) {
    say(exercise_text(exercise, asked + 1, dealt.size()));
    const Ended ended = ask(exercise);
    if (ended == Ended::refused) {
      return refused("an answer of more than " + std::to_string(longest_answer) + " bytes");
    }
    if (ended == Ended::stopped) break;
    ++asked;
    solved += ended == Ended::solved ? 1 : 0;
    say("\n" + solution_text(exercise) + "\n");
  }
  std::cout << "Found without help: " << solved << " of " << asked << ".\n" << reminder << "\n";
  return Exit::fine;
}

class Drill {
 public:
  void declare(Options& options) {
    options.words("NAME", names_, 0, 0, "rules or subjects to be asked about; else all");
    options.heading("Exercises");
    options.number("--count", 1, most_exercises, count_, "how many exercises");
    options.number("--deal", 0, most_deals, deal_, "which exercises: another number, others");
    options.flag("--answers", answers_, "print exercises and solutions instead of asking");
    day_.declare(options);
    rules_.declare(options);
    output_.declare(options, Command::drill);
    options.needs("--output", "--answers");
    options.example("sudsmark drill --count 3", "three exercises, one after the other");
    options.example("sudsmark drill --answers --deal 2 workshop",
                    "a handout about one subject, with solutions");
  }

  Exit run() {
    Inputs inputs;
    const auto outputs = Outputs::read(output_, Command::drill);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    DrillOptions options;
    const bool sound = day_.read_into(options.on);
    if (!outputs || !rulesets || !sound) return Exit::unusable;
    options.about = names_;
    options.count = count_;
    options.deal = static_cast<unsigned>(deal_);
    Result<std::vector<Exercise>> dealt = exercises(*rulesets, options);
    for (const Problem& problem : dealt.problems) complain(problem.message);
    if (!dealt) return Exit::unusable;
    const Handout handout{std::move(*dealt)};
    if (handout.exercises.empty()) {
      return refused("no rule that was asked for has an example to make an exercise of");
    }
    if (answers_) return outputs->write(&handout, *rulesets, inputs, Exit::fine);
    return ask_all(handout.exercises, output_.ascii);
  }

 private:
  std::vector<std::string> names_;
  std::size_t count_ = DrillOptions().count;
  std::size_t deal_ = DrillOptions().deal;
  bool answers_ = false;
  DayOption day_;
  RulesOptions rules_;
  OutputOptions output_;
};

}  // namespace

Subcommand drill_command() {
  return {"drill", "exercises for new staff: what is wrong with a formula, and why",
          declared<Drill>};
}

}  // namespace sudsmark::cli
