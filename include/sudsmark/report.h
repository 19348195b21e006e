// Reports: what a command came to, as text for people and as data for programs.
//
//     const sudsmark::Report* json = sudsmark::find_report(sudsmark::Command::check, "json");
//     sudsmark::CheckOptions options;
//     sudsmark::fill(json->wants, options);
//     const auto run = sudsmark::check({"harbour.formula", text}, rulesets, options);
//     std::cout << json->write(&run, rulesets, {});
//
// Every report is one row of the register. Nothing here touches a console or a file.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/compare.h>
#include <sudsmark/dossier.h>
#include <sudsmark/drill.h>
#include <sudsmark/leeway.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>
#include <sudsmark/suggest.h>

namespace sudsmark {

/// What is reported on. `sheet` is the bench sheet, `swap` what could stand in a material's place.
enum class Command : std::uint8_t {
  check,
  compare,
  measure,
  sheet,
  label,
  dossier,
  suggest,
  swap,
  leeway,
  leeway_map,
  explain,
  rules,
  drill
};

/// How much is told of verdicts; each has what those before it have.
enum class Verdicts : std::uint8_t {
  none,
  to_read,  ///< what somebody must read; the rest is counted
  kept,     ///< passes without their words, and measures without theirs
  all,      ///< what does not apply too
  in_full
};

/// What has to be filled of each formula's result, so that a report is whole.
struct Details {
  Verdicts verdicts = Verdicts::none;
  bool measures = false;     ///< measures and composition
  bool curves = false;       ///< some hundred equilibria a formula
  bool particulars = false;  ///< particulars, ingredients, portions, weighings, air
  bool lines = false;        ///< what a finding has of its line, and its fingerprint
  bool sheet = false;        ///< the bench sheet
  bool labels = false;       ///< labels and papers
};

/// What either wants.
[[nodiscard]] Details operator|(const Details& one, const Details& other);

/// Asks a check for those details, and for no others.
void fill(const Details& details, CheckOptions& options);

/// A name that a rule, a measure, a material or a kind of product is called by.
struct Topic {
  std::string name;
};
/// None, with a problem that tells the nearest names, if nothing is called so.
[[nodiscard]] Result<Topic> find_topic(std::string_view name, const Rulesets& rulesets);

/// What a command came to, borrowed. `rules` reports on the rulesets themselves.
using Outcome = std::variant<const RunResult*, const Comparison*, const Suggestion*, const Swaps*,
                             const Leeway*, const LeewayMap*, const Topic*, const Handout*,
                             const Rulesets*, const Dossier*>;

struct Fixes;

struct ReportOptions {
  bool verbose = false;  ///< passes with their margins, sources, and all that is gathered otherwise
  bool color = false;
  bool ascii = false;       ///< no byte above 0x7F
  bool only_worse = false;  ///< of a comparison: only verdicts that got worse or undecided
  /// Of a page: address of a page of all formulas to link back to; empty: none.
  std::string overview = {};
  std::size_t columns = 80;         ///< of the terminal that text is for
  std::optional<Level> quiet = {};  ///< only what weighs as much as that, and the sum
  const Fixes* fixes = nullptr;     ///< of SARIF: what mends findings (<sudsmark/fixes.h>), if any
};

/// A page of a folder.
struct ReportPage {
  std::string name;  ///< of its file
  std::string text;
};

/// A page that leads to a page of each formula, made while they come: of each a line is kept, and
/// not the formula.
class Overview {
 public:
  Overview() = default;
  Overview(const Overview&) = delete;
  Overview& operator=(const Overview&) = delete;
  virtual ~Overview() = default;

  virtual void add(const FormulaResult& formula, const std::string& address) = 0;
  /// `rest`: what could not be read, and what a baseline has and the run has not.
  [[nodiscard]] virtual std::string written(const RunResult& rest) = 0;
};

/// One row of the register.
struct Report {
  std::string_view word;     ///< what the format is called: "json"
  Details wants;             ///< filled of each formula, before `write`
  Verdicts wants_more = {};  ///< of verdicts, where the report is verbose
  /// Text for people, whose lines may be folded to a terminal's width.
  bool folds = false;
  /// Writes what the command came to; the outcome has to be that command's.
  std::string (*write)(const Outcome& outcome, const Rulesets& rulesets,
                       const ReportOptions& options) = nullptr;
  /// Where a run can be a folder with a page for each formula: begins the page that leads to them.
  /// The rulesets outlive it.
  std::unique_ptr<Overview> (*begin_overview)(const Rulesets& rulesets,
                                              const ReportOptions& options) = nullptr;
  /// Where the outcome is a folder of pages of its own: writes all of them.
  std::vector<ReportPage> (*write_pages)(const Outcome& outcome, const Rulesets& rulesets,
                                         const ReportOptions& options) = nullptr;

  /// What a report with those options wants.
  [[nodiscard]] Details wanted(const ReportOptions& options) const;
};

/// All reports of a command; the first is the usual one.
[[nodiscard]] std::span<const Report> reports(Command command);

/// The report of a command that is called so; null: it has none.
[[nodiscard]] const Report* find_report(Command command, std::string_view word);

/// Problems in the GNU error format, one a line.
[[nodiscard]] std::string problem_lines(const std::vector<Problem>& problems);

/// Whether a finding is at or above a level, not allowed, and not known from a baseline.
[[nodiscard]] bool reaches(const Finding& finding, Level level);
/// Whether any of them is.
[[nodiscard]] bool reaches(const RunResult& run, Level level);

}  // namespace sudsmark
