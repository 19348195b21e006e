#include "rules/presence.h"

#include <algorithm>
#include <optional>

#include "rules/open_truths.h"

namespace sudsmark::rules {

Presence::Presence(const blend::Blend& blend)
    : materials_(blend.catalogue->materials.size()),
      substances_(blend.catalogue->substances.size()) {
  note(blend.whole.composition, blend);
  for (const blend::Part& part : blend.portions) note(part.composition, blend);
  for (const blend::Part& part : blend.premixes) note(part.composition, blend);
  for (const blend::Task& task : blend.tasks) note(task.handled.composition, blend);
}

void Presence::note(const blend::Composition& composition, const blend::Blend& blend) {
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    const blend::MaterialId id = ingredient.material;
    if (id >= materials_.size()) {
      own_ = true;
    } else if (materials_[id]) {
      continue;
    } else {
      materials_[id] = true;
    }
    const catalogue::Material& material = blend.material(id);
    roles_ |= material.roles;
    forms_ |= std::uint64_t{1} << static_cast<unsigned>(material.form);
    for (const blend::ContentView& content : blend.contents(id)) {
      roles_ |= content.roles;
      if (content.substance_id < substances_.size()) substances_[content.substance_id] = true;
    }
    for (const catalogue::Content& content : material.contents) {
      if (content.substance < substances_.size()) substances_[content.substance] = true;
    }
  }
}

bool Presence::has_any(const std::vector<catalogue::SubstanceIndex>& substances) const {
  return std::any_of(substances.begin(), substances.end(),
                     [this](catalogue::SubstanceIndex at) { return substances_[at]; });
}

bool Presence::may_be(const Pick& pick, const Pool& pool, const Subject& subject) const {
  switch (pick.code) {
    case PickCode::role:
      return (roles_ & pick.bits) != 0;
    case PickCode::form:
      return (forms_ & pick.bits) != 0;
    case PickCode::named: {
      // a material of the formula's own may be made like one of the catalogue
      const Named& named = pool.named[pick.bits];
      return (own_ && !named.materials.empty()) || has_any(named.substances) ||
             std::any_of(named.materials.begin(), named.materials.end(),
                         [this](catalogue::MaterialIndex at) { return materials_[at]; });
    }
    case PickCode::subject:
      return subject.row == nullptr || subject.declared;
    case PickCode::beside:
      return subject.row != nullptr && has_any(subject.row->beside);
    case PickCode::deny:
    case PickCode::both:
    case PickCode::either:
      break;
  }
  return true;
}

bool Presence::may_pick(const Pool& pool, const Selection& selection,
                        const Subject& subject) const {
  // what may be picked may be left out as well
  OpenTruths truths;
  for (std::uint32_t at = selection.begin; at < selection.end; ++at) {
    const Pick& pick = pool.picks[at];
    switch (pick.code) {
      case PickCode::deny:
        truths.deny();
        break;
      case PickCode::both:
        truths.both();
        break;
      case PickCode::either:
        truths.either();
        break;
      default:
        if (truths.full()) return true;
        truths.push(may_be(pick, pool, subject) ? std::nullopt : std::optional(false));
    }
  }
  return !truths.is(false);
}

}  // namespace sudsmark::rules
