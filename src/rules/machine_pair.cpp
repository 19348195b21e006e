// The machine's other formula: what a rule over a tweak and its base asks of the base. It has a
// machine of its own, made when a rule first asks, so that a formula without a base pays nothing.
#include <algorithm>
#include <string>
#include <string_view>

#include "rules/machine.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {

Machine* Machine::base() {
  if (!base_ && base_blend_ != nullptr) {
    base_ = std::make_unique<Machine>(ruleset_, *base_blend_, base_missing_, base_markets_, today_);
  }
  return base_.get();
}

/// What a rule goes over, looked for in the base: the same row of the table, the same material. Of
/// a material that the base does not have it has nothing.
Subject Machine::in_base(const Subject& subject) const {
  Subject there = subject;
  there.part = 0;
  // what the tweak declares says nothing of the base: there each row is looked for, and a scent may
  // hold it undeclared
  there.declared = true;
  if (subject.row != nullptr) {
    constexpr catalogue::Roles scents = catalogue::bit(catalogue::Role::scent);
    const auto& substances = figures_.blend().catalogue->substances;
    there.aroma =
        std::any_of(subject.row->substances.begin(), subject.row->substances.end(),
                    [&](std::uint32_t at) { return (substances[at].roles & scents) != 0; });
  }
  if (subject.ingredient == nullptr) return there;
  const auto own = [](const blend::Blend& blend, blend::MaterialId id) {
    return id >= blend.catalogue->materials.size();
  };
  const blend::MaterialId id = subject.ingredient->material;
  const bool known = !own(figures_.blend(), id);
  const std::string name = known ? std::string() : text::fold(figures_.blend().material(id).name);
  const auto same = [&](const blend::Ingredient& ingredient) {
    if (known) return ingredient.material == id;
    return own(*base_blend_, ingredient.material) &&
           text::fold(base_blend_->material(ingredient.material).name) == name;
  };
  const std::vector<blend::Ingredient>& all = base_blend_->whole.composition.ingredients;
  const auto found = std::find_if(all.begin(), all.end(), same);
  there.ingredient = found == all.end() ? nullptr : &*found;
  return there;
}

/// Reasons of the base as reasons of this formula: "the certificate of fragrance 'Sea Fig', in the
/// base".
MissingSet Machine::carried(const MissingSet& of_base) {
  const std::vector<blend::Missing>& items = base_missing_.items();
  while (of_base_.size() < items.size()) {
    const blend::Missing& next = items[of_base_.size()];
    of_base_.push_back(missing_.add(next.what + ", in the base", next.place));
  }
  MissingSet out;
  of_base.each([&](std::size_t index) { out |= of_base_[index]; });
  return out;
}

MissingSet Machine::without_doubles(MissingSet missing) const {
  for (std::size_t index = 0; index < of_base_.size(); ++index) {
    if (!missing.shares(of_base_[index])) continue;
    const MissingSet own = missing_.find(base_missing_.items()[index].what);
    if (missing.shares(own)) missing -= of_base_[index];
  }
  return missing;
}

Machine::Doubts Machine::doubts(const MissingSet& missing) const {
  Doubts out;
  const std::vector<blend::Missing>& mine = missing_.items();
  MissingSet carried_here;
  for (std::size_t index = 0; index < of_base_.size(); ++index) {
    if (!missing.shares(of_base_[index])) continue;
    out.of_base.insert(base_missing_.items()[index].what);
    carried_here |= of_base_[index];
  }
  (missing - carried_here).each([&](std::size_t index) { out.own.insert(mine[index].what); });
  return out;
}

void Machine::ask_base(const Instruction& instruction, const Run& run) {
  Machine* there = base();
  if (there == nullptr) return push(unknown_value(figures_.lacks("a base to hold it against")));
  there->make_room();
  there->step(instruction, {run.program, in_base(run.subject), run.tried});
  Value value = there->pop();
  value.missing = carried(value.missing);
  push(std::move(value));
}

/// Whether both formulas state the same words, where both state any.
Value Machine::same_words(StatedWords which) {
  Machine* there = base();
  const Words mine = figures_.words(which, Subject{});
  const Words theirs = there != nullptr ? there->figures_.words(which, Subject{}) : Words{};
  if (mine.stated && theirs.stated) return truth(mine.bits == theirs.bits);
  MissingSet missing;
  if (!mine.stated) missing |= figures_.lacks(info(which).missing, figures_.blend().place);
  if (!theirs.stated) {
    const Span place = base_blend_ != nullptr ? base_blend_->place : Span{};
    missing |= carried(base_missing_.add(info(which).missing, place));
  }
  return truth(Certainty::depends, missing);
}

}  // namespace sudsmark::rules
