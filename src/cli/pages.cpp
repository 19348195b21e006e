#include "cli/pages.h"

#include <set>
#include <vector>

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

Exit write_pages(const Report& report, const std::string& folder, const RunResult& run,
                 const Rulesets& rulesets, const ReportOptions& look, const Inputs& inputs,
                 Exit exit) {
  if (const auto error = text::make_folder(folder)) return refused(*error);
  const std::string before = folder.ends_with('/') ? folder : folder + "/";
  const std::string after = "." + std::string(report.word);
  const std::string front = before + front_page + after;
  if (run.formulas.size() == 1) {
    return write_words(front, report.write(&run, rulesets, look), false, inputs, exit);
  }
  std::set<std::string> taken{front_page};
  std::vector<std::string> pages;
  ReportOptions linked = look;
  linked.overview = front_page + after;
  for (const FormulaResult& formula : run.formulas) {
    pages.push_back(page_name(formula.file, taken) + after);
    RunResult alone;
    alone.formulas.push_back(formula);
    alone.compared = run.compared;
    exit = write_words(before + pages.back(), report.write(&alone, rulesets, linked), false, inputs,
                       exit);
    if (exit == Exit::unusable && run.problems.empty()) return exit;
  }
  return write_words(front, report.write_overview(run, pages, rulesets, look), false, inputs, exit);
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
