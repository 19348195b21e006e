#include "rules/subjects.h"

#include <algorithm>

#include "measures/selection.h"
#include "rules/bringers.h"

namespace sudsmark::rules {
namespace {

bool is_in_row(const void* context, const measures::Candidate& candidate) {
  return in_row(*static_cast<const catalogue::Row*>(context), candidate);
}

}  // namespace

const std::vector<Subject>& Subjects::of(const Rule& rule) {
  const std::pair key{rule.each, rule.table};
  const auto found = gathered_.find(key);
  if (found != gathered_.end()) return found->second;
  return gathered_.emplace(key, gather(rule.each, rule.table)).first->second;
}

std::vector<Subject> Subjects::gather(Each each, std::uint16_t table) {
  const blend::Blend& blend = figures_.blend();
  std::vector<Subject> subjects;
  const auto add = [&](std::size_t part, const blend::Part& of) -> Subject& {
    Subject subject;
    subject.each = each;
    subject.part = part;
    subject.number = ++count_;
    subject.name = of.name;
    subject.place = of.place;
    return subjects.emplace_back(subject);
  };
  switch (each) {
    case Each::product:
      subjects.emplace_back();
      break;
    case Each::row:
      gather_rows(table, subjects);
      break;
    case Each::material:
      gather_materials(subjects);
      break;
    case Each::portion:
      for (std::size_t at = 0; at < blend.portions.size(); ++at) {
        add(figures_.part_of_portion(at), blend.portions[at]);
      }
      break;
    case Each::premix:
      for (std::size_t at = 0; at < blend.premixes.size(); ++at) {
        add(figures_.part_of_premix(at), blend.premixes[at]);
      }
      break;
    case Each::task:
      for (std::size_t at = 0; at < blend.tasks.size(); ++at) {
        add(figures_.part_of_task(at), blend.tasks[at].handled).task = &blend.tasks[at];
        subjects.back().place = blend.tasks[at].place;
      }
      break;
  }
  return subjects;
}

void Subjects::gather_materials(std::vector<Subject>& subjects) {
  const blend::Blend& blend = figures_.blend();
  for (const blend::Ingredient& ingredient : blend.whole.composition.ingredients) {
    const bool there = std::any_of(subjects.begin(), subjects.end(), [&](const Subject& subject) {
      return subject.ingredient->material == ingredient.material;
    });
    if (there || !(ingredient.mass.high > 0)) continue;
    Subject subject;
    subject.each = Each::material;
    subject.number = ++count_;
    subject.name = blend.material(ingredient.material).name;
    subject.ingredient = &ingredient;
    if (!ingredient.places.empty()) subject.place = ingredient.places.front();
    subjects.push_back(subject);
  }
}

void Subjects::note_substances() {
  if (noted_) return;
  noted_ = true;
  const blend::Blend& blend = figures_.blend();
  declared_.assign(blend.catalogue->substances.size(), false);
  double most = 0;
  for (const blend::Ingredient& ingredient : blend.whole.composition.ingredients) {
    if (!(ingredient.mass.high > 0)) continue;
    for (const blend::ContentView& content : blend.contents(ingredient.material)) {
      if (content.substance_id < declared_.size() && content.share.high > 0) {
        declared_[content.substance_id] = true;
      }
    }
    const double hidden = blend.undeclared(ingredient.material).high * ingredient.mass.high;
    if (hidden > most) {
      most = hidden;
      undeclared_ = true;
      if (!ingredient.places.empty()) undeclared_place_ = ingredient.places.front();
    }
  }
}

/// Whether the formula has one of the materials that a row counts as a whole.
bool Subjects::is_there_whole(const catalogue::Row& row) const {
  if (row.materials.empty()) return false;
  const blend::Blend& blend = figures_.blend();
  const std::vector<blend::Ingredient>& ingredients = blend.whole.composition.ingredients;
  return std::any_of(ingredients.begin(), ingredients.end(), [&](const auto& ingredient) {
    return ingredient.mass.high > 0 && holds_whole(row, blend.material(ingredient.material));
  });
}

void Subjects::gather_rows(std::uint16_t index, std::vector<Subject>& subjects) {
  note_substances();
  const catalogue::Table& table = figures_.blend().catalogue->tables[index];
  std::vector<bool> declares(table.rows.size());
  // an oil or an extract may be in what a scent does not declare just as an aroma chemical
  std::vector<bool> hides(table.rows.size());
  for (const catalogue::RowOf& one : table.of_substances) {
    if (declared_[one.substance]) declares[one.row] = true;
    if (undeclared_ && one.scent) hides[one.row] = true;
  }
  for (const std::uint32_t at : table.of_others) {
    const catalogue::Row& row = table.rows[at];
    const bool of_all = row.substances.empty() && row.materials.empty();
    if (of_all || is_there_whole(row)) declares[at] = true;
  }
  for (std::size_t at = 0; at < table.rows.size(); ++at) {
    const bool declared = declares[at];
    const bool aroma = hides[at];
    if (!declared && !aroma) continue;
    const catalogue::Row& row = table.rows[at];
    if (!figures_.in_force(row)) continue;
    Subject subject;
    subject.each = Each::row;
    subject.number = ++count_;
    subject.name = row.name;
    subject.row = &row;
    subject.table = &table;
    subject.declared = declared;
    subject.aroma = aroma;
    subjects.push_back(subject);
  }
}

Span Subjects::place(const Subject& subject) const {
  if (subject.row == nullptr) return subject.place;
  if (!subject.declared) return undeclared_place_;
  const blend::Blend& blend = figures_.blend();
  measures::View whole;
  whole.blend = &blend;
  whole.part = &blend.whole;
  return measures::place(whole, {&is_in_row, subject.row, false});
}

}  // namespace sudsmark::rules
