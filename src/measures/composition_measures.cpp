#include "measures/composition_measures.h"

#include <array>

#include "measures/role_selector.h"
#include "measures/sums.h"

namespace sudsmark::measures {
namespace {

using catalogue::Form;
using catalogue::Material;
using catalogue::Role;
using catalogue::WaterClass;

constexpr std::string_view definition = "definition of the composition, arithmetic";

bool goes_in_dry(const Material& material) {
  return material.form == Form::fine_powder || material.form == Form::granules ||
         material.form == Form::solid;
}
bool liquid(const Material& material) {
  return material.form == Form::liquid || material.form == Form::paste;
}
bool wet(const Material& material) {
  return liquid(material) || material.form == Form::butter;
}

template <Role role>
Measured pure(const View& view) {
  static constexpr RoleSelector chosen{bit(role)};
  return share(view, chosen.selector());
}

template <Role role>
Span place_of(const View& view) {
  static constexpr RoleSelector chosen{bit(role)};
  return place(view, chosen.selector());
}

template <bool (*test)(const Material&)>
Measured supplied_by(const View& view) {
  return {supplied_share(view, test), {}};
}

template <bool (*test)(const Material&)>
Span place_by(const View& view) {
  return greatest_place(view, test);
}

bool coloured(const Material& material) {
  return has(material, Role::colour);
}

template <WaterClass wanted>
bool holds_water(const void*, const Candidate& candidate) {
  // water that is poured in is neither bound nor in crystals
  if (candidate.content == nullptr) {
    return wanted == WaterClass::free && has(*candidate.material, Role::water);
  }
  const bool water = (candidate.content->roles & bit(Role::water)) != 0;
  const WaterClass is = candidate.content->water;
  return is == wanted || (wanted == WaterClass::free && water && is == WaterClass::none);
}

template <WaterClass wanted>
Measured water_of(const View& view) {
  return share(view, {&holds_water<wanted>, nullptr, false});
}
template <WaterClass wanted>
Span water_place(const View& view) {
  return place(view, {&holds_water<wanted>, nullptr, false});
}

Measured wet_to_dry(const View& view) {
  // what dries off afterwards is there while it is formed
  const blend::Composition moist = only(view, view.part->as_formed(), wet);
  const blend::Composition powder = only(view, view.part->as_formed(), goes_in_dry);
  trace(view, "liquids and melted butters over all that is goes_in_dry, as supplied");
  if (!(powder.total().high > 0)) {
    return {Range::unknown(), view.missing->add("something dry in the mix", view.blend->place)};
  }
  return {moist.total() / powder.total(), {}};
}

Measured surfactant_in_bath(const View& view) {
  static constexpr RoleSelector chosen{bit(Role::surfactant)};
  return in_bath(view, chosen.selector());
}

Measured emulsifier_to_oil(const View& view) {
  static constexpr RoleSelector emulsifiers{bit(Role::emulsifier)};
  static constexpr RoleSelector oils{bit(Role::oil) | bit(Role::scent)};
  const Measured above = share(view, emulsifiers.selector());
  const Measured below = share(view, oils.selector());
  if (below.value == Range(0.0)) {
    return {Range::unknown(), view.missing->add("oil or scent in the formula", view.blend->place)};
  }
  return {above.value / below.value, above.missing | below.missing};
}

Measured pieces(const View& view) {
  const Measured batch = batch_mass(view);
  const Measured piece = piece_mass(view);
  return {batch.value / piece.value, batch.missing | piece.missing};
}

/// What is in the bowl and not in the product.
Measured dries_off(const View& view) {
  const Range formed = view.part->as_formed().total();
  if (!view.part->dough) return {0.0, {}};
  return {quantity::clamp(Range(1.0) - view.part->composition.total() / formed, 0.0, 1.0), {}};
}

Measured dried_at(const View& view) {
  const auto& dried = view.blend->dried;
  if (dried && dried->temperature) return {*dried->temperature, {}};
  return {Range::unknown(),
          view.missing->add("how warm pieces are dried (`dried`)", view.blend->place)};
}

Span dried_place(const View& view) {
  return view.blend->dried ? view.blend->dried->place : view.blend->place;
}

Span batch_place(const View& view) {
  return view.blend->batch ? view.blend->batch->place : view.blend->place;
}
Span piece_place(const View& view) {
  return view.blend->piece ? view.blend->piece->place : view.blend->place;
}
Span dose_place(const View& view) {
  return view.blend->dose ? view.blend->dose->place : view.blend->place;
}
Span volume_place(const View& view) {
  return view.blend->bath_volume ? view.blend->bath_volume->place : view.blend->place;
}
Span warmth_place(const View& view) {
  return view.blend->bath_temperature ? view.blend->bath_temperature->place : view.blend->place;
}

Measured room_humidity(const View& view) {
  return stated(view, workshop_figure(view, &blend::Workshop::humidity),
                "the humidity of the room (`workshop`)");
}
Measured room_temperature(const View& view) {
  return stated(view, workshop_figure(view, &blend::Workshop::temperature),
                "the temperature of the room (`workshop`)");
}
Measured room_volume(const View& view) {
  return stated(view, workshop_figure(view, &blend::Workshop::room),
                "the size of the room (`workshop`)");
}
Span workshop_place(const View& view) {
  return view.blend->workshop ? view.blend->workshop->place : view.blend->place;
}

constexpr std::array composition_table{
    Measure{"forming.dries_off", "%", "share of the dough that is gone from the dry product",
            definition, dries_off, batch_place},
    Measure{"forming.dried_at", "C", "how warm pieces are dried after forming, as stated",
            definition, dried_at, dried_place},
    Measure{"batch.mass", "g", "mass of one making", definition, batch_mass, batch_place},
    Measure{"batch.pieces", "1", "pieces that one making comes to, parts of one counted",
            definition, pieces, piece_place},
    Measure{"piece.mass", "g", "mass of one finished piece, or usual for its kind", definition,
            piece_mass, piece_place},
    Measure{"dose.mass", "g", "mass of product in one bath or wash, or usual for its kind",
            definition, dose_mass, dose_place},
    Measure{"bath.volume", "l", "water of one bath, or usual for the kind of product", definition,
            bath_volume, volume_place},
    Measure{"bath.temperature", "C", "warmth of the bath, or usual for the kind of product",
            definition, bath_temperature, warmth_place},
    Measure{"powders", "%", "all that is supplied dry: powders, granules, flakes, pellets",
            definition, supplied_by<goes_in_dry>, place_by<goes_in_dry>},
    Measure{"liquids", "%", "all that is supplied liquid or as a paste", definition,
            supplied_by<liquid>, place_by<liquid>},
    Measure{"water", "%",
            "free water from every source; moisture of starches and crystal water are left out",
            definition, water_of<WaterClass::free>, water_place<WaterClass::free>},
    Measure{"water.bound", "%", "moisture that starches and flours hold and give off slowly",
            definition, water_of<WaterClass::bound>, water_place<WaterClass::bound>},
    Measure{"water.crystal", "%", "water bound in crystals, set free on warming", definition,
            water_of<WaterClass::crystal>, water_place<WaterClass::crystal>},
    Measure{"humectants", "%", "glycerol and what else holds water back", definition,
            pure<Role::humectant>, place_of<Role::humectant>},
    Measure{"oils", "%", "oils and butters", definition, pure<Role::oil>, place_of<Role::oil>},
    Measure{"butters", "%", "fats that are solid in a cool room", definition, pure<Role::butter>,
            place_of<Role::butter>},
    Measure{"scent", "%", "fragrances, essential oils and aroma chemicals", definition,
            pure<Role::scent>, place_of<Role::scent>},
    Measure{"emulsifier", "%", "emulsifiers and solubilisers, which are no surfactant here",
            definition, pure<Role::emulsifier>, place_of<Role::emulsifier>},
    Measure{"colour", "%", "lakes, dyes, pigments and micas, as supplied", definition,
            supplied_by<coloured>, place_by<coloured>},
    Measure{"wet_to_dry", "1",
            "liquids and melted butters over all that is goes_in_dry, as supplied", definition,
            wet_to_dry, place_by<wet>},
    Measure{"surfactant", "%", "surfactants by their active matter", definition,
            pure<Role::surfactant>, place_of<Role::surfactant>},
    Measure{"surfactant.anionic", "%", "anionic surfactants by their active matter", definition,
            pure<Role::anionic>, place_of<Role::anionic>},
    Measure{"surfactant.amphoteric", "%", "amphoteric surfactants by their active matter",
            definition, pure<Role::amphoteric>, place_of<Role::amphoteric>},
    Measure{"surfactant.nonionic", "%", "nonionic surfactants by their active matter", definition,
            pure<Role::nonionic>, place_of<Role::nonionic>},
    Measure{"surfactant.cationic", "%", "cationic surfactants by their active matter", definition,
            pure<Role::cationic>, place_of<Role::cationic>},
    Measure{"surfactant.in_bath", "mg/l", "active matter of the surfactants in the bath",
            definition, surfactant_in_bath, place_of<Role::surfactant>},
    Measure{"emulsifier.to_oil", "1", "emulsifier over oils and scent", definition,
            emulsifier_to_oil, place_of<Role::emulsifier>},
    Measure{"room.humidity", "%", "relative humidity of the workshop, as stated", definition,
            room_humidity, workshop_place},
    Measure{"room.temperature", "C", "temperature of the workshop, as stated", definition,
            room_temperature, workshop_place},
    Measure{"room.volume", "m3", "volume of the workshop, as stated", definition, room_volume,
            workshop_place},
};

}  // namespace

std::span<const Measure> composition_measures() {
  return composition_table;
}

}  // namespace sudsmark::measures
