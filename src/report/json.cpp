// The JSON reports: one document, keys in a fixed order, as report.schema.json describes them.
#include <string>
#include <utility>

#include <sudsmark/report.h>

#include "front/parts.h"
#include "report/json_document.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::JsonDocument;
using report::number;
using report::ordered_json;

ordered_json sources(const std::vector<SourceNote>& notes) {
  ordered_json out = ordered_json::array();
  for (const SourceNote& note : notes) {
    ordered_json source{{"kind", note.kind}, {"title", note.title}, {"where", note.where}};
    if (note.quoted) source["read"] = "quoted";
    if (note.computed) source["computed"] = true;
    out.push_back(std::move(source));
  }
  return out;
}

std::string_view standing_word(Standing standing) {
  return standing == Standing::fresh ? "new" : "unchanged";
}

ordered_json verdict(const Finding& finding, const std::string& file) {
  ordered_json out{{"rule", finding.rule},
                   {"kind", wording::kind_word(finding.kind)},
                   {"level", wording::level_word(finding.level)},
                   {"message", finding.message}};
  if (finding.line > 0) {
    if (finding.file != file) out["file"] = finding.file;
    out["line"] = finding.line;
    out["column"] = finding.column;
  }
  if (!finding.subject.empty()) {
    out["subject"] = ordered_json::object({{finding.subject_kind, finding.subject}});
  }
  if (finding.measured) {
    out[wording::figure_key(finding)] = report::figure_object(*finding.measured);
  }
  if (finding.limit) out["limit"] = report::figure_object(*finding.limit);
  if (!finding.missing.empty()) out["missing"] = finding.missing;
  if (finding.allowed) out["allowed"] = {{"because", *finding.allowed}};
  if (finding.met_from_memory) out["fromMemory"] = true;
  if (finding.standing != Standing::not_compared) {
    out["baseline"] = standing_word(finding.standing);
  }
  out["sources"] = sources(finding.sources);
  return out;
}

ordered_json problem(const Problem& problem) {
  ordered_json out{{"file", problem.file}};
  const auto put = [](ordered_json& object, std::uint32_t line, std::uint32_t column) {
    if (line == 0) return;
    object["line"] = line;
    object["column"] = column;
  };
  put(out, problem.line, problem.column);
  out["message"] = problem.message;
  for (const Problem::Place& also : problem.also) {
    ordered_json place{{"file", also.file}};
    put(place, also.line, also.column);
    out["also"].push_back(std::move(place));
  }
  return out;
}

ordered_json problems(const std::vector<Problem>& list) {
  ordered_json out = ordered_json::array();
  for (const Problem& one : list) out.push_back(problem(one));
  return out;
}

void write_measures(const FormulaResult& formula, JsonDocument& document) {
  document.begin_object("measures");
  for (const MeasureResult& measure : formula.measures) {
    ordered_json one = report::figure_object(measure.figure);
    one["from"] = measure.from;
    if (!measure.missing.empty()) one["missing"] = wording::joined(measure.missing);
    document.member_line(measure.name, one);
  }
  document.end();
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

ordered_json curve(const Curve& curve) {
  ordered_json out{{"name", curve.name}};
  if (!curve.subject.empty()) out["task"] = curve.subject;
  out["x"] = {{"name", curve.against}, {"unit", curve.against_unit}};
  out["y"] = {{"name", curve.measure}, {"unit", curve.unit}};
  if (curve.today) out["now"] = report::figure_object(*curve.today);
  if (curve.neutral) out["neutral"] = number(curve.neutral);
  ordered_json points = ordered_json::array();
  for (const CurvePoint& at : curve.points) {
    points.push_back({{"x", number(at.x)}, {"low", number(at.low)}, {"high", number(at.high)}});
  }
  out["points"] = std::move(points);
  return out;
}

void write_checked(const FormulaResult& formula, JsonDocument& document) {
  document.begin_item();
  document.member("file", formula.file);
  document.member("name", formula.name);
  document.begin_list("verdicts");
  for (const Finding& finding : formula.findings) {
    document.item_line(verdict(finding, formula.file));
  }
  document.end();
  write_measures(formula, document);
  write_composition(formula, document);
  if (!formula.notes.empty()) document.member("notes", problems(formula.notes));
  document.end();
}

ordered_json absent(const std::vector<AbsentFinding>& findings) {
  ordered_json out = ordered_json::array();
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

std::string json_report(const RunResult& run, const Rulesets& rulesets,
                        const JsonOptions& options) {
  ordered_json files = ordered_json::array();
  for (const rules::RuleFile& file : front::parts(rulesets).ruleset.files) {
    files.push_back({{"name", file.name}, {"edition", file.edition}});
  }
  JsonDocument document(options.ascii);
  document.member(
      "tool",
      {{"name", "sudsmark"}, {"version", SUDSMARK_VERSION}, {"rulesets", std::move(files)}});
  document.member("reminder", reminder);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) write_checked(formula, document);
  document.end();
  document.member("errors", problems(run.problems));
  if (run.compared) document.member("absent", absent(run.absent));
  return document.finished();
}

std::string measure_json(const RunResult& run, const JsonOptions& options) {
  JsonDocument document(options.ascii);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) {
    document.begin_item();
    document.member("file", formula.file);
    document.member("name", formula.name);
    write_measures(formula, document);
    document.begin_list("curves");
    for (const Curve& one : formula.curves) document.item_line(curve(one));
    document.end();
    document.end();
  }
  document.end();
  document.member("errors", problems(run.problems));
  document.member("reminder", reminder);
  return document.finished();
}

}  // namespace sudsmark
