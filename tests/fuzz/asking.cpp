#include "fuzz/asking.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>

#include "fuzz/targets.h"

namespace sudsmark::fuzz {
namespace {

void in_order(const std::optional<Figure>& figure) {
  if (!figure) return;
  if (figure->low) must(!std::isnan(*figure->low), "a figure is a figure");
  if (figure->high) must(!std::isnan(*figure->high), "a figure is a figure");
  if (figure->low && figure->high) must(*figure->low <= *figure->high, "the low end comes first");
}

}  // namespace

const Rulesets& rulesets() {
  static const Rulesets built_in = Rulesets::built_in();
  return built_in;
}

/// An input is one file or several: a line "=== NAME" begins the next.
Files files_of(std::string_view input) {
  Files files;
  std::string name = "main.formula";
  while (!input.empty()) {
    const std::size_t end = std::min(input.find('\n'), input.size() - 1) + 1;
    const std::string_view line = input.substr(0, end);
    constexpr std::string_view mark = "=== ";
    if (line.starts_with(mark)) {
      name = line.substr(mark.size(), line.find_last_not_of("\r\n") + 1 - mark.size());
    } else {
      files[name] += line;
    }
    input.remove_prefix(end);
  }
  return files;
}

CheckOptions reading(const Files& files) {
  CheckOptions options;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::month(11),
                                           std::chrono::day(25)};
  options.read = [&files](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    if (found == files.end()) return std::nullopt;
    return found->second;
  };
  return options;
}

void hold_together(const RunResult& run) {
  must(!run.formulas.empty() || !run.problems.empty(), "a formula passes or says why not");
  for (const Problem& problem : run.problems) must(!problem.message.empty(), "a problem has words");
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& finding : formula.findings) {
      in_order(finding.measured);
      in_order(finding.limit);
    }
  }
}

}  // namespace sudsmark::fuzz
