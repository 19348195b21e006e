// Which examples become exercises, and in which order.
#include <algorithm>

#include <sudsmark/check.h>
#include <sudsmark/drill.h>

#include "front/parts.h"
#include "front/today.h"
#include "text/hash.h"
#include "text/name.h"

namespace sudsmark {
namespace {

/// A number that looks drawn and is the same everywhere.
std::uint64_t drawn(unsigned deal, std::string_view id) {
  const std::uint64_t hash = text::hash_of(id, text::hash_of(std::to_string(deal)));
  return hash ^ (hash >> 29U);
}

/// The example under a name that gives nothing away.
std::string renamed(std::string formula) {
  const std::size_t keyword = formula.find("formula");
  const std::size_t begin = formula.find('"', keyword);
  const std::size_t end = begin == std::string::npos ? begin : formula.find('"', begin + 1);
  if (end != std::string::npos) formula.replace(begin, end + 1 - begin, "\"Trial batch\"");
  return formula;
}

class Dealer {
 public:
  Dealer(const Rulesets& rulesets, const DrillOptions& options)
      : rulesets_(rulesets), ruleset_(front::parts(rulesets).ruleset), options_(options) {
    checking_.on = options.on;
    checking_ = front::with_day(std::move(checking_));
    checking_.passes_in_full = false;
  }

  std::vector<Exercise> deal() {
    std::vector<std::pair<std::uint64_t, const rules::Rule*>> order;
    for (const rules::Rule& rule : ruleset_.rules) {
      if (asked_for(rule)) order.emplace_back(drawn(options_.deal, rule.id), &rule);
    }
    std::sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
      return a.first != b.first ? a.first < b.first : a.second->id < b.second->id;
    });
    for (const auto& [number, rule] : order) {
      if (out_.size() >= options_.count) break;
      const bool sound = number % 4 == 0;
      take(*rule, sound ? rule->passes : rule->fails, sound, number / 4);
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool asked_for(const rules::Rule& rule) const {
    if (options_.about.empty()) return rule.otherwise >= Level::warning;
    const auto means = [&](const std::string& word) {
      return word == rule.id || text::fold(word) == text::fold(ruleset_.files[rule.file].name) ||
             text::fold(word) == text::fold(ruleset_.files[rule.file].subject);
    };
    return std::any_of(options_.about.begin(), options_.about.end(), means);
  }

  void take(const rules::Rule& rule, const std::vector<std::string>& examples, bool sound,
            std::uint64_t number) {
    if (examples.empty()) return;
    Exercise exercise;
    exercise.formula = renamed(examples[number % examples.size()]);
    exercise.findings = wrong(rule.id, exercise.formula);
    // an example shows its own rule and may break another: that is no riddle
    const bool told = std::any_of(exercise.findings.begin(), exercise.findings.end(),
                                  [&](const Finding& one) { return one.rule == rule.id; });
    if (sound ? !exercise.sound() : !told) return;
    exercise.subject = ruleset_.files[rule.file].subject;
    exercise.rule = rule.id;
    exercise.title = rule.title;
    exercise.why = rule.why;
    exercise.remedy = rule.remedy;
    out_.push_back(std::move(exercise));
  }

  /// What a check finds broken there, the rule's own first.
  [[nodiscard]] std::vector<Finding> wrong(const std::string& rule,
                                           const std::string& formula) const {
    RunResult run = check({"exercise", formula}, rulesets_, checking_);
    std::vector<Finding> out;
    for (FormulaResult& result : run.formulas) {
      for (Finding& finding : result.findings) {
        const bool broken = finding.kind == Kind::fail || finding.kind == Kind::review;
        if (!broken || finding.line == 0 || finding.allowed || finding.met_from_memory) continue;
        // what is said of the product as a whole has no line that a trainee could find
        const bool found_on_a_line = finding.level >= Level::warning && finding.line > 1;
        if (found_on_a_line || finding.rule == rule) {
          out.push_back(std::move(finding));
        }
      }
    }
    std::stable_partition(out.begin(), out.end(),
                          [&](const Finding& one) { return one.rule == rule; });
    return out;
  }

  const Rulesets& rulesets_;
  const rules::Ruleset& ruleset_;
  const DrillOptions& options_;
  CheckOptions checking_;
  std::vector<Exercise> out_;
};

}  // namespace

Result<std::vector<Exercise>> exercises(const Rulesets& rulesets, const DrillOptions& options) {
  Result<std::vector<Exercise>> out;
  const rules::Ruleset& ruleset = front::parts(rulesets).ruleset;
  for (const std::string& word : options.about) {
    std::vector<std::string> known;
    bool found = ruleset.find_rule(word).has_value();
    for (const rules::RuleFile& file : ruleset.files) {
      found = found || text::fold(word) == text::fold(file.name) ||
              text::fold(word) == text::fold(file.subject);
      known.push_back(file.name);
    }
    if (found) continue;
    for (const rules::Rule& rule : ruleset.rules) known.push_back(rule.id);
    const std::vector<std::string> nearest = text::nearest(word, known);
    Problem& problem = out.problems.emplace_back();
    problem.message = "'" + word + "' is no rule and no subject of rules" +
                      (nearest.empty() ? "" : "; perhaps " + text::listed(nearest));
  }
  if (out.problems.empty()) out.value = Dealer(rulesets, options).deal();
  return out;
}

}  // namespace sudsmark
