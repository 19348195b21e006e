// Verdicts, measures and composition as JSON: one document, keys in a fixed order, as
// report.schema.json describes them.
#include <string>
#include <utility>

#include <sudsmark/report.h>

#include "report/json_parts.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

Json source_list(const std::vector<SourceNote>& notes) {
  Json out = Json::array();
  for (const SourceNote& note : notes) {
    Json source{{"kind", note.kind}, {"title", note.title}, {"where", note.where}};
    if (note.quoted) source["read"] = "quoted";
    if (note.computed) source["computed"] = true;
    out.push_back(std::move(source));
  }
  return out;
}

Json verdict_object(const Finding& finding, const std::string& file) {
  Json out = finding_object(finding, file);
  if (finding.allowed) out["allowed"] = {{"because", *finding.allowed}};
  if (finding.met_from_memory) out["fromMemory"] = true;
  if (finding.standing != Standing::not_compared) {
    out["baseline"] = finding.standing == Standing::fresh ? "new" : "unchanged";
  }
  out["sources"] = source_list(finding.sources);
  return out;
}

void write_composition(const FormulaResult& formula, JsonDocument& document) {
  document.begin_list("composition");
  for (const CompositionRow& row : formula.composition) {
    document.item_line({{"substance", row.substance},
                        {"cas", row.cas},
                        {"inci", row.inci},
                        {"low", number(row.share.low)},
                        {"high", number(row.share.high)},
                        {"unit", row.share.unit}});
  }
  document.end();
}

void write_formula(const FormulaResult& formula, JsonDocument& document) {
  document.begin_item();
  document.member("file", formula.file);
  document.member("name", formula.name);
  document.begin_list("verdicts");
  for (const Finding& finding : formula.findings) {
    document.item_line(verdict_object(finding, formula.file));
  }
  document.end();
  write_measures(formula, document);
  write_composition(formula, document);
  if (!formula.notes.empty()) document.member("notes", problem_list(formula.notes));
  document.end();
}

Json absent_list(const std::vector<AbsentFinding>& findings) {
  Json out = Json::array();
  for (const AbsentFinding& finding : findings) {
    out.push_back({{"file", finding.file},
                   {"rule", finding.rule},
                   {"kind", wording::kind_word(finding.kind)},
                   {"level", wording::level_word(finding.level)},
                   {"message", finding.message}});
  }
  return out;
}

}  // namespace

std::string check_json(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  JsonDocument document(options.ascii);
  document.member("tool", tool_object(rulesets));
  document.member("reminder", reminder);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) write_formula(formula, document);
  document.end();
  document.member("errors", problem_list(run.problems));
  if (run.compared) document.member("absent", absent_list(run.absent));
  return document.finished();
}

}  // namespace sudsmark::report
