// Suggestions as JSON: one document, keys in a fixed order.
#include <string>
#include <utility>

#include <sudsmark/suggest.h>

#include "front/parts.h"
#include "report/compare_words.h"
#include "report/json_document.h"
#include "report/suggest_words.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using report::number;
using report::ordered_json;

ordered_json tool(const Rulesets& rulesets) {
  ordered_json files = ordered_json::array();
  for (const rules::RuleFile& file : rulesets.parts().ruleset.files) {
    files.push_back({{"name", file.name}, {"edition", file.edition}});
  }
  return {{"name", "sudsmark"}, {"version", SUDSMARK_VERSION}, {"rulesets", std::move(files)}};
}

ordered_json finding(const Finding& one, const std::string& formula) {
  ordered_json out{{"rule", one.rule},
                   {"kind", wording::kind_word(one.kind)},
                   {"level", wording::level_word(one.level)},
                   {"message", one.message}};
  if (one.line > 0) {
    if (one.file != formula) out["file"] = one.file;
    out["line"] = one.line;
    out["column"] = one.column;
  }
  if (!one.subject.empty())
    out["subject"] = ordered_json::object({{one.subject_kind, one.subject}});
  if (one.measured) out[wording::figure_key(*one.measured)] = report::figure_object(*one.measured);
  if (one.limit) out["limit"] = report::figure_object(*one.limit);
  if (!one.missing.empty()) out["missing"] = one.missing;
  return out;
}

ordered_json findings(const std::vector<Finding>& all, const std::string& formula) {
  ordered_json out = ordered_json::array();
  for (const Finding& one : all) out.push_back(finding(one, formula));
  return out;
}

ordered_json change(const FigureChange& change) {
  return {{"before", report::figure_object(change.before)},
          {"after", report::figure_object(change.after)}};
}

ordered_json amount(const SuggestedAmount& one) {
  ordered_json out{{"material", one.name}};
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

ordered_json verdicts(const Comparison& comparison) {
  ordered_json out = ordered_json::array();
  for (const VerdictChange& one : comparison.verdicts) {
    ordered_json item{{"rule", one.rule}, {"direction", report::direction_word(one.direction)}};
    if (!one.subject.empty()) {
      item["subject"] = ordered_json::object({{one.subject_kind, one.subject}});
    }
    item["before"] = report::verdict_state(one.before);
    item["after"] = report::verdict_state(one.after);
    out.push_back(std::move(item));
  }
  return out;
}

ordered_json answer(const SuggestedChange& one, const std::string& formula) {
  ordered_json out{{"inShort", report::in_short(one)}, {"size", number(one.size)}};
  out["amounts"] = ordered_json::array();
  for (const SuggestedAmount& item : one.amounts) out["amounts"].push_back(amount(item));
  if (!one.statements.empty()) out["statements"] = one.statements;
  out["edits"] = one.edits;
  out["roundedTo"] = one.rounding_breaks ? ordered_json(nullptr) : ordered_json(one.rounded_to);
  out["measures"] = ordered_json::object();
  for (const report::Trade& trade : report::trades(one)) {
    out["measures"][trade.name] = change(trade.figure);
  }
  out["verdicts"] = verdicts(one.comparison);
  out["left"] = findings(one.left, formula);
  return out;
}

}  // namespace

std::string suggest_json(const Suggestion& suggestion, const Rulesets& rulesets,
                         const JsonOptions& options) {
  const std::string& file = suggestion.before.file;
  report::JsonDocument document(options.ascii);
  document.member("tool", tool(rulesets));
  document.member("reminder", reminder);
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
      ordered_json item = finding(one, file);
      item["remedy"] = one.remedy;
      document.item(item);
    }
    document.end();
  }
  document.begin_list("conflict");
  for (const Conflicting& one : suggestion.conflict) {
    ordered_json item{{"words", one.words}};
    if (!one.rule.empty()) item["rule"] = one.rule;
    if (!one.remedy.empty()) item["remedy"] = one.remedy;
    document.item(item);
  }
  document.end();
  document.member("notMoved", suggestion.fixed);
  return document.finished();
}

std::string swaps_json(const Swaps& swaps, const Rulesets& rulesets, const JsonOptions& options) {
  report::JsonDocument document(options.ascii);
  document.member("tool", tool(rulesets));
  document.member("reminder", reminder);
  document.member("formula", {{"file", swaps.before.file}, {"name", swaps.before.name}});
  document.member("inPlaceOf", swaps.name);
  document.member("roles", swaps.roles);
  document.member("considered", swaps.considered);
  document.begin_list("choices");
  for (const SwapChoice& one : swaps.choices) {
    document.item(ordered_json{{"material", one.name},
                               {"differs", one.differs},
                               {"distance", number(one.distance)},
                               {"worse", one.worse},
                               {"undecided", one.undecided},
                               {"better", one.better},
                               {"verdicts", verdicts(one.comparison)}});
  }
  document.end();
  return document.finished();
}

}  // namespace sudsmark
