// A comparison as JSON: one document, keys in a fixed order.
#include <string>
#include <utility>

#include <sudsmark/compare.h>

#include "front/parts.h"
#include "report/compare_words.h"
#include "report/json_document.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::number;
using report::ordered_json;

ordered_json change(const FigureChange& change) {
  return {
      {"before", report::figure_object(change.before)},
      {"after", report::figure_object(change.after)},
      {"change",
       {{"low", number(change.low)}, {"high", number(change.high)}, {"unit", change.after.unit}}}};
}

ordered_json amount(const AmountChange& one) {
  ordered_json out{{"kind", report::amount_word(one.kind)}, {"material", one.name}};
  if (!one.old_name.empty()) out["inPlaceOf"] = one.old_name;
  out["supplied"] = change(one.share);
  if (one.active) out["active"] = change(*one.active);
  return out;
}

ordered_json side(const std::optional<Finding>& finding, const FormulaResult& formula) {
  if (!finding) return {{"kind", wording::kind_word(Kind::not_applicable)}, {"level", "none"}};
  ordered_json out{{"kind", wording::kind_word(finding->kind)},
                   {"level", wording::level_word(finding->level)},
                   {"message", finding->message}};
  if (finding->line > 0) {
    if (finding->file != formula.file) out["file"] = finding->file;
    out["line"] = finding->line;
    out["column"] = finding->column;
  }
  if (finding->measured) {
    out[wording::figure_key(*finding)] = report::figure_object(*finding->measured);
  }
  if (finding->limit) out["limit"] = report::figure_object(*finding->limit);
  if (!finding->missing.empty()) out["missing"] = finding->missing;
  if (finding->allowed) out["allowed"] = {{"because", *finding->allowed}};
  if (finding->met_from_memory) out["fromMemory"] = true;
  return out;
}

ordered_json verdict(const VerdictChange& one, const Comparison& of) {
  ordered_json out{{"rule", one.rule}, {"direction", report::direction_word(one.direction)}};
  if (!one.subject.empty()) {
    out["subject"] = ordered_json::object({{one.subject_kind, one.subject}});
  }
  out["before"] = side(one.before, of.before);
  out["after"] = side(one.after, of.after);
  out["causes"] = ordered_json::array();
  for (const auto& cause : one.causes) out["causes"].push_back(cause);
  return out;
}

}  // namespace

std::string compare_json(const Comparison& comparison, const Rulesets& rulesets,
                         const JsonOptions& options) {
  ordered_json files = ordered_json::array();
  for (const rules::RuleFile& file : front::parts(rulesets).ruleset.files) {
    files.push_back({{"name", file.name}, {"edition", file.edition}});
  }
  report::JsonDocument document(options.ascii);
  document.member(
      "tool",
      {{"name", "sudsmark"}, {"version", SUDSMARK_VERSION}, {"rulesets", std::move(files)}});
  document.member("reminder", reminder);
  document.member("base", {{"file", comparison.before.file}, {"name", comparison.before.name}});
  document.member("tweak", {{"file", comparison.after.file}, {"name", comparison.after.name}});
  document.member("same", comparison.same());
  document.begin_list("edits");
  for (const TweakEdit& edit : comparison.edits) {
    document.item(ordered_json{
        {"words", edit.words}, {"file", edit.file}, {"line", edit.line}, {"column", edit.column}});
  }
  document.end();
  document.begin_list("ingredients");
  for (const AmountChange& one : comparison.amounts) document.item(amount(one));
  document.end();
  document.begin_object("measures");
  for (const MeasureChange& one : comparison.measures) {
    document.member(one.name, change(one.figure));
  }
  document.end();
  document.begin_list("verdicts");
  for (const VerdictChange& one : comparison.verdicts) document.item(verdict(one, comparison));
  document.end();
  return document.finished();
}

}  // namespace sudsmark
