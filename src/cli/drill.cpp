// `drill`: exercises one after the other, answered on standard input; or papers for a class.
#include <sudsmark/drill.h>
#include <sudsmark/notebook.h>

#include <algorithm>
#include <filesystem>

#include "cli/checking_options.h"
#include "cli/lesson.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"
#include "front/today.h"
#include "text/written_file.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_exercises = 1000;
constexpr std::size_t most_seeds = 1'000'000'000;
constexpr std::size_t most_notebook_bytes = std::size_t{1} << 20U;

class Drill {
 public:
  void declare(Options& options) {
    options.words("NAME", names_, 0, 0, "rules or subjects to be asked about, or sums; else all");
    options.heading("Exercises");
    options.number("--seed", 0, most_seeds, seed_, "which exercises: the same for everybody");
    options.number("--count", 1, most_exercises, count_, "how many are asked");
    options.flag("--near", near_, "faults near their limits, which are harder to see");
    options.text("--notebook", "FILE", notebook_,
                 "a text file that keeps what went wrong and brings it back");
    options.number("--papers", 1, most_exercises, papers_,
                   "so many exercises and their answers to be printed, in place of asking");
    day_.declare(options);
    rules_.declare(options);
    output_.declare(options, Command::drill);
    options.needs("--output", "--papers");
    options.needs("--format", "--papers");
    options.excludes("--notebook", "--papers");
    options.example("sudsmark drill --seed 7 --notebook mine.txt",
                    "five exercises, what went wrong before first");
    options.example("sudsmark drill --papers 20 --format html=papers/",
                    "pages for a class, and an answer sheet");
  }

  Exit run() {
    Inputs inputs;
    const auto outputs = Outputs::read(output_, Command::drill);
    rulesets_ = rules_.load(inputs, output_.ascii);
    const bool sound = day_.read_into(options_.on);
    if (!outputs || !rulesets_ || !sound) return Exit::unusable;
    if (!options_.on) options_.on = front::today();
    options_.about = names_;
    options_.near = near_;
    return papers_ > 0 ? print(*outputs, inputs) : ask(inputs);
  }

 private:
  /// An exercise, or what is wrong with what was asked for.
  std::optional<Exercise> made(std::size_t number, const DrillOptions& options) const {
    Result<Exercise> out = exercise(*rulesets_, seed_, number, options);
    for (const Problem& problem : out.problems) complain(problem.message);
    return std::move(out.value);
  }

  Exit print(const Outputs& outputs, const Inputs& inputs) const {
    Handout handout;
    handout.seed = seed_;
    for (std::size_t number = 1; number <= papers_; ++number) {
      auto one = made(number, options_);
      if (!one) return Exit::unusable;
      handout.exercises.push_back(std::move(*one));
    }
    return outputs.write(&handout, *rulesets_, inputs, Exit::fine);
  }

  /// What the notebook brings back, then what the seed has.
  Exit ask(Inputs& inputs) {
    Notebook notebook;
    if (!notebook_.empty() && !open(inputs, notebook)) return Exit::unusable;
    const Speech speech(output_.ascii);
    const Interruptible interruptible;
    Lesson lesson(speech);
    const std::vector<std::string> due = notebook.due(*options_.on);
    for (std::size_t number = 1; number <= count_; ++number) {
      DrillOptions options = options_;
      const bool again = number <= due.size() && known(due[number - 1]);
      if (again) {
        options.about = {due[number - 1]};
        options.always_wrong = true;
      }
      const auto exercise = made(number, options);
      if (!exercise) return Exit::unusable;
      const Went went = lesson.ask(
          *exercise, "Exercise " + std::to_string(number) + " of " + std::to_string(count_) +
                         (again ? ", seen before" : "") + ", seed " + std::to_string(seed_));
      if (went == Went::refused) {
        return refused("an answer of more than " + std::to_string(longest_line) + " bytes");
      }
      if (went == Went::stopped) break;
      const std::string& about = exercise->sum ? sums_name : exercise->rule;
      if (!about.empty()) notebook.note(about, went == Went::found, *options_.on);
    }
    lesson.tell_score();
    return notebook_.empty() ? Exit::fine : close(notebook);
  }

  /// Whether exercises can still be made about what a notebook names: rules come and go.
  [[nodiscard]] bool known(const std::string& rule) const {
    const auto rules = drilled_rules(*rulesets_);
    return rule == sums_name || std::find(rules.begin(), rules.end(), rule) != rules.end();
  }

  /// A file that is not there yet is an empty notebook.
  bool open(Inputs& inputs, Notebook& notebook) const {
    const text::FileBytes read = inputs.read(notebook_, most_notebook_bytes);
    if (!read.bytes) {
      if (!std::filesystem::exists(notebook_)) return true;
      complain(notebook_ + ": " + read.reason);
      return false;
    }
    Result<Notebook> out = Notebook::read(notebook_, *read.bytes);
    tell(out.problems, output_.ascii);
    if (!out) return false;
    notebook = std::move(*out);
    return true;
  }

  [[nodiscard]] Exit close(const Notebook& notebook) const {
    if (const auto error = text::write_file(notebook_, notebook.text())) return refused(*error);
    return Exit::fine;
  }

  std::vector<std::string> names_;
  std::size_t count_ = 5;
  std::size_t seed_ = 1;
  std::size_t papers_ = 0;
  bool near_ = false;
  std::string notebook_;
  DayOption day_;
  RulesOptions rules_;
  OutputOptions output_;
  std::optional<Rulesets> rulesets_;
  DrillOptions options_;
};

}  // namespace

Subcommand drill_command() {
  return {"drill", "exercises for new staff: what is wrong with a formula, and why",
          declared<Drill>};
}

}  // namespace sudsmark::cli
