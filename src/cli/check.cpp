// `check`: what every rule says of one or more formulas.
#include <algorithm>
#include <mutex>

#include <sudsmark/baseline.h>
#include <sudsmark/compare.h>
#include <sudsmark/fixes.h>

#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/run_files.h"
#include "cli/run_outputs.h"
#include "cli/stream.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_baseline = std::size_t{256} << 20U;

/// `--baseline`, `--write-baseline`.
struct BaselineOptions {
  std::string file;   ///< to compare with; empty: none
  std::string write;  ///< to be written; empty: none

  void declare(Options& options);
  [[nodiscard]] bool asked_for() const { return !file.empty() || !write.empty(); }
  /// The file's text, empty where none is named; none if it cannot be read.
  [[nodiscard]] std::optional<std::string> read(Inputs& inputs) const;
  /// Marks what is found as new or known.
  [[nodiscard]] bool compare(const std::string& text, RunResult& run) const;
  [[nodiscard]] Exit write_new(const RunResult& run, const Inputs& inputs, Exit exit) const;
};

void BaselineOptions::declare(Options& options) {
  options.text("--baseline", "FILE", file,
               "count only what is not in this file of earlier findings");
  options.text("--write-baseline", "FILE", write,
               "write what is found to this file, for later runs to compare with");
}

std::optional<std::string> BaselineOptions::read(Inputs& inputs) const {
  if (file.empty()) return std::string();
  text::FileBytes read = inputs.read(file, most_baseline);
  if (!read.bytes) complain("the baseline '" + file + "' cannot be read: " + read.reason);
  return std::move(read.bytes);
}

bool BaselineOptions::compare(const std::string& text, RunResult& run) const {
  if (file.empty()) return true;
  Result<RunResult> marked = with_baseline(std::move(run), text, file);
  if (!marked) {
    complain("the baseline '" + file + "' cannot be used: " + marked.problems.front().message);
    return false;
  }
  for (const Problem& hint : marked.problems) {
    remark("the baseline '" + file + "': " + hint.message);
  }
  run = std::move(*marked);
  return true;
}

Exit BaselineOptions::write_new(const RunResult& run, const Inputs& inputs, Exit exit) const {
  if (write.empty()) return exit;
  if (!run.problems.empty()) {
    return refused("no baseline is written, since not everything could be read");
  }
  return write_words(write, baseline_text(run, write), false, inputs, exit);
}

/// Holds every tweak against its own base. A file that is none counts in full.
void refer_to_bases(const CheckOptions& options, const Rulesets& rulesets, Inputs& inputs,
                    RunResult& run) {
  for (FormulaResult& formula : run.formulas) {
    if (formula.file == "-") continue;
    CheckOptions alone = options;
    alone.read = inputs.reader_for({formula.file});
    alone.own_base = false;  // what the base changed of a base of its own is no news
    std::vector<Problem> none;
    const auto tweak = inputs.read_formula(formula.file, false, none);
    if (!tweak) continue;
    const auto base = base_of(*tweak, alone);
    if (!base) continue;
    RunResult reference = sudsmark::check(*base, rulesets, alone);
    if (!reference.formulas.empty()) refer_to(reference.formulas.front(), formula);
  }
}

/// What `suggest` finds, looked for by the threads that check.
class Fixing {
 public:
  /// Problems of the search become problems of the run.
  void look_at(RunResult& run, const CheckOptions& options, const Rulesets& rulesets,
               Inputs& inputs, Level threshold) {
    for (const FormulaResult& formula : run.formulas) {
      // standard input was read once, and is no file to change
      if (formula.file == "-" || !reaches(run, threshold)) continue;
      CheckOptions alone = options;
      alone.read = inputs.reader_for({formula.file});
      const auto text = inputs.read_formula(formula.file, false, run.problems);
      if (!text) continue;
      Result<std::vector<Fix>> found = fixes_of(*text, rulesets, alone, threshold);
      run.problems.insert(run.problems.end(), found.problems.begin(), found.problems.end());
      if (!found) continue;
      const std::lock_guard lock(mutex_);
      fixes_.of[formula.file] = std::move(*found);
    }
  }

  [[nodiscard]] const Fixes& fixes() const { return fixes_; }
  /// While it lasts nothing is added, so that a report may look up what is there.
  [[nodiscard]] std::unique_lock<std::mutex> held() { return std::unique_lock(mutex_); }

 private:
  std::mutex mutex_;
  Fixes fixes_;
};

