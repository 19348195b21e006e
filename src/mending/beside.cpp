#include "mending/beside.h"

#include <filesystem>
#include <utility>

#include "formula/tree.h"
#include "mending/edits.h"

namespace sudsmark::mending {

Beside::Beside(const FormulaText& formula, const CheckOptions& options)
    : formula_(formula), options_(options) {
  const std::filesystem::path path(formula.path);
  name_ = path.filename().generic_string();
  tweak_ = (path.parent_path() / "suggested.formula").generic_string();
  options_.read = [this, read = options.read](const std::string& wanted) {
    if (wanted == formula::path_beside(tweak_, name_)) return std::optional(formula_.text);
    return read ? read(wanted) : std::nullopt;
  };
}

std::optional<formula::Card> Beside::card(const std::vector<std::string>& edits,
                                          const formula::SameName& same_name) const {
  text::Sources sources;
  text::Diagnostics diagnostics;
  formula::AssembleOptions assemble;
  assemble.read = options_.read;
  assemble.allow_outside = options_.allow_outside;
  assemble.same_name = same_name;
  const std::string text = tweak_of("tried", name_, options_.batch, edits);
  auto card = formula::assemble(sources, sources.add(tweak_, text), assemble, diagnostics);
  if (!diagnostics.empty()) return std::nullopt;
  return card;
}

std::optional<FormulaResult> Beside::check(const std::string& name,
                                           const std::vector<std::string>& edits,
                                           const Rulesets& rulesets) const {
  const std::string text = tweak_of(name, name_, options_.batch, edits);
  RunResult run = sudsmark::check({tweak_, text, false}, rulesets, options_);
  if (run.formulas.size() != 1 || !run.problems.empty()) return std::nullopt;
  return std::move(run.formulas.front());
}

}  // namespace sudsmark::mending
