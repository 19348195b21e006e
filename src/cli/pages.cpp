#include "cli/pages.h"

#include <utility>

#include "text/files.h"
#include "text/written_file.h"

namespace sudsmark::cli {
namespace {

constexpr const char* front_page = "index";

/// The name of a formula's page: its path with everything odd replaced, and no other's. Some disks
/// take names that differ by capital letters alone for one.
std::string page_name(const std::string& path, std::set<std::string>& taken) {
  std::string stem = path == "-" ? "standard-input" : path;
  constexpr std::string_view ending = ".formula";
  if (stem.ends_with(ending)) stem.resize(stem.size() - ending.size());
  while (stem.starts_with("./")) stem.erase(0, 2);
  for (char& c : stem) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (!plain && c != '_') c = '-';
  }
  constexpr std::size_t most = 100;
  if (stem.size() > most) stem.erase(0, stem.size() - most);
  const auto small = [](std::string name) {
    for (char& c : name) {
      if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return name;
  };
  std::string name = stem;
  for (int number = 2; !taken.insert(small(name)).second; ++number) {
    name = stem + "-" + std::to_string(number);
  }
  return name;
}

}  // namespace

bool names_folder(const std::string& path) {
  return path.ends_with('/') || text::is_folder(path);
}

PageFolder::PageFolder(const Report& report, const std::string& folder, const Rulesets& rulesets,
                       const ReportOptions& look, const Inputs& inputs)
    : report_(report),
      rulesets_(rulesets),
      look_(look),
      inputs_(inputs),
      before_(folder.ends_with('/') ? folder : folder + "/"),
      front_(front_page + ("." + std::string(report.word))),
      taken_{front_page},
      overview_(report.begin_overview(rulesets, look)) {
  if (const auto error = text::make_folder(folder)) {
    complain(*error);
    failed_ = true;
  }
}

std::string PageFolder::page_of(const RunResult& run, bool alone) const {
  ReportOptions look = look_;
  if (!alone) look.overview = front_;
  return report_.write(&run, rulesets_, look);
}

void PageFolder::take(const std::string& page, const RunResult& run, bool alone) {
  if (alone && !run.formulas.empty()) {
    alone_ = true;
    return write(front_, page);
  }
  problems_.insert(problems_.end(), run.problems.begin(), run.problems.end());
  for (const FormulaResult& formula : run.formulas) {
    const std::string name = page_name(formula.file, taken_) + "." + std::string(report_.word);
    overview_->add(formula, name);
    write(name, page);
  }
}

void PageFolder::finish(const RunResult& rest) {
  if (alone_) return;
  RunResult whole = rest;
  whole.problems.insert(whole.problems.begin(), problems_.begin(), problems_.end());
  write(front_, overview_->written(whole));
}

void PageFolder::write(const std::string& name, const std::string& page) {
  if (failed_) return;
  failed_ = write_words(before_ + name, page, false, inputs_, Exit::fine) != Exit::fine;
}

Exit write_pages(const Report& report, const std::string& folder, const RunResult& run,
                 const Rulesets& rulesets, const ReportOptions& look, const Inputs& inputs,
                 Exit exit) {
  PageFolder pages(report, folder, rulesets, look, inputs);
  const bool alone = run.formulas.size() == 1;
  if (alone) pages.take(pages.page_of(run, alone), run, alone);
  for (std::size_t at = 0; !alone && !pages.failed() && at < run.formulas.size(); ++at) {
    RunResult one;
    one.formulas.push_back(run.formulas[at]);
    one.compared = run.compared;
    pages.take(pages.page_of(one, alone), one, alone);
  }
  RunResult rest;
  rest.problems = run.problems;
  rest.absent = run.absent;
  rest.compared = run.compared;
  pages.finish(rest);
  return pages.failed() ? Exit::unusable : exit;
}

Exit write_pages(const std::vector<ReportPage>& pages, const std::string& folder,
                 const Inputs& inputs, Exit exit) {
  if (const auto error = text::make_folder(folder)) return refused(*error);
  const std::string before = folder.ends_with('/') ? folder : folder + "/";
  for (const ReportPage& page : pages) {
    exit = write_words(before + page.name, page.text, false, inputs, exit);
    if (exit == Exit::unusable) return exit;
  }
  return exit;
}

}  // namespace sudsmark::cli
