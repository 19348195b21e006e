#include "cli/run_files.h"

#include <algorithm>
#include <atomic>
#include <thread>

#include "cli/exit.h"
#include "cli/in_order.h"
#include "cli/kept_memory.h"
#include "cli/progress.h"
#include "cli/workers.h"

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

CheckedFile check_one(const Job& job, const Rulesets& rulesets, const CheckOptions& options,
                      Inputs& inputs) {
  CheckedFile out;
  out.file = job.path;
  const auto formula = inputs.read_formula(job.path, job.in_folder, out.run.problems);
  if (!formula) return out;
  CheckOptions of_this = options;
  of_this.read = inputs.reader_for({job.path});
  out.run = sudsmark::check(*formula, rulesets, of_this);
  return out;
}

}  // namespace

void FilesOptions::declare(Options& options, std::size_t least) {
  options.words("FILE", files, least, 0, "formula files or folders; - is standard input");
  options.heading("Formulas");
  options.number("--jobs", 0, most_jobs, jobs, "threads; 0 is one for each processor");
}

void run_files(const FilesOptions& named, const Rulesets& rulesets, const CheckOptions& options,
               Inputs& inputs, bool ascii, const RunSteps& steps) {
  CheckedFile folders;
  const std::vector<Job> jobs = jobs_of(named.files, inputs, folders.run);
  const std::size_t threads =
      std::max<std::size_t>(1, std::min(threads_for(named.jobs), jobs.size()));
  InOrder<CheckedFile> results(threads * most_ahead, [&](CheckedFile&& one) {
    tell(one.run.problems, ascii);
    steps.take(std::move(one));
  });
  if (jobs.size() > 1) keep_memory();
  // what folders had wrong comes before all formulas
  if (steps.prepare) steps.prepare(folders);
  results.put(0, std::move(folders));
  std::atomic<std::size_t> next{0};
  Progress progress(jobs.size());
  const auto first = std::this_thread::get_id();
  run_workers(threads, [&] {
    for (std::size_t index = next++; index < jobs.size(); index = next++) {
      CheckedFile one = check_one(jobs[index], rulesets, options, inputs);
      one.alone = jobs.size() == 1;
      if (steps.prepare) steps.prepare(one);
      results.put(index + 1, std::move(one));
      if (std::this_thread::get_id() == first) progress.show(next);
    }
  });
  inputs.tell_unread();
}

RunResult run_files(const FilesOptions& named, const Rulesets& rulesets,
                    const CheckOptions& options, Inputs& inputs, bool ascii) {
  RunResult run;
  run_files(named, rulesets, options, inputs, ascii,
            {{}, [&](CheckedFile&& one) { run.add(std::move(one.run)); }});
  return run;
}

}  // namespace sudsmark::cli
