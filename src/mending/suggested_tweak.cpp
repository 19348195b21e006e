// An answer as a tweak file that says why.
#include <algorithm>

#include <sudsmark/suggest.h>

#include "mending/edits.h"
#include "quantity/number.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

std::string comment(const std::string& words) {
  return "# " + wording::harmless(words) + "\n";
}

}  // namespace

std::string suggested_tweak(const Suggestion& suggestion, std::size_t answer,
                            const std::string& base_path, std::optional<double> batch) {
  const SuggestedChange& change = suggestion.answers[answer];
  std::string out = comment("What a suggestion changes, and why. " + std::string(reminder));
  for (const VerdictChange& one : change.comparison.verdicts) {
    if (one.direction != Direction::better || !one.before) continue;
    if (one.before->level < suggestion.threshold) continue;
    const std::string subject = one.subject.empty() || one.subject_kind == "row"
                                    ? std::string()
                                    : " (" + one.subject_kind + " '" + one.subject + "')";
    out += comment("mends " + one.rule + subject + ": " + one.before->message);
  }
  for (const SuggestedAmount& one : change.amounts) {
    const std::string where = one.container.empty() ? "" : " in " + one.container;
    const std::string is = one.removed ? "none" : wording::printed(one.is);
    out += comment(one.name + where + ": " + wording::printed(one.was) + " -> " + is +
                   (!one.out_of.empty() ? ", in place of " + one.out_of : std::string()) +
                   (one.leads   ? ""
                    : one.fills ? ", takes up the rest"
                                : ", to make room or to keep what else is asked"));
  }
  for (const Finding& finding : change.left) {
    out += comment("not mended: " + finding.rule + ": " + finding.message);
  }
  return out +
         mending::tweak_of(suggestion.before.name + ", mended", base_path, batch, change.edits);
}

}  // namespace sudsmark
