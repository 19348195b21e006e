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
    const auto& substances = blend_.catalogue->substances;
    there.aroma =
        std::any_of(subject.row->substances.begin(), subject.row->substances.end(),
                    [&](std::uint32_t at) { return (substances[at].roles & scents) != 0; });
  }
  if (subject.ingredient == nullptr) return there;
  const auto own = [](const blend::Blend& blend, blend::MaterialId id) {
    return id >= blend.catalogue->materials.size();
  };
  const blend::MaterialId id = subject.ingredient->material;
  const bool known = !own(blend_, id);
  const std::string name = known ? std::string() : text::fold(blend_.material(id).name);
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
MissingSet Machine::carried(MissingSet of_base) {
  const std::vector<blend::Missing>& items = base_missing_.items();
  while (of_base_.size() < items.size()) {
    const blend::Missing& next = items[of_base_.size()];
    of_base_.push_back(missing_.add(next.what + ", in the base", next.place));
  }
  MissingSet out = 0;
  for (std::size_t at = 0; at < items.size(); ++at) {
    if (((of_base >> at) & 1U) != 0) out |= of_base_[at];
  }
  return out;
}

MissingSet Machine::without_doubles(MissingSet missing) const {
  const std::vector<blend::Missing>& mine = missing_.items();
  constexpr MissingSet shared = MissingSet{1} << 63U;  // stands for others too
  for (std::size_t at = 0; at < of_base_.size(); ++at) {
    if (of_base_[at] == shared) continue;
    const std::string& what = base_missing_.items()[at].what;
    for (std::size_t own = 0; own < mine.size() && own < 64; ++own) {
      const bool both = ((missing >> own) & 1U) != 0 && mine[own].what == what;
      if (both) missing &= ~of_base_[at];
    }
  }
  return missing;
}

Machine::Doubts Machine::doubts(MissingSet missing) const {
  Doubts out;
  const std::vector<blend::Missing>& mine = missing_.items();
  MissingSet carried_here = 0;
  for (std::size_t at = 0; at < of_base_.size(); ++at) {
    if ((missing & of_base_[at]) == 0) continue;
    out.of_base.insert(base_missing_.items()[at].what);
    carried_here |= of_base_[at];
  }
  for (std::size_t at = 0; at < mine.size(); ++at) {
    if ((((missing & ~carried_here) >> at) & 1U) != 0) out.own.insert(mine[at].what);
  }
  return out;
}

void Machine::ask_base(const Instruction& instruction, const Program& program,
                       const Subject& subject, std::vector<Tried>* tried) {
  Machine* there = base();
  if (there == nullptr) {
    Value value;
    value.range = Range::unknown();
    value.truth = Certainty::depends;
    value.known = false;
    value.missing = lacks("a base to hold it against");
    return push(value);
  }
  if (there->stack_.size() < there->size_ + most_stack + 1) {
    there->stack_.resize(there->size_ + most_stack + 1);
  }
  there->ask(instruction, program, in_base(subject), tried);
  Value value = there->pop();
  value.missing = carried(value.missing);
  push(value);
}

/// Whether both formulas state the same words, where both state any.
Value Machine::same_words(StatedWords which) {
  Value value;
  value.truth = Certainty::depends;
  Machine* there = base();
  const Words mine = words(which, Subject{});
  const Words theirs = there != nullptr ? there->words(which, Subject{}) : Words{};
  if (mine.stated && theirs.stated) {
    value.truth = mine.bits == theirs.bits ? Certainty::yes : Certainty::no;
    return value;
  }
  if (!mine.stated) value.missing |= lacks(info(which).missing, blend_.place);
  if (!theirs.stated) {
    const Span place = base_blend_ != nullptr ? base_blend_->place : Span{};
    value.missing |= carried(base_missing_.add(info(which).missing, place));
  }
  return value;
}

}  // namespace sudsmark::rules
