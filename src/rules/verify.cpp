#include "rules/verify.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "rules/check.h"
#include "rules/messages.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::rules {
namespace {

std::string sentence(const text::Message& message, std::vector<text::Argument> arguments) {
  return text::sentence({&message, std::move(arguments), {}});
}

class Verification {
 public:
  Verification(const Ruleset& ruleset, const catalogue::Catalogue& catalogue, const Day& on)
      : ruleset_(ruleset), catalogue_(catalogue) {
    options_.on = on;
  }

  Verified run() {
    for (rule_ = 0; rule_ < ruleset_.rules.size(); ++rule_) {
      const Rule& rule = ruleset_.rules[rule_];
      options_.chosen.assign(ruleset_.rules.size(), false);
      options_.chosen[rule_] = true;
      run_all(rule.passes, true);
      run_all(rule.fails, false);
    }
    return std::move(verified_);
  }

 private:
  void run_all(const std::vector<std::string>& examples, bool should_pass) {
    should_pass_ = should_pass;
    number_ = 0;
    if (examples.empty()) {
      note(sentence(messages::example_missing,
                    {id(), std::string(should_pass ? "passes" : "fails")}));
    }
    for (const std::string& example : examples) {
      ++number_;
      ++verified_.ran;
      run_one(example);
    }
  }

  void run_one(const std::string& example) {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const text::FileIndex file = sources.add("example", example);
    std::optional<blend::Blend> blend;
    const auto sheet = formula::assemble(sources, file, {}, diagnostics);
    if (sheet) blend = blend::mix(*sheet, catalogue_, diagnostics);
    if (!blend || !diagnostics.empty()) {
      std::string what = "it holds no formula";
      if (!diagnostics.empty()) {
        const text::Diagnostic first = diagnostics.in_order().front();
        const text::Position at =
            sources.position(first.places.empty() ? text::Span{} : first.places.front());
        what = "line " + std::to_string(at.line) + ": " + text::sentence(first);
      }
      note(sentence(messages::example_unreadable, {id(), which(), what}));
      return;
    }
    blend::MissingTable missing;
    judge(evaluate(ruleset_, *blend, missing, options_));
  }

  void judge(const std::vector<Verdict>& verdicts) {
    const auto passes = [](const Verdict& verdict) {
      return verdict.kind == Kind::pass || verdict.met_from_memory;
    };
    const auto speaks = [&](const Verdict& verdict) {
      return !passes(verdict) && verdict.kind != Kind::not_applicable;
    };
    const auto fails = [](const Verdict& verdict) {
      return verdict.kind == Kind::fail || verdict.paper;
    };
    const auto other = std::find_if(verdicts.begin(), verdicts.end(), speaks);
    const bool passed = std::any_of(verdicts.begin(), verdicts.end(), passes);
    const bool as_it_should = should_pass_ ? passed && other == verdicts.end()
                                           : std::any_of(verdicts.begin(), verdicts.end(), fails);
    if (as_it_should) return;
    std::string gives(kind_word(passed ? Kind::pass : Kind::not_applicable));
    std::string message;
    if (other != verdicts.end()) {
      gives = kind_word(other->kind);
      message = " (" + other->message + ")";
    }
    note(sentence(messages::example_wrong, {id(), which(), gives, message}));
  }

  void note(std::string message) {
    verified_.findings.push_back({rule_, should_pass_, number_, std::move(message)});
  }

  [[nodiscard]] std::string id() const { return ruleset_.rules[rule_].id; }
  /// "example 2 that should fail"
  [[nodiscard]] std::string which() const {
    return "example " + std::to_string(number_) + " that should " +
           (should_pass_ ? "pass" : "fail");
  }

  const Ruleset& ruleset_;
  const catalogue::Catalogue& catalogue_;
  EvaluateOptions options_;
  Verified verified_;
  std::uint32_t rule_ = 0;
  bool should_pass_ = true;
  std::size_t number_ = 0;
};

}  // namespace

Verified verify(const Ruleset& ruleset, const catalogue::Catalogue& catalogue, const Day& on) {
  return Verification(ruleset, catalogue, on).run();
}

}  // namespace sudsmark::rules
