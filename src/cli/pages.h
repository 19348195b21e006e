// A folder with a page for each formula, and one that leads to them.
#pragma once

#include <string>

#include "cli/outputs.h"

namespace sudsmark::cli {

/// Whether a path ends in a slash or is a folder.
[[nodiscard]] bool names_folder(const std::string& path);

/// Writes a run into a folder, which is made where it is missing; `exit`, or unusable if something
/// cannot be written. The report has to be one that can be such pages.
[[nodiscard]] Exit write_pages(const Report& report, const std::string& folder,
                               const RunResult& run, const Rulesets& rulesets,
                               const ReportOptions& look, const Inputs& inputs, Exit exit);

/// Writes pages that are made already into a folder, in the same way.
[[nodiscard]] Exit write_pages(const std::vector<ReportPage>& pages, const std::string& folder,
                               const Inputs& inputs, Exit exit);

}  // namespace sudsmark::cli
