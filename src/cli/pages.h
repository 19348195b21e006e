// A folder with a page for each formula, and one that leads to them.
#pragma once

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "cli/outputs.h"

namespace sudsmark::cli {

/// Whether a path ends in a slash or is a folder.
[[nodiscard]] bool names_folder(const std::string& path);

/// Pages that are written as the formulas come, and last the one that leads to them. A formula that
/// is alone is that one itself.
class PageFolder {
 public:
  /// Of a report that can be such pages. The folder is made where it is missing; what cannot be
  /// written is told on standard error, once. All outlive it.
  PageFolder(const Report& report, const std::string& folder, const Rulesets& rulesets,
             const ReportOptions& look, const Inputs& inputs);

  /// The page of a run's only formula. Safe to call from several threads while others take.
  [[nodiscard]] std::string page_of(const RunResult& run, bool alone) const;
  /// Writes it, in the order of the formulas, by one thread at a time. Without a formula there is
  /// none, and what could not be read is told on the page that leads to the others.
  void take(const std::string& page, const RunResult& run, bool alone);
  /// `rest`: what a baseline has and the run has not.
  void finish(const RunResult& rest);

  [[nodiscard]] bool failed() const { return failed_; }

 private:
  void write(const std::string& name, const std::string& page);

  const Report& report_;
  const Rulesets& rulesets_;
  ReportOptions look_;
  const Inputs& inputs_;
  std::string before_;           ///< the path up to a page's name
  std::string front_;            ///< the name of the page that leads to the others
  std::set<std::string> taken_;  ///< names of pages
  std::unique_ptr<Overview> overview_;
  std::vector<Problem> problems_;
  bool alone_ = false;
  bool failed_ = false;
};

/// Writes a run into a folder in that way; `exit`, or unusable if something cannot be written.
[[nodiscard]] Exit write_pages(const Report& report, const std::string& folder,
                               const RunResult& run, const Rulesets& rulesets,
                               const ReportOptions& look, const Inputs& inputs, Exit exit);

/// Writes pages that are made already into a folder, in the same way.
[[nodiscard]] Exit write_pages(const std::vector<ReportPage>& pages, const std::string& folder,
                               const Inputs& inputs, Exit exit);

}  // namespace sudsmark::cli
