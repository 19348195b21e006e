#include "report/named_limits.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using Name = std::pair<int, std::string>;  ///< rank and words

/// Whether `one` says more of a limit than `other`: the graver first, then the nearer to breaking.
bool tells_more(const Finding& one, const Finding& other) {
  const auto key = [](const Finding& finding) {
    const bool figures = finding.measured && finding.limit;
    const double room = figures ? wording::margin(*finding.measured, *finding.limit).relative : 0;
    return std::tuple(gravity(finding), figures, -room);
  };
  return key(one) > key(other);
}

bool same_figure(const Finding& one, const Finding& other) {
  return other.measured && other.limit && one.measured->unit == other.measured->unit &&
         one.measured->low == other.measured->low && one.measured->high == other.measured->high &&
         one.subject == other.subject;
}

/// Whether figures say something: of what is not known they may be none, and so may its limit.
bool has_figures(const Finding& finding) {
  if (!finding.measured || !finding.limit) return false;
  const bool known = finding.measured->low || finding.measured->high;
  return finding.kind != Kind::open || (known && finding.limit->high != 0.0);
}

/// The narrowest of two limits; an end that would turn the band around is left as it is.
void narrow(Figure& limit, const Figure& other) {
  if (other.low && (!limit.high || *other.low <= *limit.high)) {
    limit.low = std::max(limit.low.value_or(*other.low), *other.low);
  }
  if (other.high && (!limit.low || *other.high >= *limit.low)) {
    limit.high = std::min(limit.high.value_or(*other.high), *other.high);
  }
}

NamedLimit named_limit(const Name& name, const std::vector<const Finding*>& findings) {
  const Finding& first =
      **std::min_element(findings.begin(), findings.end(),
                         [](const Finding* a, const Finding* b) { return tells_more(*a, *b); });
  NamedLimit out;
  out.name = name.second;
  out.verdict = verdict_word(first);
  out.finding = &first;
  if (has_figures(first)) {
    out.measured = first.measured;
    out.limit = first.limit;
    for (const Finding* other : findings) {
      if (same_figure(first, *other)) narrow(*out.limit, *other->limit);
    }
    // a bound without an end says what could be, and nothing of what is
    const bool endless = first.bound && first.measured->low && !first.measured->high;
    const Figure from{first.measured->low, first.measured->low, first.measured->unit};
    out.words =
        endless ? "could reach " + wording::shown(from) + " or more; " + wording::wanted(*out.limit)
                : wording::shown_beside(*out.measured, *out.limit);
  } else if (first.kind == Kind::open) {
    out.words = "waits for " + wording::joined(first.missing);
  }
  return out;
}

}  // namespace

std::vector<NamedLimit> named_limits(const FormulaResult& formula, const front::Parts& parts) {
  std::map<std::string_view, Name> names;  // by rule
  for (const rules::Rule& rule : parts.ruleset.rules) {
    if (rule.words->telling.known_as.empty()) continue;
    names.emplace(rule.id, Name(rule.words->telling.rank, rule.words->telling.known_as));
  }
  std::map<Name, std::vector<const Finding*>> gathered;
  for (const Finding& finding : formula.findings) {
    if (finding.kind == Kind::not_applicable) continue;
    const auto name = names.find(finding.rule);
    if (name != names.end()) gathered[name->second].push_back(&finding);
  }
  std::vector<NamedLimit> out;
  for (const auto& [name, findings] : gathered) out.push_back(named_limit(name, findings));
  return out;
}

}  // namespace sudsmark::report
