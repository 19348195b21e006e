// How a rule is told: `concerns: health`, `in short: goggles`, `known as: { name: scale, rank: 6
// }`.
#include <cmath>

#include "quantity/number.h"
#include "rules/builder.h"
#include "rules/messages.h"
#include "text/name.h"

namespace sudsmark::rules {

std::string_view concern_word(Concern concern) {
  switch (concern) {
    case Concern::law:
      return "law";
    case Concern::health:
      return "health";
    case Concern::craft:
      break;
  }
  return "craft";
}

Concern RulesetBuilder::read_concern(text::Fields& fields, Authority authority, Concern usual) {
  const std::string word = fields.text("concerns");
  if (word.empty()) return usual;
  // what the law asks stays the law's
  if (authority != Authority::law) {
    for (const Concern one : {Concern::health, Concern::craft}) {
      if (concern_word(one) == word) return one;
    }
  }
  diagnostics_.add(
      authority == Authority::law ? messages::concern_of_law : messages::unknown_concern,
      fields.find("concerns")->span, {word});
  return usual;
}

void RulesetBuilder::read_telling(text::Fields& fields, Rule& rule) {
  constexpr double most_rank = 99;
  const RuleFile& file = ruleset_.files[rule.file];
  rule.words->telling.concern = read_concern(fields, file.authority, file.concern);
  rule.words->telling.in_short = text::trimmed(fields.text("in short"));
  const text::Node* node = fields.find("known as");
  if (node == nullptr) return;
  text::Fields known(*node, diagnostics_);
  if (!known.valid()) return;
  rule.words->telling.known_as = text::trimmed(known.needed_text("name"));
  const text::Node* rank = known.needed("rank");
  known.refuse_others();
  if (rank == nullptr || rule.words->telling.known_as.empty()) return;
  const auto word = text::text_of(*rank, diagnostics_);
  if (!word) return;
  const auto number = quantity::read_number(*word);
  if (number && *number >= 1 && *number <= most_rank && *number == std::floor(*number)) {
    rule.words->telling.rank = static_cast<std::uint8_t>(*number);
  } else {
    diagnostics_.add(messages::bad_rank, rank->span, {most_rank});
  }
}

}  // namespace sudsmark::rules
