#include "measures/humidity_measures.h"

#include <array>
#include <optional>

#include "measures/sums.h"
#include "quantity/number.h"

namespace sudsmark::measures {
namespace {

using catalogue::Form;
using catalogue::Material;

bool dry_and_damp_prone(const Material& m) {
  const bool dry = m.form == Form::fine_powder || m.form == Form::granules || m.form == Form::solid;
  return dry && m.deliquescence;
}

/// The dry material that goes damp first; null if none is known to.
const blend::Ingredient* dampest(const View& view, std::optional<Range>& lowest) {
  const blend::Ingredient* first = nullptr;
  for (const blend::Ingredient& ingredient : view.part->composition.ingredients) {
    const Material& material = view.blend->material(ingredient.material);
    if (!(ingredient.mass.high > 0) || !dry_and_damp_prone(material)) continue;
    const Range& value = material.deliquescence->value;
    if (!lowest || value.low < lowest->low) first = &ingredient;
    lowest = lowest ? quantity::min(*lowest, value) : value;
  }
  return first;
}

Measured margin(const View& view) {
  std::optional<Range> lowest;
  const blend::Ingredient* first = dampest(view, lowest);
  if (first == nullptr) {
    return {Range::unknown(),
            view.missing->add("a dry material that is known to draw water", view.blend->place)};
  }
  const std::optional<blend::Stated> humidity =
      view.blend->workshop ? view.blend->workshop->humidity : std::nullopt;
  const Measured room = stated(view, humidity, "the humidity of the room (`workshop`)");
  if (!room.missing.empty()) return room;
  trace(view, view.blend->material(first->material).name + " draws water from " +
                  quantity::printed(*lowest, "%") +
                  "; a blend goes damp earlier than any of its parts");
  return {*lowest - Range(room.value.high), {}};
}

Span dampest_place(const View& view) {
  std::optional<Range> lowest;
  const blend::Ingredient* first = dampest(view, lowest);
  return first == nullptr || first->places.empty() ? Span{} : first->places.front();
}

constexpr std::array humidity_table{
    Measure{"humidity.margin", "%",
            "lowest humidity at which a dry material draws water, less the room's highest",
            "deliquescence of the pure solids as the catalogue cites it", margin, dampest_place},
};

}  // namespace

std::span<const Measure> humidity_measures() {
  return humidity_table;
}

}  // namespace sudsmark::measures
