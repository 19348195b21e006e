#include "measures/room_air_measures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <variant>

#include "measures/air_units.h"
#include "measures/dust_bounds.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/gas.h"
#include "science/well_mixed_room.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view model =
    "mass over volume and its means in a well-mixed room (a university's teaching problem); "
    "limits as the table `vapour-limits` has them";
constexpr std::string_view limits_table = "vapour-limits";
constexpr double milligrams = 1000;
constexpr double brief = 0.25;  // h
constexpr double shift = 8;     // h

const catalogue::Row* limits_of(const View& view, std::uint32_t substance) {
  const catalogue::Table* table = view.blend->catalogue->find_table(limits_table);
  if (table == nullptr) return nullptr;
  for (const catalogue::Row& row : table->rows) {
    if (std::find(row.substances.begin(), row.substances.end(), substance) !=
        row.substances.end()) {
      return &row;
    }
  }
  return nullptr;
}

struct Dried {
  std::uint32_t substance = 0;
  std::string name;
  Range mass;
};

/// Volatile substances of one batch as it is formed [g]: sooner or later all of it is in the air,
/// whether the formula says that it dries off or not.
std::vector<Dried> dried_off(const View& view) {
  std::vector<Dried> out;
  for (const blend::Ingredient& one : view.part->as_formed().ingredients) {
    const catalogue::Material& material = view.blend->material(one.material);
    if (!has(material, catalogue::Role::alcohol) || !(one.mass.high > 0)) continue;
    for (const blend::ContentView& content : view.blend->contents(one.material)) {
      if (content.substance == nullptr || content.water != catalogue::WaterClass::none) continue;
      const Range mass = one.mass * content.share;
      const auto known = std::find_if(out.begin(), out.end(), [&](const Dried& dried) {
        return dried.substance == content.substance_id;
      });
      if (known == out.end()) {
        out.push_back({content.substance_id, content.substance->name, mass});
      } else {
        known->mass += mass;
      }
    }
  }
  return out;
}

VapourBound bound_of(const View& view, const Dried& dried, const StatedRoom& room) {
  VapourBound out;
  out.substance = dried.name;
  out.mass = dried.mass;
  out.limits = limits_of(view, dried.substance);
  out.peak = out.brief = out.shift = Range::unknown();
  if (!room.ends) return out;
  const auto mean = [&](const science::Room& of, double grams, double hours) {
    return science::mean_bound_any_pattern(of, grams * milligrams, hours) * mg_per_m3;
  };
  const auto& [airy, close] = *room.ends;
  out.peak = {dried.mass.low / (airy.volume * litres), dried.mass.high / (close.volume * litres)};
  out.brief = {mean(airy, dried.mass.low, brief), mean(close, dried.mass.high, brief)};
  out.shift = {mean(airy, dried.mass.low, shift), mean(close, dried.mass.high, shift)};
  return out;
}

/// The greatest of what a bound is to a figure of its row; nothing where nothing dries off.
template <class Part>
Measured greatest(const View& view, std::string_view column, std::string_view unit,
                  const Part& part) {
  const RoomAir air = room_air(view);
  Measured out{0.0, air.missing};
  for (const VapourBound& one : air.vapours) {
    const auto limit =
        one.limits == nullptr ? std::nullopt : vapour_limit(view, *one.limits, column);
    if (!limit) {
      out.value = Range::at_least(out.value.low);
      out.missing |=
          view.missing->add("a limit of " + one.substance + " in the air", view.blend->place);
      continue;
    }
    out.value = quantity::max(out.value, part(one) / *limit);
    trace(view, quantity::printed(one.mass, "g") + " of " + one.substance +
                    " in the room at once: " + quantity::printed(part(one), unit) + " over " +
                    quantity::printed(*limit, unit));
  }
  return out;
}

Measured alcohol(const View& view) {
  const RoomAir air = room_air(view);
  Measured out{0.0, air.missing};
  for (const VapourBound& one : air.vapours) out.value += one.brief;
  if (!air.missing.empty()) out.value = Range::at_least(0.0);
  return out;
}

