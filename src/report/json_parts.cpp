#include "report/json_parts.h"

#include <utility>

#include "front/parts.h"
#include "report/compare_words.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

void put_line(Json& object, std::uint32_t line, std::uint32_t column) {
  if (line == 0) return;
  object["line"] = line;
  object["column"] = column;
}

}  // namespace

Json tool_object(const Rulesets& rulesets) {
  Json files = Json::array();
  for (const rules::RuleFile& file : front::parts(rulesets).ruleset.files) {
    files.push_back({{"name", file.name}, {"edition", file.edition}});
  }
  return {{"name", "sudsmark"}, {"version", SUDSMARK_VERSION}, {"rulesets", std::move(files)}};
}

void begin_report(JsonDocument& document, const Rulesets& rulesets) {
  document.member("$schema", "urn:sudsmark:report:2");
  document.member("tool", tool_object(rulesets));
  document.member("reminder", reminder);
}

Json problem_object(const Problem& problem) {
  Json out{{"file", problem.file}};
  put_line(out, problem.line, problem.column);
  out["message"] = problem.message;
  for (const Problem::Place& also : problem.also) {
    Json place{{"file", also.file}};
    put_line(place, also.line, also.column);
    out["also"].push_back(std::move(place));
  }
  return out;
}

Json problem_list(const std::vector<Problem>& problems) {
  Json out = Json::array();
  for (const Problem& problem : problems) out.push_back(problem_object(problem));
  return out;
}

void put_place(Json& object, const Finding& finding, const std::string& formula_file) {
  if (finding.line == 0) return;
  if (finding.file != formula_file) object["file"] = finding.file;
  put_line(object, finding.line, finding.column);
}

void put_figures(Json& object, const Finding& finding) {
  if (finding.measured) {
    object[wording::figure_key(finding)] = short_figure(*finding.measured);
  }
  if (finding.limit) object["limit"] = short_figure(*finding.limit);
  if (!finding.missing.empty()) object["missing"] = finding.missing;
}

void put_occasion(Json& object, const Finding& finding, const std::string& formula_file) {
  object["message"] = finding.message;
  put_place(object, finding, formula_file);
  if (!finding.subject.empty()) {
    object["subject"] = Json::object({{finding.subject_kind, finding.subject}});
  }
  put_figures(object, finding);
}

Json finding_object(const Finding& finding, const std::string& formula_file) {
  Json out{{"rule", finding.rule},
           {"kind", wording::kind_word(finding.kind)},
           {"level", wording::level_word(finding.level)}};
  put_occasion(out, finding, formula_file);
  return out;
}

Json verdict_change_list(const Comparison& comparison) {
  Json out = Json::array();
  for (const VerdictChange& change : comparison.verdicts) {
    Json one{{"rule", change.rule}, {"direction", direction_word(change.direction)}};
    if (!change.subject.empty()) {
      one["subject"] = Json::object({{change.subject_kind, change.subject}});
    }
    one["before"] = verdict_state(change.before);
    one["after"] = verdict_state(change.after);
    out.push_back(std::move(one));
  }
  return out;
}

Json measure_object(const MeasureResult& measure) {
  Json out = figure_object(measure.figure);
  out["from"] = measure.from;
  if (!measure.missing.empty()) out["missing"] = measure.missing;
  return out;
}

void write_measures(const FormulaResult& formula, JsonDocument& document) {
  document.begin_object("measures");
  for (const MeasureResult& measure : formula.measures) {
    document.member_line(measure.name, measure_object(measure));
  }
  document.end();
}

}  // namespace sudsmark::report
