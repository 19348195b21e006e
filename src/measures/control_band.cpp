#include "measures/control_band.h"

#include <algorithm>
#include <string_view>

#include "measures/air_units.h"
#include "measures/handled_powder.h"
#include "measures/task_hazards.h"

namespace sudsmark::measures {
namespace {

using quantity::Certainty;
using science::DustinessWord;

/// Something that is banded: statements for certain, and with those that may come on top.
struct Banded {
  std::string name;
  std::vector<std::string_view> least;
  std::vector<std::string_view> most;
  Range mass;
  std::vector<DustinessWord> dustiness;
};

struct Outcome {
  Range approach = 1.0;
  science::GroupResult group;  ///< by all statements that may apply
  std::vector<science::Disagreement> disagreements;
};

void add_once(std::vector<science::Disagreement>& all,
              const std::vector<science::Disagreement>& more) {
  for (const science::Disagreement& one : more) {
    const bool known = std::any_of(all.begin(), all.end(),
                                   [&](const auto& other) { return other.about == one.about; });
    if (!known) all.push_back(one);
  }
}

Outcome band(const Banded& banded) {
  Outcome out;
  out.group = science::hazard_group(banded.most);
  out.disagreements = out.group.disagreements;
  const science::GroupResult certain = science::hazard_group(banded.least);
  bool first = true;
  for (const DustinessWord word : banded.dustiness) {
    const auto least = science::control_approach(
        certain.group, science::amount_band(banded.mass.low / kilogram), word);
    const auto most = science::control_approach(
        out.group.group, science::amount_band(banded.mass.high / kilogram), word);
    add_once(out.disagreements, most.disagreements);
    const Range range(least.approach, most.approach);
    out.approach = first ? range : quantity::hull(out.approach, range);
    first = false;
  }
  return out;
}

Banded of_powder(const HandledPowder& powder) {
  Banded out;
  out.name = powder.material->name;
  out.least.assign(powder.material->hazards.begin(), powder.material->hazards.end());
  out.most = out.least;
  out.mass = powder.mass;
  out.dustiness = dustiness_words(*powder.material);
  return out;
}

Banded of_mix(const HandledHazards& hazards, const std::vector<HandledPowder>& powders) {
  Banded out;
  out.name = "the mix";
  for (const HandledStatement& statement : hazards.statements) {
    out.most.emplace_back(statement.code);
    if (statement.applies == Certainty::yes) out.least.emplace_back(statement.code);
  }
  out.mass = powder_mass(powders);
  // as dusty as its dustiest powder, of which nobody may know how dusty it is
  DustinessWord least = DustinessWord::low;
  DustinessWord most = DustinessWord::low;
  for (const HandledPowder& powder : powders) {
    const auto words = dustiness_words(*powder.material);
    least = std::max(least, words.front());
    most = std::max(most, words.back());
  }
  out.dustiness = {least};
  if (most != least) out.dustiness.push_back(most);
  return out;
}

}  // namespace

Banding banding_of(const View& view, const blend::Task& task) {
  Banding out;
  out.missing = missing_amount(view, task);
  if (!out.missing.empty()) return out;
  const HandledHazards hazards = task_hazards(view, task);
  const std::vector<HandledPowder> powders = powders_of(view, task);
  out.approach = 1.0;
  if (powders.empty()) return out;
  std::vector<Banded> all;
  for (const HandledPowder& powder : powders) {
    all.push_back(of_powder(powder));
    if (!hazards_stated(*powder.material)) {
      out.missing |=
          view.missing->add("the safety data sheet of '" + powder.material->name + "'", task.place);
    }
    if (powder.material->dust &&
        powder.material->dust->dustiness != catalogue::Dustiness::unknown) {
      continue;
    }
    out.missing |= view.missing->add("how dusty '" + powder.material->name + "' is", task.place);
  }
  if (powders.size() > 1) all.push_back(of_mix(hazards, powders));
  for (const Banded& banded : all) {
    const Outcome outcome = band(banded);
    add_once(out.disagreements, outcome.disagreements);
    const bool more =
        out.decided_by.empty() || outcome.approach.high > out.approach.high ||
        (outcome.approach.high == out.approach.high && outcome.approach.low > out.approach.low);
    if (more) {
      out.decided_by = banded.name;
      out.group = science::group_letter(outcome.group.group);
      out.statements.assign(outcome.group.decided_by.begin(), outcome.group.decided_by.end());
    }
    out.approach = quantity::max(out.approach, outcome.approach);
  }
  // nobody knows what a powder without a data sheet asks for
  const bool sheet_missing = std::any_of(powders.begin(), powders.end(), [](const auto& powder) {
    return !hazards_stated(*powder.material);
  });
  if (sheet_missing) out.approach.high = 4.0;
  return out;
}

}  // namespace sudsmark::measures
