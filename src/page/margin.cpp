#include "page/margin.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "report/json_parts.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"
#include "wording/citations.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::page {
namespace {

using report::Json;

/// How a finding weighs on the page: "must", "should", "note", "depends", "open", "kept".
std::string_view weight(const Finding& finding) {
  if (finding.allowed) return "kept";
  if (finding.kind == Kind::open) return finding.level >= Level::warning ? "open" : "paper";
  if (finding.kind == Kind::review) return finding.met_from_memory ? "kept" : "depends";
  if (finding.kind != Kind::fail) return "kept";
  return finding.level == Level::error     ? "must"
         : finding.level == Level::warning ? "should"
                                           : "note";
}

void put_place(Json& out, std::uint32_t line, std::uint32_t column, std::uint32_t end_line,
               std::uint32_t end_column) {
  out["line"] = line;
  out["column"] = column;
  out["endLine"] = end_line;
  out["endColumn"] = end_column;
}

Json note(const Finding& finding, const Rulesets& rulesets) {
  Json out{
      {"weight", weight(finding)},
      {"rule", finding.rule},
      {"words", report::subject_prefix(finding.subject_kind, finding.subject) + finding.message},
      {"remedy", finding.remedy},
      {"subject", finding.subject_kind},
           {"about", finding.subject}};
  put_place(out, finding.line, finding.column, finding.end_line, finding.end_column);
  if (finding.allowed) out["allowed"] = *finding.allowed;
  if (!finding.spelling.empty()) out["spelling"] = finding.spelling;
  if (finding.measured && finding.limit) {
    out["sum"] = wording::shown_beside(*finding.measured, *finding.limit);
  }
  if (!finding.missing.empty()) out["missing"] = finding.missing;
  if (const auto rule = rulesets.rule(finding.rule)) {
    out["title"] = rule->title;
    out["why"] = rule->why;
    if (finding.remedy.empty()) out["remedy"] = rule->remedy;
  }
  out["sources"] = Json::array();
  for (const SourceNote& source : finding.sources) out["sources"].push_back(wording::words(source));
  return out;
}

bool to_be_read(const Finding& finding) {
  return finding.kind == Kind::fail || finding.kind == Kind::open ||
         (finding.kind == Kind::review && !finding.met_from_memory);
}

Json notes(const FormulaResult& formula, const Rulesets& rulesets) {
  std::vector<const Finding*> read;
  for (const Finding& finding : formula.findings) {
    if (to_be_read(finding)) read.push_back(&finding);
  }
  std::stable_sort(read.begin(), read.end(), [](const Finding* one, const Finding* other) {
    const auto key = [](const Finding& finding) {
      return std::pair(finding.allowed ? Level::none : finding.level, finding.kind == Kind::fail);
    };
    return key(*one) > key(*other);
  });
  Json out = Json::array();
  for (const Finding* finding : read) out.push_back(note(*finding, rulesets));
  return out;
}

}  // namespace

Json problems(const std::vector<Problem>& all) {
  Json out = Json::array();
  for (const Problem& problem : all) {
    Json one{{"file", problem.file}, {"words", problem.message}, {"id", problem.id}};
    put_place(one, problem.line, problem.column, problem.end_line, problem.end_column);
    if (!problem.spelling.empty()) one["spelling"] = problem.spelling;
    out.push_back(std::move(one));
  }
  return out;
}

Json margin(const RunResult& run, const Rulesets& rulesets) {
  Json out{{"problems", problems(run.problems)}, {"reminder", reminder}};
  if (run.formulas.empty()) return out;
  const FormulaResult& formula = run.formulas.front();
  const report::Tally tally = report::tally(formula);
  out["name"] = formula.name;
  out["file"] = formula.file;
  out["sentence"] = report::verdict_words(formula);
  out["short"] = report::verdict_in_short(formula);
  out["counts"] = {{"must", tally.must},       {"should", tally.should},
                   {"note", tally.noted},      {"depends", tally.perhaps},
                   {"open", tally.undecided},  {"kept", tally.kept},
                   {"allowed", tally.allowed}, {"fromMemory", tally.from_memory}};
  out["notes"] = notes(formula, rulesets);
  out["odd"] = problems(formula.notes);
  return out;
}

}  // namespace sudsmark::page