Measured vapour_of_limit(const View& view) {
  return greatest(view, "short term", "mg/m3", [](const VapourBound& one) { return one.brief; });
}

Measured vapour_of_explosive(const View& view) {
  return greatest(view, "explosive", "g/m3", [](const VapourBound& one) { return one.peak; });
}

Measured wet_batch(const View& view) {
  View silent = view;
  silent.trace = nullptr;
  const auto equivalents = [&](std::string_view name) {
    return computed(all()[*find(name)], silent);
  };
  const Measured acids = equivalents("acid.equivalents");
  const Measured bases = equivalents("base.equivalents");
  const StatedRoom room = stated_room(view);
  Measured out{Range::unknown(), acids.missing | bases.missing | room.missing};
  if (!part_is_weighed(view)) out.missing |= missing_batch(view);
  if (!out.missing.empty() || !room.ends) return out;
  // one proton frees at most one molecule of gas, and a base at most one for each that it takes
  constexpr double moles = 1e-3;  // of a millimole
  const Range mass = view.part->composition.total();
  const Range gas =
      quantity::min(acids.value, bases.value) * mass * (moles * science::molar_volume());
  const auto& [airy, close] = *room.ends;
  out.value = {gas.low / (airy.volume * litres), gas.high / (close.volume * litres)};
  trace(view, "up to " + quantity::printed(gas, "l") + " of gas out of " +
                  quantity::printed(mass, "kg") + " that gets wet, at 25 C");
  return out;
}

Span drying_place(const View& view) {
  for (const blend::Ingredient& one : view.part->as_formed().ingredients) {
    if (has(view.blend->material(one.material), catalogue::Role::alcohol) && !one.places.empty()) {
      return one.places.front();
    }
  }
  return view.blend->place;
}

Span batch_place(const View& view) {
  return view.blend->batch ? view.blend->batch->place : view.blend->place;
}

constexpr std::array room_air_table{
    Measure{
        "vapour.alcohol",
        "mg/m3",
        "upper bound of the worst 15 minutes of the alcohol that dries off one batch, all of it "
        "in the room at once",
        model,
        alcohol,
        drying_place,
        {},
        true},
    Measure{"vapour.of_limit",
            "1",
            "that bound over the limit of 15 minutes, the highest of what dries off",
            model,
            vapour_of_limit,
            drying_place,
            {},
            true},
    Measure{"vapour.of_explosive", "1",
            "all of it in the room at once over the least that burns in air, the highest", model,
            vapour_of_explosive, drying_place,
            "Over the whole room: near the bowl and in a drying box it is far more.", true},
    Measure{"gas.wet_batch", "%",
            "upper bound of carbon dioxide in the room if all of the batch gets wet", model,
            wet_batch, batch_place,
            "A bucket that stood in the rain, or was washed out with all in it.", true},
};

}  // namespace

std::optional<Range> vapour_limit(const View& view, const catalogue::Row& row,
                                  std::string_view column) {
  const catalogue::Table* of = view.blend->catalogue->find_table(limits_table);
  const auto at = of == nullptr ? std::nullopt : of->column(column);
  const auto* found = at ? std::get_if<Range>(&row.cells[*at]) : nullptr;
  return found == nullptr ? std::nullopt : std::optional<Range>(*found);
}

RoomAir room_air(const View& view) {
  RoomAir out;
  const std::vector<Dried> dried = dried_off(view);
  if (dried.empty()) return out;
  const StatedRoom room = stated_room(view);
  out.missing = room.missing;
  if (!part_is_weighed(view)) out.missing |= missing_batch(view);
  for (const Dried& one : dried) {
    out.vapours.push_back(bound_of(view, one, out.missing.empty() ? room : StatedRoom{}));
  }
  return out;
}

std::span<const Measure> room_air_measures() {
  return room_air_table;
}

}  // namespace sudsmark::measures
