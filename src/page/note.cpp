#include "page/note.h"

#include <cstdint>
#include <utility>

#include "report/maker_words.h"
#include "report/subject_words.h"
#include "wording/citations.h"
#include "wording/margin.h"

namespace sudsmark::page {
namespace {

using report::Json;

void put_place(Json& out, std::uint32_t line, std::uint32_t column, std::uint32_t end_line,
               std::uint32_t end_column) {
  out["line"] = line;
  out["column"] = column;
  out["endLine"] = end_line;
  out["endColumn"] = end_column;
}

/// The line beside it is the subject, except of a label's.
std::string sentence(const Finding& finding) {
  const bool told = finding.line == 0 || finding.subject_kind == "label";
  return (told ? report::subject_prefix(finding.subject_kind, finding.subject) : std::string()) +
         finding.message;
}

}  // namespace

std::string_view weight(const Finding& finding) {
  if (finding.allowed) return "kept";
  if (finding.kind == Kind::open) return finding.level >= Level::warning ? "open" : "paper";
  if (finding.kind == Kind::review) return finding.met_from_memory ? "kept" : "depends";
  if (finding.kind != Kind::fail) return "kept";
  return finding.level == Level::error     ? "must"
         : finding.level == Level::warning ? "should"
                                           : "note";
}

Json note(const Finding& finding, const report::RuleIndex& rules) {
  Json out{{"weight", weight(finding)},
           {"rule", finding.rule},
           {"words", sentence(finding)},
           {"subject", finding.subject_kind},
           {"about", finding.subject}};
  put_place(out, finding.line, finding.column, finding.end_line, finding.end_column);
  if (finding.allowed) out["allowed"] = *finding.allowed;
  if (!finding.spelling.empty()) out["spelling"] = finding.spelling;
  if (finding.measured && finding.limit) {
    out["sum"] = wording::shown_beside(*finding.measured, *finding.limit);
  }
  const rules::Rule* rule = rules.of(finding);
  const std::string remedy = rule == nullptr ? finding.remedy : rule->words->remedy;
  out["remedy"] = report::remedy_in_short(remedy);
  out["whole"] = remedy;
  if (rule != nullptr) {
    out["title"] = rule->words->title;
    out["why"] = rule->words->why;
  }
  out["sources"] = Json::array();
  for (const SourceNote& source : finding.sources) out["sources"].push_back(wording::words(source));
  return out;
}

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

}  // namespace sudsmark::page
