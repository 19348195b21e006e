#include "rules/verify.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "formula/assemble.h"
#include "rules/check.h"
#include "rules/messages.h"
#include "text/diagnostic.h"
#include "text/source.h"
#include "text/yaml_fields.h"

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
      if (!rule.decided_by.empty()) continue;  // what decides it is not there to be asked
      options_.chosen.assign(ruleset_.rules.size(), false);
      options_.chosen[rule_] = true;
      run_all(rule.passes, rule.pair_passes, true);
      run_all(rule.fails, rule.pair_fails, false);
    }
    return std::move(verified_);
  }

 private:
  void run_all(const std::vector<std::string>& examples, const std::vector<PairExample>& pairs,
               bool should_pass) {
    should_pass_ = should_pass;
    number_ = 0;
    if (examples.empty() && pairs.empty()) {
      note(sentence(messages::example_missing,
                    {id(), std::string(should_pass ? "passes" : "fails")}));
    }
    for (const std::string& example : examples) run_one(example);
    for (const PairExample& pair : pairs) run_one(pair);
  }

  void run_one(const std::string& example) {
    count();
    const auto blend = mixed(example, {}, messages::example_unreadable, 0);
    if (blend) judge(*blend, nullptr);
  }

  void run_one(const PairExample& pair) {
    count();
    const auto base = mixed(pair.base, {}, messages::base_unreadable, 0);
    if (!base) return;
    const bool whole = is_whole(pair.tweak);
    const std::string head = whole ? "" : "tweak \"example\" of \"base\"\n";
    const auto blend =
        mixed(head + pair.tweak, pair.base, messages::example_unreadable, whole ? 0U : 1U);
    if (blend) judge(*blend, &*base);
  }

  void count() {
    ++number_;
    ++verified_.ran;
  }

  void judge(const blend::Blend& blend, const blend::Blend* base) {
    blend::MissingTable missing;
    options_.base = base;
    judge(evaluate(ruleset_, blend, missing, options_));
  }

  /// Whether a pair's tweak is a formula in full, and not edits alone.
  static bool is_whole(std::string_view text) {
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      if (text::trimmed(text.substr(0, end)).starts_with("formula ")) return true;
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    return false;
  }

  /// A text as what it makes; a finding where it makes nothing. `above` lines of it are ours.
  std::optional<blend::Blend> mixed(const std::string& text, const std::string& base,
                                    const text::Message& unreadable, std::uint32_t above) {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const text::FileIndex file = sources.add("example", text);
    formula::AssembleOptions how;
    how.same_name = blend::same_name(catalogue_);
    how.read = [&](const std::string& path) {
      return path == "base" && !base.empty() ? std::optional(base) : std::nullopt;
    };
    std::optional<blend::Blend> blend;
    const auto sheet = formula::assemble(sources, file, how, diagnostics);
    if (sheet) blend = blend::mix(*sheet, catalogue_, diagnostics);
    if (blend && diagnostics.empty()) return blend;
    std::string what = "it holds no formula";
    if (!diagnostics.empty()) {
      const text::Diagnostic first = diagnostics.in_order().front();
      const text::Position at =
          sources.position(first.places.empty() ? text::Span{} : first.places.front());
      what = "line " + std::to_string(std::max(at.line, above + 1) - above) + ": " +
             text::sentence(first);
    }
    note(sentence(unreadable, {id(), which(), what}));
    return std::nullopt;
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
