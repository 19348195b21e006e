// Figures of the subject of an `each`: of a material, a portion, a task, or a cell of a row.
#include <algorithm>
#include <string>
#include <variant>

#include "measures/weighing_measures.h"
#include "rules/figures.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

using catalogue::Material;
using catalogue::Sourced;

/// Sum of the contents of a material that pass a test; the rest bounds it from above.
template <typename Test>
Range content_share(const std::vector<blend::ContentView>& contents, const Test& test) {
  Range sum = 0.0;
  for (const blend::ContentView& content : contents) {
    if (test(content)) sum += content.share;
  }
  return quantity::clamp(sum, 0.0, 1.0);
}

}  // namespace

MissingSet Figures::lacks_of(std::string_view what, const Subject& subject) {
  const std::string_view of = subject.task != nullptr ? " of the task " : " of ";
  return lacks(std::string(what) + std::string(of) + text::in_quotes(subject.name), subject.place);
}

Measured Figures::field(Field field, const Subject& subject) {
  const auto known_or_missing = [&](const std::optional<Range>& value) -> Measured {
    if (value) return {*value, {}};
    return {Range::unknown(), lacks_of(info(field).missing, subject)};
  };
  const auto sourced = [&](const std::optional<Sourced>& figure) {
    return known_or_missing(figure ? std::optional<Range>(figure->value) : std::nullopt);
  };
  const auto end = [&](const std::optional<Sourced>& figure, bool high) {
    std::optional<Range> value;
    if (figure) value = Range(high ? figure->value.high : figure->value.low);
    return known_or_missing(value);
  };
  switch (field) {
    case Field::portion_share:
      return {blend_.portions[subject.part - part_of_portion(0)].share, {}};
    case Field::portion_sold_apart:
      return {blend_.portions[subject.part - part_of_portion(0)].sold_apart ? 1.0 : 0.0, {}};
    case Field::premix_mass:
      return {blend_.premixes[subject.part - part_of_premix(0)].composition.total(), {}};
    case Field::task_takes:
      return known_or_missing(subject.task->takes);
    case Field::task_times: {
      constexpr double hours_a_day = 24;  // a rate's base unit is per hour
      std::optional<Range> times = subject.task->times;
      if (times) times = *times / hours_a_day;
      return known_or_missing(times);
    }
    case Field::task_volume:
      return known_or_missing(subject.task->in);
    case Field::task_raises:
      return known_or_missing(subject.task->raises);
    case Field::task_mass:
      if (!subject.task->mass_known) {
        return {Range::unknown(), lacks("the size of the batch (`batch`)", blend_.place)};
      }
      return {subject.task->handled.composition.total(), {}};
    default:
      break;
  }
  const Material& of = material(subject);
  const blend::MaterialId id = subject.ingredient->material;
  const std::vector<blend::ContentView>& contents = blend_.contents(id);
  const auto water = [&](catalogue::WaterClass wanted) {
    return content_share(contents, [&](const blend::ContentView& content) {
      const bool is_water = (content.roles & catalogue::bit(catalogue::Role::water)) != 0;
      const bool plain = content.water == catalogue::WaterClass::none && is_water;
      return content.water == wanted || (wanted == catalogue::WaterClass::free && plain);
    });
  };
  const blend::Scent* scent = blend_.scent(id);
  switch (field) {
    case Field::material_active: {
      const bool stated = std::any_of(contents.begin(), contents.end(),
                                      [](const blend::ContentView& c) { return c.active; });
      // what is all one substance is all active
      if (!stated && of.contents.empty() &&
          (of.roles & catalogue::bit(catalogue::Role::fragrance)) == 0)
        return {1.0, {}};
      if (!stated) return known_or_missing(std::nullopt);
      return {content_share(contents, [](const blend::ContentView& c) { return c.active; }), {}};
    }
    case Field::material_water:
      return {water(catalogue::WaterClass::free), {}};
    case Field::material_bound_water:
      return {water(catalogue::WaterClass::bound), {}};
    case Field::material_crystal_water:
      return {water(catalogue::WaterClass::crystal), {}};
    case Field::material_melting:
      return sourced(of.melting);
    case Field::material_hlb:
      return sourced(of.hlb);
    case Field::material_required_hlb:
      return sourced(of.required_hlb);
    case Field::material_density:
      return sourced(of.density);
    case Field::material_deliquescence:
      return sourced(of.deliquescence);
    case Field::material_usual_least:
      return end(of.usual, false);
    case Field::material_usual_most:
      return end(of.usual, true);
    case Field::material_supplier_limit:
      return sourced(of.supplier_limit);
    case Field::material_pure_colour:
      return sourced(of.pure_colour);
    case Field::material_stable_ph_least:
      return end(of.stable_ph, false);
    case Field::material_stable_ph_most:
      return end(of.stable_ph, true);
    case Field::material_certificate:
      if (scent != nullptr && scent->limit) return {*scent->limit, {}};
      return {Range::unknown(), lacks("the certificate of fragrance " + text::in_quotes(of.name),
                                      scent != nullptr ? scent->place : subject.place)};
    case Field::material_nameless:
      return {blend_.nameless(id), {}};
    case Field::material_weighing_error:
      return measures::weighing_error_of(view(subject), id);
    case Field::material_flash_point:
      return known_or_missing(scent != nullptr ? scent->flash_point : std::nullopt);
    case Field::material_lowest_explosible:
      return known_or_missing(of.dust ? of.dust->lowest_explosible : std::nullopt);
    default:
      return {};
  }
}

MissingSet Figures::lacks_cell(std::uint32_t column, const Subject& subject) {
  return lacks("the " + subject.table->columns[column].name + " of " +
               text::in_quotes(subject.name) + " in the table '" + subject.table->title + "'");
}

Value Figures::cell(std::uint32_t column, const Subject& subject) {
  if (const Range* given = std::get_if<Range>(&subject.row->cells[column])) {
    Value value;
    value.range = *given;
    return value;
  }
  Value value;
  value.range = Range::unknown();
  value.missing = lacks_cell(column, subject);
  return value;
}

}  // namespace sudsmark::rules
