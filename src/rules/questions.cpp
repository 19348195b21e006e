#include "rules/questions.h"

#include <string>

namespace sudsmark::rules {
namespace {

std::size_t questions(const Ruleset& ruleset, const blend::Blend& blend,
                      const std::vector<bool>& chosen) {
  std::size_t sum = 0;
  for (std::size_t at = 0; at < ruleset.rules.size(); ++at) {
    if (!chosen.empty() && !chosen[at]) continue;
    switch (ruleset.rules[at].each) {
      case Each::portion:
        sum += blend.portions.size();
        break;
      case Each::material:
        sum += blend.whole.composition.ingredients.size();
        break;
      case Each::premix:
        sum += blend.premixes.size();
        break;
      case Each::task:
        sum += blend.tasks.size();
        break;
      case Each::product:
      case Each::row:
        ++sum;
    }
  }
  return sum;
}

}  // namespace

void check_questions(const Ruleset& ruleset, const blend::Blend& blend,
                     const std::vector<bool>& chosen, text::Diagnostics& diagnostics) {
  const std::size_t many = questions(ruleset, blend, chosen);
  if (many <= most_questions) return;
  diagnostics.add(messages::too_many_questions, blend.place,
                  {std::to_string(many), std::to_string(most_questions)});
}

void check_search(const Ruleset& ruleset, const blend::Blend& blend,
                  text::Diagnostics& diagnostics) {
  const std::size_t lines = blend.whole.composition.ingredients.size();
  const std::size_t many = lines * questions(ruleset, blend, {});
  if (many <= most_searched) return;
  diagnostics.add(messages::too_long_a_search, blend.place,
                  {std::to_string(lines), std::to_string(many), std::to_string(most_searched)});
}

}  // namespace sudsmark::rules
