#include "cli/run_files.h"

#include <algorithm>
#include <atomic>
#include <system_error>
#include <thread>

#include "cli/exit.h"
#include "cli/progress.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_jobs = 1000;

struct Job {
  std::string path;
  bool in_folder = false;
};

void add_folder(const std::string& folder, const Inputs& inputs, std::vector<Job>& jobs,
                RunResult& run) {
  const text::FilesBelow below = text::files_below(folder, ".formula", inputs.outside());
  for (const std::string& file : below.files) jobs.push_back({file, true});
  for (const auto& [path, reason] : below.unread) {
    run.problems.push_back({path, 0, 0, "cannot be read: " + reason, {}});
  }
  for (const std::string& link : below.linked_folders) {
    remark("'" + link + "' is a link to a folder, and is not followed: name it to have it checked");
  }
  if (below.files.empty() && below.unread.empty()) {
    run.problems.push_back({folder, 0, 0, "no *.formula stands in this folder", {}});
  }
}

std::vector<Job> jobs_of(const std::vector<std::string>& arguments, const Inputs& inputs,
                         RunResult& run) {
  std::vector<Job> jobs;
  for (const std::string& argument : arguments) {
    if (text::is_folder(argument)) {
      add_folder(argument, inputs, jobs, run);
    } else {
      jobs.push_back({argument, false});
    }
  }
  return jobs;
}

void check_one(const Job& job, const Rulesets& rulesets, const CheckOptions& options,
               Inputs& inputs, RunResult& run) {
  const auto formula = inputs.read_formula(job.path, job.in_folder, run.problems);
  if (!formula) return;
  CheckOptions of_this = options;
  of_this.read = inputs.reader_for({job.path});
  run.add(sudsmark::check(*formula, rulesets, of_this));
}

/// Where the machine gives no more threads, those that there are do the work.
template <class Work>
void start(std::vector<std::jthread>& threads, std::size_t count, const Work& work) {
  try {
    while (threads.size() < count) threads.emplace_back(work, nullptr);
  } catch (const std::system_error&) {
    return;
  }
}

}  // namespace

void FilesOptions::declare(Options& options) {
  options.words("FILE", files, 1, 0, "formula files or folders; - is standard input");
  options.heading("Formulas");
  options.number("--jobs", 0, most_jobs, jobs, "threads; 0 is one for each processor");
}

RunResult run_files(const FilesOptions& named, const Rulesets& rulesets,
                    const CheckOptions& options, Inputs& inputs, bool ascii) {
  RunResult run;
  const std::vector<Job> jobs = jobs_of(named.files, inputs, run);
  std::vector<RunResult> parts(jobs.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&](Progress* progress) {
    for (std::size_t index = next++; index < jobs.size(); index = next++) {
      check_one(jobs[index], rulesets, options, inputs, parts[index]);
      if (progress != nullptr) progress->show(next);
    }
  };
  const std::size_t wanted =
      named.jobs > 0 ? named.jobs : std::max(1U, std::thread::hardware_concurrency());
  {
    std::vector<std::jthread> others;
    const std::size_t threads = std::min(wanted, jobs.size());
    start(others, threads > 0 ? threads - 1 : 0, work);
    Progress progress(jobs.size());
    work(&progress);
  }
  for (RunResult& part : parts) run.add(std::move(part));
  tell(run.problems, ascii);
  inputs.tell_unread();
  return run;
}

}  // namespace sudsmark::cli
