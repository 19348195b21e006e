#include "report/digest.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "wording/margin.h"

namespace sudsmark::report {
namespace {

/// How far out a figure lies, the farthest least. What has no figure is wholly so.
double room(const Finding& finding) {
  constexpr double wholly = -1;
  const bool figures = finding.measured && finding.limit;
  return figures ? wording::relative_margin(*finding.measured, *finding.limit) : wholly;
}

rules::Concern concern(const Finding& finding, const RuleIndex& rules) {
  const rules::Rule* rule = rules.of(finding);
  return rule == nullptr ? rules::Concern::craft : rule->words->telling.concern;
}

/// What comes first stands lower.
using Weight = std::tuple<rules::Concern, bool, double>;

Weight weight(const Finding& finding, const RuleIndex& rules) {
  return {concern(finding, rules), finding.kind != Kind::fail, room(finding)};
}

bool known_before(const Finding& finding) {
  return finding.standing == Standing::unchanged;
}

class Digesting {
 public:
  Digesting(const RuleIndex& rules, bool all) : rules_(rules), all_(all) {}

  Digest of(const FormulaResult& formula) {
    out_.kept = formula.passes_left_out;
    for (const Finding& finding : formula.findings) {
      if (all_ || !known_before(finding)) add(finding);
    }
    for (Findings* group : {&out_.must, &out_.should, &out_.noted}) sort(*group);
    for (auto& [missing, waiting] : waiting_) out_.waiting.push_back(std::move(waiting));
    std::stable_sort(out_.waiting.begin(), out_.waiting.end(),
                     [](const Waiting& a, const Waiting& b) {
                       return std::tuple(a.level, a.checks) > std::tuple(b.level, b.checks);
                     });
    return std::move(out_);
  }

 private:
  void add(const Finding& finding) {
    if (finding.allowed) {
      out_.allowed.push_back(&finding);
      return;
    }
    switch (finding.kind) {
      case Kind::pass:
        ++out_.kept;
        break;
      case Kind::review:
        if (finding.met_from_memory) {
          ++out_.kept;
          ++out_.from_memory;
          break;
        }
        [[fallthrough]];
      case Kind::fail:
        if (finding.level == Level::error) {
          out_.must.push_back(&finding);
        } else if (finding.level == Level::warning) {
          out_.should.push_back(&finding);
        } else {
          note(finding);
        }
        break;
      case Kind::open:
        if (finding.paper && finding.level <= Level::note && !all_) {
          out_.papers.push_back(&finding);
        } else {
          wait(finding);
        }
        break;
      case Kind::not_applicable:
        break;
    }
  }

  void note(const Finding& finding) {
    const rules::Rule* rule = rules_.of(finding);
    const std::string words = rule == nullptr ? std::string() : rule->words->telling.in_short;
    if (words.empty() || all_) {
      out_.noted.push_back(&finding);
      return;
    }
    auto same = std::find_if(out_.in_short.begin(), out_.in_short.end(),
                             [&](const InShort& one) { return one.words == words; });
    if (same == out_.in_short.end()) same = out_.in_short.insert(same, {words, {}});
    same->of.push_back(&finding);
  }

  void wait(const Finding& finding) {
    Waiting& waiting = waiting_[finding.missing];
    const bool heaviest = waiting.first == nullptr || finding.level > waiting.level;
    if (waiting.first == nullptr) waiting.missing = finding.missing;
    if (heaviest) waiting.first = &finding;
    waiting.level = std::max(waiting.level, finding.level);
    waiting.findings.push_back(&finding);
    waiting.checks += 1 + finding.alike_left_out;
    const auto known = std::find(waiting.rules.begin(), waiting.rules.end(), finding.rule);
    if (known == waiting.rules.end()) {
      waiting.rules.insert(heaviest ? waiting.rules.begin() : known, finding.rule);
    }
  }

  void sort(Findings& group) const {
    std::vector<std::pair<Weight, const Finding*>> weighed;
    weighed.reserve(group.size());
    for (const Finding* one : group) weighed.emplace_back(weight(*one, rules_), one);
    std::stable_sort(weighed.begin(), weighed.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::transform(weighed.begin(), weighed.end(), group.begin(),
                   [](const auto& one) { return one.second; });
  }

  const RuleIndex& rules_;
  bool all_;
  Digest out_;
  std::map<std::vector<std::string>, Waiting> waiting_;
};

}  // namespace

bool weighs_more(const Finding& one, const Finding& other, const RuleIndex& rules) {
  return weight(one, rules) < weight(other, rules);
}

Digest digest(const FormulaResult& formula, const RuleIndex& rules, bool all) {
  return Digesting(rules, all).of(formula);
}

}  // namespace sudsmark::report
