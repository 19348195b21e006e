// Many formulas at a time, and what is said of that on the command line.
#pragma once

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

  void declare(Options& options);
};

/// Checks all files named, folders opened, with as many threads as asked for. The result is in the
/// order of the arguments whatever the number of threads. Problems are told on standard error.
[[nodiscard]] RunResult run_files(const FilesOptions& named, const Rulesets& rulesets,
                                  const CheckOptions& options, Inputs& inputs, bool ascii);

}  // namespace sudsmark::cli
