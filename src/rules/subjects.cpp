#include "rules/subjects.h"

#include <algorithm>

#include "measures/selection.h"
#include "rules/bringers.h"

namespace sudsmark::rules {
namespace {

constexpr std::size_t each_count = catalogue::enum_size<Each>;

bool is_in_row(const void* context, const measures::Candidate& candidate) {
  return in_row(*static_cast<const catalogue::Row*>(context), candidate);
}

}  // namespace

Subjects::Subjects(const Figures& figures)
    : figures_(figures), gathered_(each_count + figures.blend().catalogue->tables.size()) {}

const std::vector<Subject>& Subjects::of(const Rule& rule) {
  const bool rows = rule.each == Each::row;
  auto& gathered = gathered_[rows ? each_count + rule.table : static_cast<std::size_t>(rule.each)];
  if (!gathered) gathered = gather(rule.each, rule.table);
  return *gathered;
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
  declared_.assign(blend.catalogue->substances.size(), 0);
  double most = 0;
  for (const blend::Ingredient& ingredient : blend.whole.composition.ingredients) {
    if (!(ingredient.mass.high > 0)) continue;
    const std::string& id = blend.material(ingredient.material).id;
    if (!id.empty()) whole_.push_back(id);
    for (const blend::ContentView& content : blend.contents(ingredient.material)) {
      if (content.substance_id < declared_.size() && content.share.high > 0) {
        declared_[content.substance_id] = 1;
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
  return std::any_of(row.materials.begin(), row.materials.end(), [this](const std::string& id) {
    return std::find(whole_.begin(), whole_.end(), id) != whole_.end();
  });
}

void Subjects::gather_rows(std::uint16_t index, std::vector<Subject>& subjects) {
  note_substances();
  const catalogue::Table& table = figures_.blend().catalogue->tables[index];
  // an oil or an extract may be in what a scent does not declare just as an aroma chemical
  constexpr unsigned declares = 1;
  constexpr unsigned hides = 2;
  std::vector<std::uint8_t> states(table.rows.size());
  std::size_t count = 0;
  for (const catalogue::RowOf& one : table.of_substances) {
    const unsigned state =
        (declared_[one.substance] != 0 ? declares : 0U) | (undeclared_ && one.scent ? hides : 0U);
    states[one.row] = static_cast<std::uint8_t>(states[one.row] | state);
  }
  for (const std::uint32_t at : table.of_others) {
    const catalogue::Row& row = table.rows[at];
    const bool of_all = row.substances.empty() && row.materials.empty();
    if (of_all || is_there_whole(row)) {
      states[at] = static_cast<std::uint8_t>(states[at] | declares);
    }
  }
  for (const std::uint8_t state : states) count += state != 0 ? 1 : 0;
  subjects.reserve(count);
  for (std::size_t at = 0; at < states.size(); ++at) {
    if (states[at] == 0) continue;
    const catalogue::Row& row = table.rows[at];
    if (!figures_.in_force(row)) continue;
    Subject& subject = subjects.emplace_back();
    subject.each = Each::row;
    subject.number = ++count_;
    subject.name = row.name;
    subject.row = &row;
    subject.table = &table;
    subject.declared = (states[at] & declares) != 0;
    subject.aroma = (states[at] & hides) != 0;
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
