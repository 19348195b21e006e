// Measures and curves as JSON: one document, keys in a fixed order.
#include <utility>

#include <sudsmark/report.h>

#include "report/json_parts.h"

namespace sudsmark::report {
namespace {

Json curve_object(const Curve& curve) {
  Json out{{"name", curve.name}};
  if (!curve.subject.empty()) out["task"] = curve.subject;
  out["x"] = {{"name", curve.against}, {"unit", curve.against_unit}};
  out["y"] = {{"name", curve.measure}, {"unit", curve.unit}};
  if (curve.today) out["now"] = figure_object(*curve.today);
  if (curve.neutral) out["neutral"] = number(curve.neutral);
  Json points = Json::array();
  for (const CurvePoint& point : curve.points) {
    points.push_back(
        {{"x", number(point.x)}, {"low", number(point.low)}, {"high", number(point.high)}});
  }
  out["points"] = std::move(points);
  return out;
}

}  // namespace

std::string measure_json(const RunResult& run, const Rulesets& rulesets,
                         const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) {
    document.begin_item();
    document.member("file", formula.file);
    document.member("name", formula.name);
    write_measures(formula, document);
    document.begin_list("curves");
    for (const Curve& curve : formula.curves) document.item_line(curve_object(curve));
    document.end();
    document.end();
  }
  document.end();
  document.member("errors", problem_list(run.problems));
  return document.finished();
}

}  // namespace sudsmark::report