class Check {
 public:
  void declare(Options& options) {
    files_.declare(options, 0);
    options.usage("FILE... | --stream");
    options.flag(
        "--stream", stream_,
        "read {\"file\": …, \"text\": …} a line from standard input, and answer each with a "
        "line of JSON");
    formulas_.declare(options);
    rounded_.declare(options);
    rules_.declare(options);
    verdicts_.declare(options);
    options.flag("--base-as-reference", base_as_reference_,
                 "of a tweak, count only what is worse than in its base");
    baseline_.declare(options);
    output_.declare(options, Command::check);
    options.flag("--fixes", fixes_,
                 "bring what `suggest` finds into SARIF, as changes of the formula's own lines");
    for (const char* const other : {"--base-as-reference", "--baseline", "--write-baseline",
                                    "--fixes", "--format", "--output", "--color"}) {
      options.excludes("--stream", other);
    }
    options.flag("--quiet", quiet_, "only what reaches the threshold of --fail-on, and the sum");
    options.flag("--verbose", verbose_, "passes, margins and sources too");
    options.found("something reaches the level of --fail-on");
    options.example("sudsmark check bar.formula", "every rule, on one formula");
    options.example("sudsmark check --format html=report/ --fail-on error formulas/",
                    "a page for each formula of a folder; only errors end with status 1");
  }

  Exit run() {
    if (files_.files.empty() != stream_) {
      return refused(stream_ ? "check: --stream reads standard input, and no FILE"
                             : "check: FILE is required; `sudsmark help check` tells more");
    }
    if (quiet_ && verbose_) return refused("--quiet and --verbose ask for opposite things");
    Inputs inputs(formulas_.allow_outside);
    ReportOptions look;
    look.verbose = verbose_;
    if (quiet_) look.quiet = verdicts_.threshold();
    Fixing fixing;
    if (fixes_) look.fixes = &fixing.fixes();
    const auto outputs = Outputs::read(output_, Command::check, look);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    CheckOptions options;
    options.rounded = rounded_.rounded;
    verdicts_.read_into(options);
    const bool sound = formulas_.read_into(options);
    if (!outputs || !rulesets || !sound || !fits(options, *rulesets)) return Exit::unusable;
    if (fixes_ && !outputs->have("sarif")) {
      return refused("--fixes is for SARIF: ask for it with --format sarif");
    }
    const auto known = baseline_.read(inputs);
    if (!known || !can_write_baseline(*outputs, inputs)) return Exit::unusable;
    Details details = outputs->wanted();
    if (base_as_reference_) details = details | Details{.verdicts = Verdicts::all};
    if (baseline_.asked_for())
      details = details | Details{.verdicts = Verdicts::all, .lines = true};
    if (stream_) {
      look.ascii = output_.ascii;
      return check_stream(*rulesets, options, inputs, files_.jobs, look);
    }
    fill(details, options);
    const auto refer = [&](RunResult& run) {
      if (base_as_reference_) refer_to_bases(options, *rulesets, inputs, run);
      if (fixes_) fixing.look_at(run, options, *rulesets, inputs, verdicts_.threshold());
    };
    RunOutputs reports(*outputs, *rulesets, inputs);
    if (reports.hopeless()) return Exit::unusable;
    if (baseline_.asked_for()) {
      RunResult run = run_files(files_, *rulesets, options, inputs, output_.ascii);
      refer(run);
      if (!baseline_.compare(*known, run)) return Exit::unusable;
      Exit exit = baseline_.write_new(run, inputs, status(run));
      RunResult rest;
      rest.compared = run.compared;
      rest.absent = run.absent;
      reports.take_whole(std::move(run));
      return reports.finish(rest, exit);
    }
    Exit exit = Exit::fine;
    RunSteps steps;
    steps.prepare = [&](CheckedFile& one) {
      refer(one.run);
      const auto held = fixes_ ? fixing.held() : std::unique_lock<std::mutex>();
      reports.prepare(one);
    };
    steps.take = [&](CheckedFile&& one) {
      exit = std::max(exit, status(one.run));
      reports.take(std::move(one));
    };
    run_files(files_, *rulesets, options, inputs, output_.ascii, steps);
    return reports.finish({}, exit);
  }

 private:
  /// What is read is known before the formulas are, and told before the work is done.
  [[nodiscard]] bool can_write_baseline(const Outputs& outputs, const Inputs& inputs) const {
    if (baseline_.write.empty()) return true;
    if (baseline_.write == "-") complain("a baseline is written to a file, not to standard output");
    if (outputs.take(baseline_.write)) {
      complain("a report and the baseline cannot both be written to '" + baseline_.write + "'");
    }
    const auto lost = inputs.would_lose(baseline_.write);
    if (lost) complain(*lost);
    return !lost && baseline_.write != "-" && !outputs.take(baseline_.write);
  }

  [[nodiscard]] Exit status(const RunResult& run) const {
    if (!run.problems.empty()) return Exit::unusable;
    // what has just become the baseline is no news, unless it was held against another
    const bool accepted = !baseline_.write.empty() && !run.compared;
    return !accepted && reaches(run, verdicts_.threshold()) ? Exit::found : Exit::fine;
  }

  FilesOptions files_;
  FormulaOptions formulas_;
  RoundedOption rounded_;
  RulesOptions rules_;
  VerdictOptions verdicts_;
  BaselineOptions baseline_;
  OutputOptions output_;
  bool stream_ = false;
  bool base_as_reference_ = false;
  bool fixes_ = false;
  bool quiet_ = false;
  bool verbose_ = false;
};

}  // namespace

Subcommand check_command() {
  return {"check", "what every rule says of one or more formulas", declared<Check>};
}

}  // namespace sudsmark::cli
