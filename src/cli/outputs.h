// Where reports go: `--format` and `--output` as a list of formats with their paths.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "cli/arguments.h"

namespace sudsmark::cli {

/// One report. A path that ends in a slash, or is a folder, takes a file for each formula (html).
struct Output {
  Format format = Format::text;
  std::string path;  ///< empty: standard output
};

/// The reports that the command line asks for. The one without a path goes where `--output` says,
/// else to standard output; where all have one, text goes there. Wrong words, two formats for
/// standard output and two for one file are written to standard error, and there is no answer.
[[nodiscard]] std::optional<std::vector<Output>> outputs_of(const Arguments& arguments,
                                                            std::initializer_list<Format> known);

/// Whether a report in that format is asked for.
[[nodiscard]] bool wants(const std::vector<Output>& outputs, Format format);

/// Writes one report; `exit`, or unusable if it cannot be written. Text for a terminal is folded to
/// its width.
[[nodiscard]] Exit write(const Output& output, const std::string& report, Exit exit);

/// Writes the pages of a run: one file, or a folder with a page for each formula.
[[nodiscard]] Exit write_pages(const Output& output, const RunResult& run, const Rulesets& rulesets,
                               bool ascii, Exit exit);

}  // namespace sudsmark::cli
