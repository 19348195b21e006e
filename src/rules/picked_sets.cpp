#include "rules/picked_sets.h"

#include <algorithm>

#include "rules/picking.h"

namespace sudsmark::rules {
namespace {

constexpr std::size_t bits = 64;
constexpr std::uint32_t nowhere = 0xFFFFFFFF;

}  // namespace

bool Picked::empty() const {
  return std::all_of(words_, words_ + of_->size_, [](std::uint64_t word) { return word == 0; });
}

bool Picked::operator()(const measures::Candidate& candidate) const {
  const std::size_t number = of_->number(candidate);
  return number != nowhere && ((words_[number / bits] >> (number % bits)) & 1U) != 0;
}

PickedSets::PickedSets(const Pool& pool, const blend::Blend& blend)
    : pool_(pool),
      catalogue_(*blend.catalogue),
      numbers_(catalogue_.materials.size(), nowhere),
      substances_(catalogue_.substances.size()) {
  note(blend.whole.composition, blend);
  for (const blend::Part& part : blend.portions) note(part.composition, blend);
  for (const blend::Part& part : blend.premixes) note(part.composition, blend);
  for (const blend::Task& task : blend.tasks) note(task.handled.composition, blend);
  size_ = (candidates_.size() + bits - 1) / bits;
  kept_.resize(pool.selections.size() * size_);
  known_.resize(pool.selections.size());
}

void PickedSets::note(const blend::Composition& composition, const blend::Blend& blend) {
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    const blend::MaterialId id = ingredient.material;
    own_ = own_ || id >= catalogue_.materials.size();
    if (id >= numbers_.size()) numbers_.resize(id + 1, nowhere);
    if (numbers_[id] != nowhere) continue;
    numbers_[id] = static_cast<std::uint32_t>(candidates_.size());
    const catalogue::Material& material = blend.material(id);
    candidates_.push_back({id, &material, nullptr});
    roles_.push_back(material.roles);
    for (const blend::ContentView& content : blend.contents(id)) {
      candidates_.push_back({id, &material, &content});
      roles_.push_back(content.roles);
      note(content.substance_id);
    }
    for (const catalogue::Content& content : material.contents) note(content.substance);
  }
}

void PickedSets::note(std::uint32_t substance) {
  if (substance < substances_.size()) substances_[substance] = true;
}

std::size_t PickedSets::number(const measures::Candidate& candidate) const {
  const std::size_t whole =
      candidate.material_id < numbers_.size() ? numbers_[candidate.material_id] : nowhere;
  if (candidate.content == nullptr || whole == nowhere) return whole;
  return whole + 1 + static_cast<std::size_t>(candidate.content - candidates_[whole + 1].content);
}

Picked PickedSets::of(std::uint32_t selection, const Subject& subject) const {
  const Selection& of = pool_.selections[selection];
  if (of.subject) {
    join(of, subject);
    return {*this, stack_.data()};
  }
  std::uint64_t* const kept = kept_.data() + selection * size_;
  if (!known_[selection]) {
    join(of, subject);
    std::copy_n(stack_.begin(), size_, kept);
    known_[selection] = true;
  }
  return {*this, kept};
}

bool PickedSets::has_material(std::uint32_t selection) const {
  const Picked picked = of(selection, Subject{});
  return std::any_of(candidates_.begin(), candidates_.end(), [&](const auto& candidate) {
    return candidate.content == nullptr && picked(candidate);
  });
}

/// Runs the selection's program over sets; its set is what is left on the stack.
void PickedSets::join(const Selection& selection, const Subject& subject) const {
  stack_.clear();
  for (std::uint32_t at = selection.begin; at < selection.end; ++at) {
    const Pick& pick = pool_.picks[at];
    if (pick.code == PickCode::deny) {
      for (std::size_t word = stack_.size() - size_; word < stack_.size(); ++word) {
        stack_[word] = ~stack_[word];
      }
    } else if (pick.code == PickCode::both || pick.code == PickCode::either) {
      const std::size_t last = stack_.size() - size_;
      for (std::size_t word = last; word < stack_.size(); ++word) {
        std::uint64_t& other = stack_[word - size_];
        other = pick.code == PickCode::both ? other & stack_[word] : other | stack_[word];
      }
      stack_.resize(last);
    } else {
      push(pick, selection, subject);
    }
  }
  // what is denied has bits behind the last number too
  const std::size_t over = candidates_.size() % bits;
  if (over != 0) stack_[size_ - 1] &= (std::uint64_t{1} << over) - 1;
}

/// Pushes the answer to one question.
void PickedSets::push(const Pick& pick, const Selection& selection, const Subject& subject) const {
  const std::size_t begin = stack_.size();
  stack_.resize(begin + size_);
  const auto add_if = [&](const auto& picked) {
    for (std::size_t at = 0; at < candidates_.size(); ++at) {
      stack_[begin + at / bits] |= std::uint64_t{picked(at)} << (at % bits);
    }
  };
  if (pick.code == PickCode::role) {
    return add_if([&](std::size_t at) { return (roles_[at] & pick.bits) != 0; });
  }
  if (!may_be(pick, subject)) return;
  const Picking picking(pool_, catalogue_, selection, subject);
  // most candidates are contents, and of those a name asks nothing but which substance they are
  const bool by_substance =
      pick.code == PickCode::named && !pool_.named[pick.bits].substances.empty();
  add_if([&](std::size_t at) {
    const blend::ContentView* const content = candidates_[at].content;
    if (!by_substance || content == nullptr) return picking.picked(pick, candidates_[at]);
    const auto& substances = pool_.named[pick.bits].substances;
    return std::find(substances.begin(), substances.end(), content->substance_id) !=
           substances.end();
  });
}

/// False where nothing that is there can be what a question asks for.
bool PickedSets::may_be(const Pick& pick, const Subject& subject) const {
  switch (pick.code) {
    case PickCode::named: {
      // a material of the formula's own may be made like one of the catalogue
      const Named& named = pool_.named[pick.bits];
      return (own_ && !named.materials.empty()) || has_any(named.substances) ||
             std::any_of(named.materials.begin(), named.materials.end(),
                         [this](catalogue::MaterialIndex at) { return numbers_[at] != nowhere; });
    }
    case PickCode::subject:
      return subject.row == nullptr || subject.declared;
    case PickCode::beside:
      return subject.row != nullptr && has_any(subject.row->beside);
    default:
      return true;
  }
}

bool PickedSets::has_any(const std::vector<catalogue::SubstanceIndex>& substances) const {
  return std::any_of(substances.begin(), substances.end(),
                     [this](catalogue::SubstanceIndex at) { return substances_[at]; });
}

}  // namespace sudsmark::rules
