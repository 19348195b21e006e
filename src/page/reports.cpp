#include "page/reports.h"

#include <array>
#include <string>
#include <string_view>
#include <utility>

#include <sudsmark/report.h>

#include "page/note.h"

namespace sudsmark::page {
namespace {

using report::Json;

constexpr std::array commands{std::pair<std::string_view, Command>("check", Command::check),
                              std::pair<std::string_view, Command>("compare", Command::compare),
                              std::pair<std::string_view, Command>("measure", Command::measure),
                              std::pair<std::string_view, Command>("sheet", Command::sheet),
                              std::pair<std::string_view, Command>("label", Command::label),
                              std::pair<std::string_view, Command>("dossier", Command::dossier),
                              std::pair<std::string_view, Command>("suggest", Command::suggest),
                              std::pair<std::string_view, Command>("swap", Command::swap),
                              std::pair<std::string_view, Command>("leeway", Command::leeway),
                              std::pair<std::string_view, Command>("explain", Command::explain),
                              std::pair<std::string_view, Command>("rules", Command::rules)};

Json problem(const std::string& message) {
  Problem out;
  out.message = message;
  return {{"problems", problems({out})}};
}

/// What a command came to, written by a row of the register, or why it came to nothing.
template <class Value>
Json written(const Report& report, const Result<Value>& made, const Rulesets& rulesets,
             const ReportOptions& options) {
  if (!made) return {{"problems", problems(made.problems)}};
  return {{"report", report.write(&*made, rulesets, options)},
          {"problems", problems(made.problems)}};
}

Result<Comparison> compared(const Asked& asked, const Rulesets& rulesets,
                            const CheckOptions& options) {
  if (asked.base) return compare(*asked.base, asked.card, rulesets, options);
  const auto base = base_of(asked.card, options);
  if (!base) return {std::nullopt, base.problems};
  return compare(*base, asked.card, rulesets, options);
}

}  // namespace

Json written_report(const Asked& asked, const Rulesets& rulesets) {
  for (const auto& [word, command] : commands) {
    if (word != asked.command) continue;
    const Report* report = find_report(command, asked.format);
    if (report == nullptr) {
      return problem("'" + asked.command + "' has no format '" + asked.format + "'");
    }
    ReportOptions shown;
    shown.verbose = asked.verbose;
    CheckOptions options = asked.options;
    fill(report->wanted(shown), options);
    switch (command) {
      case Command::compare:
        return written(*report, compared(asked, rulesets, options), rulesets, shown);
      case Command::dossier:
        return written(*report, dossier_for(asked.card, rulesets, options), rulesets, shown);
      case Command::suggest:
        return written(*report, suggest(asked.card, rulesets, options, {}), rulesets, shown);
      case Command::swap:
        return written(*report, swaps(asked.card, asked.name, rulesets, options), rulesets, shown);
      case Command::leeway:
        return written(*report, leeway(asked.card, rulesets, options, {}), rulesets, shown);
      case Command::explain:
        return written(*report, find_topic(asked.name, rulesets), rulesets, shown);
      case Command::rules:
        return {{"report", report->write(&rulesets, rulesets, shown)}};
      default:
        break;
    }
    const RunResult run = check(asked.card, rulesets, options);
    return {{"report", report->write(&run, rulesets, shown)}, {"problems", problems(run.problems)}};
  }
  return problem("'" + asked.command + "' is no command of the page");
}

}  // namespace sudsmark::page
