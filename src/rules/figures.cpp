#include "rules/figures.h"

#include <algorithm>

#include "measures/selection.h"

namespace sudsmark::rules {

using catalogue::Material;

namespace {

bool is_picked(const void* picked, const measures::Candidate& candidate) {
  return (*static_cast<const Picked*>(picked))(candidate);
}

/// What a selection picks, as sums call it. It must outlive the selector.
measures::Selector selector_of(const Picked& picked, const Selection& selection,
                               const Subject& subject) {
  const bool aroma = selection.aroma || (selection.subject && subject.aroma);
  return {&is_picked, &picked, aroma, picked.empty()};
}

}  // namespace

Figures::Figures(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
                 const std::vector<std::string>& markets, const Day& today)
    : ruleset_(ruleset),
      blend_(blend),
      missing_(missing),
      today_(today),
      picked_(ruleset.pool, blend),
      measure_count_(measures::all().size()),
      kept_(1 + blend.portions.size() + blend.premixes.size() + blend.tasks.size()),
      kept_of_subject_(ruleset.pool.sums.size()),
      hazards_(kept_.size()),
      words_{},
      traits_(ruleset.pool.traits.size()) {
  read_words(markets);
  for (std::size_t index = 0; index < traits_.size(); ++index) {
    const std::vector<std::string>& of_product = blend.product->traits;
    traits_[index] = std::find(of_product.begin(), of_product.end(), ruleset.pool.traits[index]) !=
                     of_product.end();
  }
}

std::size_t Figures::part_of_premix(std::size_t index) const {
  return part_of_portion(blend_.portions.size()) + index;
}
std::size_t Figures::part_of_task(std::size_t index) const {
  return part_of_premix(blend_.premixes.size()) + index;
}

measures::View Figures::view(const Subject& subject) {
  measures::View view;
  view.blend = &blend_;
  view.missing = &missing_;
  std::size_t at = subject.part;
  view.part = &blend_.whole;
  if (at == 0) return view;
  if (at -= 1; at < blend_.portions.size()) {
    view.part = &blend_.portions[at];
    return view;
  }
  if (at -= blend_.portions.size(); at < blend_.premixes.size()) {
    view.part = &blend_.premixes[at];
    return view;
  }
  at -= blend_.premixes.size();
  view.task = &blend_.tasks[at];
  view.part = &view.task->handled;
  return view;
}

Figures::Kept& Figures::kept(std::size_t part, std::size_t index) {
  std::vector<Kept>& all = kept_[part];
  if (all.empty()) {
    all.resize(measure_count_ + ruleset_.measures.size() + ruleset_.pool.sums.size());
  }
  return all[index];
}

const Measured& Figures::measure(std::uint32_t index, const Subject& subject) {
  Kept& one = kept(subject.part, index);
  if (!one) one = measures::computed(measures::all()[index], view(subject));
  return *one;
}

std::optional<Measured>& Figures::named(std::uint32_t index, const Subject& subject) {
  return kept(subject.part, measure_count_ + index);
}

/// Where a sum is kept: for all of a part, or for one subject.
Figures::Kept& Figures::kept_sum(std::uint32_t index, const Subject& subject) {
  const Sum& sum = ruleset_.pool.sums[index];
  const Selection& selection = ruleset_.pool.selections[sum.selection];
  if (!selection.subject) {
    return kept(subject.part, measure_count_ + ruleset_.measures.size() + index);
  }
  // all that nothing declares is the same: what the scents may hold undeclared
  const bool row_alone = subject.row != nullptr && selection.end - selection.begin == 1 &&
                         ruleset_.pool.picks[selection.begin].code == PickCode::subject;
  if (row_alone && !subject.declared && subject.aroma) {
    return kept_of_undeclared_[static_cast<std::size_t>(sum.kind)];
  }
  std::vector<Kept>& of_subjects = kept_of_subject_[index];
  if (of_subjects.size() <= subject.number) of_subjects.resize(subject.number + 1);
  return of_subjects[subject.number];
}

const Measured& Figures::sum(std::uint32_t index, const Subject& subject) {
  Kept& one = kept_sum(index, subject);
  if (!one) one = compute_sum(ruleset_.pool.sums[index], subject);
  return *one;
}

Measured Figures::compute_sum(const Sum& sum, const Subject& subject) {
  const Selection& selection = ruleset_.pool.selections[sum.selection];
  const Picked picked = picked_.of(sum.selection, subject);
  const measures::Selector selector = selector_of(picked, selection, subject);
  const measures::View part = view(subject);
  switch (sum.kind) {
    case SumKind::share:
      return measures::share(part, selector);
    case SumKind::supplied:
      return measures::supplied(part, selector);
    case SumKind::mass:
      return measures::mass(part, selector);
    case SumKind::dose:
      return measures::dose(part, selector);
    case SumKind::in_bath:
      return measures::in_bath(part, selector);
    case SumKind::count:
      break;
  }
  if (selection.subject && subject.ingredient != nullptr) {
    return count_in_material(sum.selection, subject);
  }
  return measures::count(part, selector);
}

/// Whether the subject's material holds what is selected: 1, 0, or 0 to 1.
Measured Figures::count_in_material(std::uint32_t selection, const Subject& subject) {
  const Picked picked = picked_.of(selection, subject);
  const blend::MaterialId id = subject.ingredient->material;
  const Material& of = material(subject);
  Range held = 0.0;
  if (picked({id, &of, nullptr})) return {1.0, {}};
  for (const blend::ContentView& content : blend_.contents(id)) {
    if (picked({id, &of, &content})) held += content.share;
  }
  if (held.low > 0) return {1.0, {}};
  const bool perhaps = ruleset_.pool.selections[selection].aroma && blend_.undeclared(id).high > 0;
  MissingSet missing;
  if (perhaps) missing = lacks(blend_.undeclared_words(id), subject.place);
  return {Range(0.0, held.high > 0 || perhaps ? 1.0 : 0.0), missing};
}

const Material& Figures::material(const Subject& subject) const {
  return blend_.material(subject.ingredient->material);
}

Span Figures::place(const Origin& origin, const Subject& subject) {
  switch (origin.kind) {
    case Origin::Kind::measure: {
      const measures::Measure& measure = measures::all()[origin.index];
      return measure.place == nullptr ? Span{} : measure.place(view(subject));
    }
    case Origin::Kind::sum: {
      const std::uint32_t selection = ruleset_.pool.sums[origin.index].selection;
      const Picked picked = picked_.of(selection, subject);
      return measures::place(view(subject),
                             selector_of(picked, ruleset_.pool.selections[selection], subject));
    }
    case Origin::Kind::words:
      return words(static_cast<StatedWords>(origin.index), subject).place;
    case Origin::Kind::product:
      return blend_.product_place;
    case Origin::Kind::flag:
      if (static_cast<Flag>(origin.index) == Flag::has_label) break;
      return blend_.looks_like_food.value_or(Span{});
  }
  return {};
}

}  // namespace sudsmark::rules
