// What the commands share: rulesets and formulas from disk, several at a time, and the way out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/arguments.h"

namespace sudsmark::cli {

/// The built-in rulesets with what `--rules` adds. Errors are written to standard error.
[[nodiscard]] std::optional<Rulesets> load_rulesets(const Arguments& arguments);

/// Options of a check out of the command line. Wrong ones (a date that is none, an unknown rule)
/// are written to standard error.
[[nodiscard]] std::optional<CheckOptions> check_options(const Arguments& arguments,
                                                        const Rulesets& rulesets);

/// Checks all files named, folders opened, with as many threads as asked for. The result is in the
/// order of the arguments whatever the number of threads. Problems are written to standard error.
[[nodiscard]] RunResult run_files(const Arguments& arguments, const Rulesets& rulesets,
                                  const CheckOptions& options);

/// A formula's bytes; a problem if they cannot be read. `-` is standard input.
[[nodiscard]] std::optional<FormulaText> read_formula(const std::string& path, bool in_folder,
                                                      std::vector<Problem>& problems);

/// Tells standard error what is wrong with the command line or a file it names.
void complain(std::string_view words);

/// Tells standard error what could not be read or used.
void tell(const std::vector<Problem>& problems, bool ascii);

/// Writes text to where the command line wants it; unusable if it cannot be written.
[[nodiscard]] Exit deliver(const Arguments& arguments, const std::string& report, Exit exit);

}  // namespace sudsmark::cli
