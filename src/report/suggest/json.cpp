// Suggestions as JSON: one document, keys in a fixed order.
#include <string>
#include <utility>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/json_parts.h"
#include "report/suggest/suggest_words.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using report::Json;
using report::number;

Json findings(const std::vector<Finding>& all, const std::string& formula) {
  Json out = Json::array();
  for (const Finding& one : all) out.push_back(report::finding_object(one, formula));
  return out;
}

Json change(const FigureChange& change) {
  return {{"before", report::figure_object(change.before)},
          {"after", report::figure_object(change.after)}};
}

Json amount(const SuggestedAmount& one) {
  Json out{{"material", one.name}};
  if (!one.container.empty()) out["in"] = one.container;
  out["was"] = report::figure_object(one.was);
  out["is"] = report::figure_object(one.is);
  if (one.was_mass) out["wasMass"] = report::figure_object(*one.was_mass);
  if (one.is_mass) out["isMass"] = report::figure_object(*one.is_mass);
  out["leads"] = one.leads;
  out["removed"] = one.removed;
  out["fills"] = one.fills;
  if (one.added) out["added"] = true;
  if (!one.out_of.empty()) out["inPlaceOf"] = one.out_of;
  return out;
}

Json answer(const SuggestedChange& one, const std::string& formula) {
  Json out{{"inShort", report::in_short(one)}, {"size", number(one.size)}};
  out["amounts"] = Json::array();
  for (const SuggestedAmount& item : one.amounts) out["amounts"].push_back(amount(item));
  if (!one.statements.empty()) out["statements"] = one.statements;
  if (one.outside) out["outside"] = true;
  out["edits"] = one.edits;
  out["roundedTo"] = one.rounding_breaks || one.outside ? Json(nullptr) : Json(one.rounded_to);
  out["measures"] = Json::object();
  for (const report::Trade& trade : report::trades(one)) {
    out["measures"][trade.name] = change(trade.figure);
  }
  out["verdicts"] = report::verdict_change_list(one.comparison);
  out["left"] = findings(one.left, formula);
  return out;
}

}  // namespace

namespace report {

std::string suggest_json(const Suggestion& suggestion, const Rulesets& rulesets,
                         const ReportOptions& options) {
  const std::string& file = suggestion.before.file;
  report::JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("formula", {{"file", file}, {"name", suggestion.before.name}});
  document.member("threshold", wording::level_word(suggestion.threshold));
  document.member("mended", suggestion.mended());
  document.member("broken", findings(suggestion.broken, file));
  document.begin_list("answers");
  for (const SuggestedChange& one : suggestion.answers) document.item(answer(one, file));
  document.end();
  for (const auto& [key, list] :
       {std::pair("unmendable", &suggestion.unmendable), std::pair("blocked", &suggestion.blocked),
        std::pair("otherwise", &suggestion.otherwise)}) {
    document.begin_list(key);
    for (const Finding& one : *list) {
      Json item = report::finding_object(one, file);
      item["remedy"] = one.remedy;
      document.item(item);
    }
    document.end();
  }
  document.begin_list("conflict");
  for (const Conflicting& one : suggestion.conflict) {
    Json item{{"words", one.words}};
    if (!one.rule.empty()) item["rule"] = one.rule;
    if (!one.remedy.empty()) item["remedy"] = one.remedy;
    document.item(item);
  }
  document.end();
  document.member("notMoved", suggestion.fixed);
  document.member("errors", Json::array());
  return document.finished();
}

}  // namespace report
}  // namespace sudsmark
