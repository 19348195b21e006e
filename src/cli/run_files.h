// Many formulas at a time, and what is said of that on the command line.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "cli/inputs.h"
#include "cli/options.h"

namespace sudsmark::cli {

/// FILE... and `--jobs`.
struct FilesOptions {
  std::vector<std::string> files;  ///< files and folders; "-" is standard input
  std::size_t jobs = 0;            ///< threads; 0: one for each processor

  /// `least`: files that have to be named.
  void declare(Options& options, std::size_t least = 1);
};

/// What came of one file: a formula, or problems, or nothing to be told.
struct CheckedFile {
  std::string file;    ///< as it was named or found; empty: no file's own problems
  bool alone = false;  ///< no other file is read
  RunResult run;
  std::vector<std::string> pieces;  ///< of reports, made by `prepare`
};

/// What is done with each file's result, one after the other.
struct RunSteps {
  /// By the thread that checked it, while others are at theirs.
  std::function<void(CheckedFile&)> prepare;
  /// In the order of the arguments, by one thread at a time.
  std::function<void(CheckedFile&&)> take;
};

/// Checks all files named, folders opened, with as many threads as asked for. The order is that of
/// the arguments whatever the number of threads, and few results are held at a time. Problems are
/// told on standard error.
void run_files(const FilesOptions& named, const Rulesets& rulesets, const CheckOptions& options,
               Inputs& inputs, bool ascii, const RunSteps& steps);

/// The same, all put together.
[[nodiscard]] RunResult run_files(const FilesOptions& named, const Rulesets& rulesets,
                                  const CheckOptions& options, Inputs& inputs, bool ascii);

}  // namespace sudsmark::cli
