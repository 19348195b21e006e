#include "worksheet/tasks.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "measures/combustible_dust.h"
#include "measures/control_band.h"
#include "measures/dust_bounds.h"
#include "measures/dust_limits.h"
#include "measures/handled_powder.h"
#include "measures/task_hazards.h"
#include "quantity/number.h"
#include "science/control_banding.h"
#include "science/dust_cloud.h"
#include "wording/words.h"
#include "worksheet/care.h"
#include "worksheet/hazard_words.h"

namespace sudsmark::worksheet {
using namespace wording;

namespace {

using measures::View;
using quantity::Certainty;
using quantity::Range;

constexpr double mg_per_m3 = 1e-6;  // in g/l
constexpr double litres = 1000;     // of a cubic metre
constexpr double trigger = 10;      // mg/m3 inhalable, the British regulations as quoted

/// An upper bound in words: never "at least 0", which a reader would keep as 0.
std::string bound_words(const Range& bound, std::string_view unit) {
  if (std::isfinite(bound.high)) return quantity::printed(bound, unit);
  if (!(bound.low > 0)) return "not known";
  return quantity::printed(Range(bound.low), unit) + " or more, no upper end is known,";
}

View of_task(const View& whole, const blend::Task& task) {
  View view = whole;
  view.part = &task.handled;
  view.task = &task;
  return view;
}

void write_hazards(const View& view, const blend::Task& task, Page& page) {
  if (task.handled.composition.empty()) return;
  const measures::HandledHazards hazards = measures::task_hazards(view, task);
  std::string sure;
  std::string perhaps;
  for (const measures::HandledStatement& statement : hazards.statements) {
    std::string& to = statement.applies == Certainty::yes ? sure : perhaps;
    to += (to.empty() ? "" : "; ") + statement.code;
    const std::string_view words = hazard_words(statement.code);
    if (!words.empty()) to += " " + std::string(words);
    to += " (" + joined(statement.materials) + ")";
  }
  const bool mix = task.handled.composition.ingredients.size() > 1;
  if (!sure.empty()) {
    page.entry(mix ? "the mix" : "hazards", sure + ".");
  }
  if (!perhaps.empty()) {
    page.entry("perhaps", perhaps +
                              ". No mixture rule decides these here, or the figures of the "
                              "suppliers do: ask for their data sheets.");
  }
  if (sure.empty() && perhaps.empty() && hazards.missing.empty()) {
    page.entry("hazards",
               "none by the catalogue. That is no clearance: the data sheets of the "
               "supplier come first.");
  }
  if (!hazards.missing.empty()) {
    page.entry("not known", joined(view.missing->words(hazards.missing)) + ".");
  }
}

void write_band(const View& view, const blend::Task& task, Page& page) {
  const measures::Banding band = measures::banding_of(view, task);
  if (!band.approach.known() || task.handled.composition.empty()) {
    page.entry("control", "not known: needs " + joined(view.missing->words(band.missing)) + ".");
    return;
  }
  const int most = static_cast<int>(band.approach.high);
  std::string words = "approach " + quantity::printed(band.approach, "1") + " of 4, " +
                      std::string(science::approach_words(most)) +
                      ", by COSHH Essentials (its table is from memory)";
  if (!band.decided_by.empty()) {
    words += "; decided by " + band.decided_by + ", hazard group " + band.group;
    if (!band.statements.empty()) words += " for " + joined(band.statements);
  }
  page.entry("control", words + ".");
  for (const science::Disagreement& told : band.disagreements) {
    page.entry("", "Sources differ on the " + std::string(told.about) + ": followed is " +
                       std::string(told.followed) + "; set aside is " +
                       std::string(told.set_aside) + ".");
  }
  constexpr int engineering = 2;
  if (most > engineering) {
    page.entry(
        "",
        "Where there is no extraction: small lots, a lid or a bag over the vessel, the bag's "
        "mouth down in it, nobody else in the room (common practice), and advice before "
        "more is made.");
  }
}

/// What the countries where it is sold say of dust of any kind.
void write_levels(const View& view, Page& page) {
  const catalogue::Table* table = view.blend->catalogue->find_table("general-dust-levels");
  if (table == nullptr) return;
  const auto inhalable = table->column("inhalable");
  const auto respirable = table->column("respirable");
  if (!inhalable || !respirable) return;
  const auto sold = [&](const std::string& market) {
    const auto& markets = view.blend->markets;
    return std::any_of(markets.begin(), markets.end(),
                       [&](const blend::StatedWord& one) { return one.text == market; });
  };
  std::string words;
  for (const catalogue::Row& row : table->rows) {
    if (!row.markets.empty() && std::none_of(row.markets.begin(), row.markets.end(), sold)) {
      continue;
    }
    const auto* whole = std::get_if<Range>(&row.cells[*inhalable]);
    const auto* deep = std::get_if<Range>(&row.cells[*respirable]);
    if (whole == nullptr || deep == nullptr) continue;
    words += (words.empty() ? "" : "; ") + row.name + " " + quantity::printed(*whole, "mg/m3") +
             " inhalable and " + quantity::printed(*deep, "mg/m3") + " respirable";
  }
  if (!words.empty()) page.entry("any dust", words + ". To be below one is not the same as safe.");
}

void write_bound(const View& view, Page& page) {
  const auto inhalable = measures::air_bounds(view, science::DustFraction::inhalable);
  if (inhalable.shift == Range::unknown()) {
    page.entry("dust bound",
               "not known: needs " + joined(view.missing->words(inhalable.missing)) + ".");
    return;
  }
  const auto respirable = measures::air_bounds(view, science::DustFraction::respirable);
  const bool nothing = !(inhalable.shift.low > 0) && !std::isfinite(inhalable.shift.high);
  if (nothing) {
    std::vector<std::string> names;
    for (const blend::Ingredient& one : view.part->composition.ingredients) {
      names.push_back(view.blend->material(one.material).name);
    }
    page.entry("dust bound", "not known: nothing states how dusty " + joined(names) + " is.");
  } else {
    page.entry("dust bound", "upper bound of the 8 hour mean in the room: " +
                                 bound_words(inhalable.shift, "mg/m3") + " inhalable, " +
                                 bound_words(respirable.shift, "mg/m3") +
                                 " respirable; upper bound of the worst 15 minutes: " +
                                 bound_words(inhalable.short_term, "mg/m3") +
                                 " inhalable. The 8 hour mean hides such a peak.");
    const auto& workshop = view.blend->workshop;
    const bool stated = workshop && workshop->air_speed;
    page.entry(
        "at the bowl",
        "upper bound within an arm's length: " + bound_words(inhalable.near_shift, "mg/m3") +
            " over 8 hours, " + bound_words(inhalable.near_short, "mg/m3") +
            " over the worst 15 minutes, inhalable, in " +
            (stated ? "air that moves at " +
                          quantity::printed(measures::air_at_the_bowl(view), "m/s") + ", as stated."
                    : "the still air of a quiet room (0.05 to 0.3 m/s, from memory)."));
  }
  if (!std::isfinite(inhalable.shift.high)) {
    const auto enough = measures::dustiness_for(view, trigger * mg_per_m3);
    page.entry("",
               "The bound has no upper end, since the dustiest class of powders has none. Ask "
               "the supplier for the dustiness by EN 15051 and state it (`raises … mg/kg`)" +
                   (enough ? "; up to " + quantity::printed(Range(*enough * mg_per_m3), "mg/kg") +
                                 " the bound would stay at the trigger of 10 mg/m3, at which "
                                 "the British regulations begin to ask for control. Below a "
                                 "trigger is not the same as safe."
                           : std::string(".")));
  }
  const measures::OfLimits limits = measures::of_limits(view);
  for (const measures::OfLimit& one : limits.substances) {
    std::string bound = bound_words(one.bound, "mg/m3");
    if (bound.ends_with(',')) bound.pop_back();
    page.entry("limit", one.substance + ": " + quantity::printed(one.limit.value, "mg/m3") +
                            (one.respirable ? " respirable (" : " inhalable (") +
                            one.limit.country + " " + one.limit.basis +
                            (one.limit.elsewhere ? ", none known where it is sold" : "") +
                            "), upper bound " + bound + ".");
  }
  if (!limits.without_limit.empty()) {
    page.entry("no limit",
               joined(limits.without_limit) + ": none was found, which makes none of them safe.");
  }
  write_levels(view, page);
  page.entry("mask",
             "Assigned factors in Great Britain, as quoted: FFP1 4, FFP2 10, FFP3 20, on a shaven "
             "face and after a fit test. No bound here is divided by any.");
}

void write_fire(const View& view, const blend::Task& task, Page& page) {
  const measures::CombustibleDust dust = measures::combustible_dust(view, task);
  if (dust.materials.empty()) return;
  std::string words =
      joined(dust.materials) + (dust.materials.size() == 1 ? " burns as dust" : " burn as dust");
  if (!dust.classes.empty()) words += " (" + joined(dust.classes) + ")";
  if (dust.fines.high == 0) {
    page.entry("fire",
               words + ", but " + quantity::printed(dust.inert_share, "%") +
                   " of the powder quenches, which counts as inert from 80 % on. The single "
                   "bags do not.");
    return;
  }
  words += ".";
  if (task.in && task.in->low > 0) {
    const double volume = task.in->low / litres;
    words += " In the vessel of " + quantity::printed(*task.in, "l") + " as little as " +
             quantity::printed(science::mass_to_limit(science::cautious_explosion_limit, volume)) +
             " g of it in the air can carry a flame by the cautious limit of 15 g/m3, " +
             quantity::printed(science::mass_to_limit(science::typical_explosion_limit, volume)) +
             " g by the 60 g/m3 of corn starch.";
  }
  if (dust.fines.known()) words += " There are " + quantity::printed(dust.fines, "kg") + " of it.";
  if (dust.room_cloud.known() && dust.room_cloud.high > 0) {
    words += " All of it whirled up would be " + quantity::printed(dust.room_cloud, "g/m3") +
             " over the whole room.";
  }
  if (dust.inert_share.high > 0) {
    words += " The " + quantity::printed(dust.inert_share, "%") +
             " of powder that quenches is below the 80 % from which it counts.";
  }
  page.entry("fire", words);
}

/// Hazards of all that is handled: tasks as they are, and every powder of the batch from its bag.
measures::HandledHazards all_hazards(const View& whole) {
  measures::HandledHazards out;
  const auto add = [&](const measures::HandledHazards& more) {
    out.missing |= more.missing;
    for (const measures::HandledStatement& statement : more.statements) {
      if (out.find(statement.code) == nullptr) out.statements.push_back(statement);
    }
  };
  for (const blend::Task& task : whole.blend->tasks) add(measures::task_hazards(whole, task));
  const auto add_bags = [&](const blend::Composition& composition) {
    for (const blend::Ingredient& ingredient : composition.ingredients) {
      blend::Composition bag;
      bag.ingredients = {ingredient};
      if (ingredient.mass.high > 0) add(measures::hazards_of(whole, bag));
    }
  };
  add_bags(whole.blend->whole.composition);
  for (const blend::Part& premix : whole.blend->premixes) add_bags(premix.composition);
  return out;
}

bool burns(const catalogue::Material& material) {
  return material.dust && material.dust->combustible;
}

bool some_burns(const View& whole) {
  const auto& ingredients = whole.blend->whole.composition.ingredients;
  return std::any_of(ingredients.begin(), ingredients.end(),
                     [&](const auto& one) { return burns(whole.blend->material(one.material)); });
}

}  // namespace

void write_tasks(const View& whole, Page& page) {
  if (whole.blend->tasks.empty()) {
    page.heading("Tasks");
    page.paragraph(
        "None is stated. A `task` (what is handled, how long, how often, in what) brings "
        "the control approach and the bounds of dust.",
        2);
    return;
  }
  for (const blend::Task& task : whole.blend->tasks) {
    const View view = of_task(whole, task);
    const Range mass = measures::powder_mass(measures::powders_of(view, task));
    std::string words = "Task '" + task.handled.name + "'";
    if (task.mass_known && mass.high > 0)
      words += ": " + quantity::printed(mass, "kg") + " of powder at a time";
    page.heading(words);
    write_band(view, task, page);
    write_hazards(view, task, page);
    write_bound(view, page);
    write_fire(view, task, page);
  }
}

void write_precautions(const View& whole, Page& page) {
  const measures::HandledHazards hazards = all_hazards(whole);
  page.heading("Before the first powder");
  for (const Advice& advice : precautions(hazards)) page.entry(advice.about, advice.words);
  const std::string unknown = joined(whole.missing->words(hazards.missing));
  if (!unknown.empty()) {
    page.entry("not known", "What it does to eyes, skin and breath: needs " + unknown +
                                ". Until then goggles and gloves, and a fitted mask where it is a "
                                "powder. (common practice)");
  }
  if (some_burns(whole)) {
    constexpr double light = 500;   // kg/m3
    constexpr double heavy = 1200;  // kg/m3
    page.entry("fire",
               "Starch, flour, sugar, acid and surfactant dust burn: no gas flame, candle, "
               "glowing heater or sparking switch where they are tipped; let the dust settle "
               "before heat goes on.");
    page.entry("layers", "A layer of " + quantity::printed(science::hazardous_layer(heavy).depth) +
                             " to " + quantity::printed(science::hazardous_layer(light).depth) +
                             " mm (heavy to light powder) over more than a twentieth of the floor "
                             "counts as a hazard: wipe ledges and lamps.");
  }
  write_care(whole, hazards, page);
  write_air(whole, page);
  write_workplace_law(*whole.blend, page);
}

void write_cautions(const View& whole, Page& page) {
  const measures::HandledHazards hazards = all_hazards(whole);
  const bool fire = some_burns(whole);
  page.heading("Afterwards");
  page.entry("cleaning",
             "Moisten spilt powder before it is swept; no household vacuum cleaner, "
             "which blows the fines out again" +
                 std::string(fire ? " and sparks inside" : "") + "." +
                 (hazards.find("H272") != nullptr
                      ? " No oxidiser into any vacuum cleaner, nor into a bin with paper."
                      : ""));
  const std::vector<Advice> aid = first_aid(hazards);
  page.heading("First aid");
  for (const Advice& advice : aid) {
    page.entry(advice.about, advice.words + " (" + advice.source + ")");
  }
  const std::string unknown = joined(whole.missing->words(hazards.missing));
  if (!unknown.empty()) {
    page.entry("not known", "What else it asks for: needs " + unknown + ".");
  } else if (aid.empty()) {
    page.paragraph("Nothing in the catalogue's statements asks for any.", 2);
  }
}

void write_keeping(const View& whole, Page& page) {
  if (whole.blend->premixes.empty()) return;
  page.heading("Keeping the premixes");
  for (const blend::Part& premix : whole.blend->premixes) {
    View view = whole;
    view.part = &premix;
    measures::Trace trace;
    view.trace = &trace;
    const auto index = measures::find("humidity.margin");
    if (!index) continue;
    const measures::Measured margin = measures::computed(measures::all()[*index], view);
    std::string words;
    if (margin.value == Range::unknown()) {
      words = "not known how damp an air it bears: needs " +
              joined(view.missing->words(margin.missing)) + ".";
    } else {
      words = margin.value.low > 0 ? quantity::printed(margin.value, "%") +
                                         " of humidity between the room and the air in which it "
                                         "turns damp: "
                                   : std::string("the room is damper than it bears: ");
      words += joined(trace) + ".";
    }
    page.entry("'" + premix.name + "'", words);
  }
  page.entry("so",
             "Keep bags tight and dry, below 50 % humidity; above 60 % trouble begins (craft "
             "page). Sieved, dry and sealed, a mix needs no second sieving. What has caked is "
             "sieved again, and thrown away if it is warm or swollen.");
}

}  // namespace sudsmark::worksheet
