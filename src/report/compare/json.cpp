// A comparison as JSON: one document, keys in a fixed order.
#include <string>

#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "report/compare_words.h"
#include "report/json_parts.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

Json change_object(const FigureChange& change) {
  return {
      {"before", figure_object(change.before)},
      {"after", figure_object(change.after)},
      {"change",
       {{"low", number(change.low)}, {"high", number(change.high)}, {"unit", change.after.unit}}}};
}

Json amount_object(const AmountChange& amount) {
  Json out{{"kind", amount_word(amount.kind)}, {"material", amount.name}};
  if (!amount.old_name.empty()) out["inPlaceOf"] = amount.old_name;
  out["supplied"] = change_object(amount.share);
  if (amount.active) out["active"] = change_object(*amount.active);
  return out;
}

Json side_object(const std::optional<Finding>& finding, const FormulaResult& formula) {
  if (!finding) return {{"kind", wording::kind_word(Kind::not_applicable)}, {"level", "none"}};
  Json out{{"kind", wording::kind_word(finding->kind)},
           {"level", wording::level_word(finding->level)},
           {"message", finding->message}};
  put_place(out, *finding, formula.file);
  put_figures(out, *finding);
  if (finding->allowed) out["allowed"] = {{"because", *finding->allowed}};
  if (finding->met_from_memory) out["fromMemory"] = true;
  return out;
}

Json verdict_object(const VerdictChange& change, const Comparison& comparison) {
  Json out{{"rule", change.rule}, {"direction", direction_word(change.direction)}};
  if (!change.subject.empty()) {
    out["subject"] = Json::object({{change.subject_kind, change.subject}});
  }
  out["before"] = side_object(change.before, comparison.before);
  out["after"] = side_object(change.after, comparison.after);
  out["causes"] = Json::array();
  for (const auto& cause : change.causes) out["causes"].push_back(cause);
  return out;
}

}  // namespace

std::string compare_json(const Comparison& comparison, const Rulesets& rulesets,
                         const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("base", {{"file", comparison.before.file}, {"name", comparison.before.name}});
  document.member("tweak", {{"file", comparison.after.file}, {"name", comparison.after.name}});
  document.member("same", comparison.same());
  document.begin_list("edits");
  for (const TweakEdit& edit : comparison.edits) {
    document.item(
        {{"words", edit.words}, {"file", edit.file}, {"line", edit.line}, {"column", edit.column}});
  }
  document.end();
  document.begin_list("ingredients");
  for (const AmountChange& amount : comparison.amounts) document.item(amount_object(amount));
  document.end();
  document.begin_object("measures");
  for (const MeasureChange& measure : comparison.measures) {
    document.member(measure.name, change_object(measure.figure));
  }
  document.end();
  document.begin_list("verdicts");
  for (const VerdictChange& change : comparison.verdicts) {
    document.item(verdict_object(change, comparison));
  }
  document.end();
  document.member("errors", Json::array());
  return document.finished();
}

}  // namespace sudsmark::report
