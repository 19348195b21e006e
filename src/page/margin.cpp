#include "page/margin.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "front/parts.h"
#include "page/note.h"
#include "report/digest.h"
#include "report/json_parts.h"
#include "report/maker_words.h"
#include "report/named_limits.h"
#include "report/verdict_words.h"
#include "wording/words.h"

namespace sudsmark::page {
namespace {

using report::Json;

Json lines_of(const report::Findings& findings) {
  std::vector<std::uint32_t> lines;
  for (const Finding* finding : findings) {
    if (finding->line > 0) lines.push_back(finding->line);
  }
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  return Json(lines);
}

/// "goggles: SLSA, citric acid", as the text has it without the numbers of the lines.
std::string in_short(const report::InShort& one) {
  std::vector<std::string> named;
  for (const Finding* finding : one.of) {
    std::string name =
        finding->subject_kind == "material" ? report::maker_name(*finding) : finding->subject;
    if (finding->kind == Kind::review) name.insert(0, "perhaps ");
    const bool told = std::find(named.begin(), named.end(), name) != named.end();
    if (!finding->subject.empty() && !told) named.push_back(std::move(name));
  }
  return one.words + (named.empty() ? "" : ": ") + wording::joined(named);
}

std::string waits(const report::Waiting& one) {
  return std::to_string(one.checks) +
         (one.checks == 1 ? " check waits for: " : " checks wait for: ") +
         (one.missing.empty() ? one.first->message : wording::joined(one.missing));
}

Json grouped(Json note, std::string_view group, const report::Findings& findings) {
  note["group"] = group;
  note["lines"] = lines_of(findings);
  return note;
}

Json notes(const FormulaResult& formula, const report::RuleIndex& rules) {
  const report::Digest digest = report::digest(formula, rules);
  Json out = Json::array();
  for (const auto* group : {&digest.must, &digest.should, &digest.noted}) {
    for (const Finding* finding : *group) out.push_back(note(*finding, rules));
  }
  for (const report::InShort& one : digest.in_short) {
    Json told = note(*one.of.front(), rules);
    told["words"] = in_short(one);
    out.push_back(grouped(std::move(told), "cautions", one.of));
  }
  for (const report::Waiting& one : digest.waiting) {
    Json told = note(*one.first, rules);
    told["words"] = waits(one);
    // what weighs no more than a note is one quiet note for all
    if (one.level > Level::note) {
      out.push_back(std::move(told));
    } else {
      out.push_back(grouped(std::move(told), "waiting", one.findings));
    }
  }
  for (const Finding* finding : digest.papers) {
    out.push_back(grouped(note(*finding, rules), "waiting", {finding}));
  }
  for (const Finding* finding : digest.allowed) out.push_back(note(*finding, rules));
  return out;
}

Json limits(const FormulaResult& formula, const Rulesets& rulesets) {
  Json out = Json::array();
  for (const report::NamedLimit& limit : report::named_limits(formula, front::parts(rulesets))) {
    Json one{{"name", limit.name},
             {"verdict", limit.verdict},
             {"weight", weight(*limit.finding)},
             {"words", limit.words},
             {"line", limit.finding->line}};
    if (limit.measured) one["measured"] = report::figure_object(*limit.measured);
    if (limit.limit) one["limit"] = report::figure_object(*limit.limit);
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

Json margin(const RunResult& run, const Rulesets& rulesets) {
  Json out{{"problems", problems(run.problems)}, {"reminder", reminder}};
  if (run.formulas.empty()) return out;
  const FormulaResult& formula = run.formulas.front();
  const report::Tally tally = report::tally(formula);
  const report::RuleIndex rules(front::parts(rulesets));
  out["name"] = formula.name;
  out["file"] = formula.file;
  out["sentence"] = report::verdict_words(formula);
  out["short"] = report::verdict_in_short(formula);
  out["counts"] = {{"must", tally.must},       {"should", tally.should},
                   {"note", tally.noted},      {"depends", tally.perhaps},
                   {"open", tally.undecided},  {"kept", tally.kept},
                   {"allowed", tally.allowed}, {"fromMemory", tally.from_memory}};
  out["notes"] = notes(formula, rules);
  out["limits"] = limits(formula, rulesets);
  out["odd"] = problems(formula.notes);
  return out;
}

}  // namespace sudsmark::page
