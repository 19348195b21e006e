// Questions that a formula or a subject answers with yes, no, or what would decide it.
#include <algorithm>
#include <string>

#include "rules/figures.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {

using catalogue::Material;

bool Figures::is_one_of(const std::vector<std::uint16_t>& kinds) const {
  const auto own = static_cast<std::uint16_t>(blend_.product - blend_.catalogue->products.data());
  return std::find(kinds.begin(), kinds.end(), own) != kinds.end();
}

bool Figures::has(Flag flag) const {
  switch (flag) {
    case Flag::looks_like_food:
      return blend_.looks_like_food.has_value();
    case Flag::has_label:
      break;
  }
  return blend_.label && blend_.label->ingredients;
}

Value Figures::holds(std::uint32_t index, const Subject& subject) {
  const Measured& count = sum(index, subject);
  Value value;
  value.truth = count.value.low >= 1    ? Certainty::yes
                : count.value.high <= 0 ? Certainty::no
                                        : Certainty::depends;
  if (value.truth == Certainty::depends) value.missing = count.missing;
  return value;
}

bool Figures::is_material(std::uint32_t index, const Subject& subject) const {
  return picked_.of(index, subject)({subject.ingredient->material, &material(subject), nullptr});
}

/// Of what a task or premix holds, by the mixture rules.
Value Figures::is_hazardous_mix(std::string_view code, const Subject& subject) {
  std::optional<measures::HandledHazards>& kept = hazards_[subject.part];
  if (!kept) {
    const measures::View part = view(subject);
    kept = measures::hazards_of(part, part.part->composition);
  }
  const measures::HandledHazards& hazards = *kept;
  Value value;
  value.truth = hazards.is(code);
  if (value.truth != Certainty::depends) return value;
  const measures::HandledStatement* open = hazards.find(code);
  value.missing = hazards.missing;
  if (open != nullptr) {
    value.missing |= lacks("whether " + std::string(code) + " holds for the mix " +
                               text::in_quotes(subject.name) + " (a data sheet of it)",
                           subject.place);
  }
  return value;
}

Value Figures::is_hazardous(std::string_view code, const Subject& subject) {
  if (subject.ingredient == nullptr) return is_hazardous_mix(code, subject);
  const Material& of = material(subject);
  Value value;
  const auto is = [&](const std::string& hazard) {
    // H360FD is an H360 in full
    return hazard == code || (hazard.size() > code.size() && hazard.starts_with(code));
  };
  if (std::any_of(of.hazards.begin(), of.hazards.end(), is)) {
    value.truth = Certainty::yes;
  } else if (!measures::hazards_stated(of)) {
    value.truth = Certainty::depends;
    value.missing = lacks("the safety data sheet of " + text::in_quotes(of.name), subject.place);
  }
  return value;
}

Value Figures::is_marked(Mark mark, const Subject& subject) {
  const Material& of = material(subject);
  Value value;
  const auto say = [&](bool is) { value.truth = is ? Certainty::yes : Certainty::no; };
  switch (mark) {
    case Mark::grade_unclear:
      say(of.grade_unclear);
      return value;
    case Mark::own:
      say(subject.ingredient->material >= blend_.catalogue->materials.size());
      return value;
    case Mark::limited:
      say(of.supplier_limit.has_value());
      return value;
    case Mark::combustible:
    case Mark::inert:
      break;
  }
  if (of.dust) {
    say(mark == Mark::combustible ? of.dust->combustible : of.dust->inert);
  } else {
    value.truth = Certainty::depends;
    value.missing = lacks_of(info(mark).missing, subject);
  }
  return value;
}

}  // namespace sudsmark::rules
