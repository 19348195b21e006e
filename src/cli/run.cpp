#include "cli/run.h"

#include <algorithm>
#include <atomic>
#include <cstdio>
#include <ctime>
#include <iostream>
#include <thread>
#include <vector>

#include <sudsmark/report.h>

#include "cli/outputs.h"
#include "cli/progress.h"
#include "quantity/number.h"
#include "quantity/unit.h"
#include "text/files.h"
#include "wording/code_points.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_formula = std::size_t{1} << 20U;
constexpr std::size_t most_ruleset = std::size_t{8} << 20U;

std::optional<std::chrono::year_month_day> read_date(const std::string& text) {
  int year = 0;
  unsigned month = 0;
  unsigned day = 0;
  int used = 0;
  if (text.size() != 10 ||
      std::sscanf(text.c_str(), "%4d-%2u-%2u%n", &year, &month, &day, &used) != 3 || used != 10) {
    return std::nullopt;
  }
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(day)};
  if (!date.ok()) return std::nullopt;
  return date;
}

struct Job {
  std::string path;
  bool in_folder = false;
};

std::vector<Job> jobs_of(const std::vector<std::string>& arguments, RunResult& run) {
  std::vector<Job> jobs;
  for (const std::string& argument : arguments) {
    if (!text::is_folder(argument)) {
      jobs.push_back({argument, false});
      continue;
    }
    const auto files = text::files_below(argument, ".formula");
    if (!files) {
      run.problems.push_back({argument, 0, 0, "this folder cannot be read", {}});
    } else if (files->empty()) {
      run.problems.push_back({argument, 0, 0, "no *.formula stands in this folder", {}});
    } else {
      for (const std::string& file : *files) jobs.push_back({file, true});
    }
  }
  return jobs;
}

void check_one(const Job& job, const Rulesets& rulesets, const CheckOptions& options,
               RunResult& run) {
  const auto formula = read_formula(job.path, job.in_folder, run.problems);
  if (formula) run.add(sudsmark::check(*formula, rulesets, options));
}

/// "6kg", "6 kg", "500 g" [g].
std::optional<double> read_batch(const std::string& typed) {
  const std::size_t end = typed.find_first_not_of("0123456789.");
  if (end == std::string::npos) return std::nullopt;
  const std::size_t word = typed.find_first_not_of(' ', end);
  if (word == std::string::npos) return std::nullopt;
  const auto number = quantity::read_number(std::string_view(typed).substr(0, end));
  const auto unit = quantity::find_unit(std::string_view(typed).substr(word));
  const auto gram = quantity::find_unit("g");
  if (!number || !unit || unit->dimension != gram->dimension || !(*number > 0)) return std::nullopt;
  return unit->to_base(*number);
}

}  // namespace

std::optional<Rulesets> load_rulesets(const Arguments& arguments) {
  std::vector<RulesetText> texts;
  bool sound = true;
  for (const std::string& named : arguments.rules) {
    std::vector<std::string> files{named};
    if (text::is_folder(named)) {
      const auto below = text::files_below(named, ".yaml");
      if (!below || below->empty()) {
        complain("no *.yaml can be read in the rules folder '" + named + "'");
        sound = false;
        continue;
      }
      files = *below;
    }
    for (const std::string& file : files) {
      auto bytes = text::read_file(file, most_ruleset);
      if (!bytes) {
        complain("the rules file '" + file + "' cannot be read");
        sound = false;
        continue;
      }
      texts.push_back({file, std::move(*bytes)});
    }
  }
  if (!sound) return std::nullopt;
  const Rulesets built_in = Rulesets::built_in();
  if (texts.empty() && !arguments.bare) return built_in;
  const Result<Rulesets> all = built_in.with(texts, arguments.bare);
  tell(all.problems, arguments.ascii);
  return all.value;
}

std::optional<CheckOptions> check_options(const Arguments& arguments, const Rulesets& rulesets) {
  CheckOptions options;
  options.read = [](const std::string& path) { return text::read_file(path, most_formula); };
  options.allow_outside = arguments.allow_outside;
  options.markets = arguments.markets;
  options.only = arguments.only;
  options.without = arguments.without;
  options.rounded = arguments.rounded;
  bool sound = true;
  if (!arguments.batch.empty()) {
    options.batch = read_batch(arguments.batch);
    if (!options.batch) {
      complain("'" + arguments.batch + "' is no batch: write --batch 6kg");
      sound = false;
    }
  }
  if (!arguments.on.empty()) {
    options.on = read_date(arguments.on);
    if (!options.on) {
      complain("'" + arguments.on + "' is no day: write --on 2026-11-01");
      sound = false;
    }
  }
  for (const Problem& wrong : wrong_options(options, rulesets)) {
    complain(wrong.message);
    sound = false;
  }
  for (const std::string& words : renamed_rules(options, rulesets)) complain(words);
  if (!sound) return std::nullopt;
  return options;
}

std::optional<FormulaText> read_formula(const std::string& path, bool in_folder,
                                        std::vector<Problem>& problems) {
  auto bytes =
      path == "-" ? text::read_standard_input(most_formula) : text::read_file(path, most_formula);
  if (!bytes) {
    problems.push_back({path, 0, 0, "this file cannot be read", {}});
    return std::nullopt;
  }
  return FormulaText{path, std::move(*bytes), in_folder};
}

RunResult run_files(const Arguments& arguments, const Rulesets& rulesets,
                    const CheckOptions& options) {
  RunResult run;
  const std::vector<Job> jobs = jobs_of(arguments.files, run);
  std::vector<RunResult> parts(jobs.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&](Progress* progress) {
    for (std::size_t at = next++; at < jobs.size(); at = next++) {
      check_one(jobs[at], rulesets, options, parts[at]);
      if (progress != nullptr) progress->show(next);
    }
  };
  const unsigned wanted =
      arguments.jobs > 0 ? arguments.jobs : std::max(1U, std::thread::hardware_concurrency());
  const std::size_t threads = std::min<std::size_t>(wanted, jobs.size());
  std::vector<std::jthread> others;
  for (std::size_t at = 1; at < threads; ++at) others.emplace_back(work, nullptr);
  {
    Progress progress(jobs.size());
    work(&progress);
    others.clear();  // joins
  }
  for (RunResult& part : parts) {
    std::move(part.formulas.begin(), part.formulas.end(), std::back_inserter(run.formulas));
    std::move(part.problems.begin(), part.problems.end(), std::back_inserter(run.problems));
  }
  tell(run.problems, arguments.ascii);
  return run;
}

void complain(std::string_view words) {
  std::cerr << "sudsmark: error: " << words << "\n";
}

void tell(const std::vector<Problem>& problems, bool ascii) {
  const std::string lines = problem_lines(problems);
  std::cerr << (ascii ? wording::in_ascii(lines) : lines);
}

Exit deliver(const Arguments& arguments, const std::string& report, Exit exit) {
  const Output output{Format::text, arguments.output};
  return write(output, arguments.ascii ? wording::in_ascii(report) : report, exit);
}

}  // namespace sudsmark::cli
