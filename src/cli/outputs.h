// Where the reports of a command go: `--format` and `--output`, held against the register.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/report.h>

#include "cli/exit.h"
#include "cli/inputs.h"
#include "cli/options.h"

namespace sudsmark::cli {

/// What is said of reports on the command line.
struct OutputOptions {
  std::vector<std::string> formats;  ///< as typed: "json", "sarif=out.sarif"
  std::string output;                ///< empty or "-": standard output
  bool ascii = false;
  std::string color = "auto";

  /// `formats_help` says which formats there are, where `command` has more than one.
  void declare(Options& options, Command command, const std::string& formats_help = {});
};

/// One report and its path. A path that ends in a slash, or is a folder, takes a file for each
/// formula, where the report can be such files.
struct Output {
  const Report* report = nullptr;
  std::string path;  ///< empty: standard output
};

class Outputs {
 public:
  /// The reports that the command line asks for. The one without a path goes where `--output`
  /// says; where all have one, the usual report goes there. Wrong words, two reports for standard
  /// output and two for one file are told on standard error, and there is no answer.
  [[nodiscard]] static std::optional<Outputs> read(const OutputOptions& typed, Command command,
                                                   const ReportOptions& look = {});

  /// What all of them want.
  [[nodiscard]] Details wanted() const;

  /// Writes them; `exit`, or unusable if one cannot be written.
  [[nodiscard]] Exit write(const Outcome& outcome, const Rulesets& rulesets, const Inputs& inputs,
                           Exit exit) const;

  /// The same of one of them.
  [[nodiscard]] Exit write_one(const Output& one, const Outcome& outcome, const Rulesets& rulesets,
                               const Inputs& inputs, Exit exit) const;
  /// Files first, then standard output.
  [[nodiscard]] const std::vector<Output>& all() const { return all_; }
  [[nodiscard]] ReportOptions look_of(const Output& one) const;

  /// Whether one of them is that report.
  [[nodiscard]] bool have(std::string_view word) const;
  /// Whether a report goes to that file.
  [[nodiscard]] bool take(const std::string& path) const;

 private:
  [[nodiscard]] bool sound() const;

  std::vector<Output> all_;
  ReportOptions look_;
  bool color_ = false;  ///< on standard output
};

/// Writes words to a file or, where the path is empty, to standard output; not over what was read.
[[nodiscard]] Exit write_words(const std::string& path, const std::string& words, bool folds,
                               const Inputs& inputs, Exit exit);

/// Whether two paths lead to one file, whether it is there yet or not.
[[nodiscard]] bool same_place(const std::string& one, const std::string& other);

}  // namespace sudsmark::cli
