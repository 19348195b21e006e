// Answers as changes of the formula's own lines.
#include <sudsmark/fixes.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include <sudsmark/suggest.h>

#include "blend/same_name.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "mending/answers.h"
#include "mending/beside.h"
#include "mending/own_lines.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

class Fixing {
 public:
  Fixing(const Suggestion& suggestion, const Rulesets& rulesets, const CheckOptions& options)
      : suggestion_(suggestion), rulesets_(rulesets), options_(options) {}

  std::vector<Fix> run() const {
    const formula::SameName same_name = blend::same_name(front::parts(rulesets_).catalogue);
    text::Sources sources;
    text::Diagnostics none;  // it was checked a moment ago
    formula::AssembleOptions how;
    how.read = options_.read;
    how.allow_outside = options_.allow_outside;
    how.same_name = same_name;
    const FormulaText& formula = suggestion_.formula;
    const auto card =
        formula::assemble(sources, sources.add(formula.path, formula.text), how, none);
    // a tweak's lines stand in another file; and beside another batch a card is not what is weighed
    if (!card || card->tweaked || options_.batch) return {};
    const mending::Beside beside(formula, options_);
    std::vector<Fix> out;
    for (const SuggestedChange& answer : suggestion_.answers) {
      if (answer.outside || answer.rounding_breaks) continue;
      const auto wanted = beside.card(answer.edits, same_name);
      auto lines = wanted
                       ? mending::own_lines(sources[card->file], *card, *wanted, answer.statements)
                       : std::nullopt;
      if (!lines || !leaves_no_more(lines->text, answer)) continue;
      out.push_back({wording::joined(answer.edits), std::move(lines->edits), mended(answer)});
    }
    return out;
  }

 private:
  static bool among(const std::vector<Finding>& findings, const Finding& one) {
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& other) {
      return other.rule == one.rule && other.subject == one.subject;
    });
  }

  [[nodiscard]] bool leaves_no_more(const std::string& text, const SuggestedChange& answer) const {
    const RunResult run = check({suggestion_.formula.path, text, false}, rulesets_, options_);
    if (run.formulas.size() != 1 || !run.problems.empty()) return false;
    const std::vector<Finding>& found = run.formulas.front().findings;
    return std::all_of(found.begin(), found.end(), [&](const Finding& one) {
      return !mending::weighs(one, suggestion_.threshold) || among(answer.left, one);
    });
  }

  [[nodiscard]] std::vector<Finding> mended(const SuggestedChange& answer) const {
    std::vector<Finding> out;
    std::copy_if(suggestion_.broken.begin(), suggestion_.broken.end(), std::back_inserter(out),
                 [&](const Finding& one) { return !among(answer.left, one); });
    return out;
  }

  const Suggestion& suggestion_;
  const Rulesets& rulesets_;
  const CheckOptions& options_;
};

}  // namespace

Result<std::vector<Fix>> fixes_of(const FormulaText& formula, const Rulesets& rulesets,
                                  const CheckOptions& options, Level threshold) {
  SuggestOptions how;
  how.threshold = threshold;
  const Result<Suggestion> made = suggest(formula, rulesets, options, how);
  if (!made) return {{}, made.problems};
  return {Fixing(*made, rulesets, options).run(), {}};
}

}  // namespace sudsmark
