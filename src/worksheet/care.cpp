#include "worksheet/care.h"

#include <algorithm>
#include <array>
#include <functional>
#include <string>

#include "measures/room_air_measures.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "wording/words.h"

namespace sudsmark::worksheet {
using namespace wording;

namespace {

using catalogue::Material;
using catalogue::Role;
using measures::View;
using quantity::Range;

constexpr double much = 10000;  // g of a batch from which sacks are lifted

bool any(const View& whole, const std::function<bool(const Material&)>& test) {
  const blend::Composition& all = whole.part->as_formed();
  return std::any_of(all.ingredients.begin(), all.ingredients.end(),
                     [&](const blend::Ingredient& one) {
                       return one.mass.high > 0 && test(whole.blend->material(one.material));
                     });
}

bool of_roles(const View& whole, catalogue::Roles roles) {
  return any(whole, [&](const Material& one) { return (one.roles & roles) != 0; });
}

bool oxidises(const measures::HandledHazards& hazards) {
  return hazards.find("H270") != nullptr || hazards.find("H271") != nullptr ||
         hazards.find("H272") != nullptr;
}

}  // namespace

void write_care(const View& whole, const measures::HandledHazards& hazards, Page& page) {
  const bool melts = of_roles(
      whole, bit(Role::wax) | bit(Role::butter) | bit(Role::fatty_alcohol) | bit(Role::fatty_acid));
  const bool sensitises = hazards.find("H334") != nullptr;
  const bool oxidiser = oxidises(hazards);
  if (melts) {
    page.entry("hot fat",
               "Melt over a water bath, never over a flame and never unwatched; no water into hot "
               "fat. On a fat fire a lid, never water. Goggles and sleeves; a burn goes under cool "
               "running water for 20 minutes. (from memory)");
  }
  if (of_roles(whole, bit(Role::surfactant))) {
    page.entry(
        "wet hands",
        "Sore skin is the likeliest harm here: nitrile gloves, changed when wet inside; hands "
        "washed, dried and creamed; look at them weekly. (published, as quoted: HSE G403)");
  }
  if (melts || sensitises || oxidiser) {
    page.entry("alone", std::string("Nobody alone in the house while ") +
                            (melts      ? "fat is hot"
                             : oxidiser ? "an oxidiser is tipped"
                                        : "this is tipped") +
                            ": a telephone, and an eyewash within ten seconds. (common practice)");
  }
  if (of_roles(whole, bit(Role::alcohol))) {
    page.entry(
        "static",
        "Powder that is tipped into a plastic vessel charges it: no alcohol open beside it, and "
        "no mist over a heap that is still dusty. (common practice)");
  }
  if (whole.blend->batch && whole.blend->batch->value.high >= much) {
    page.entry("lifting",
               "Sacks of 25 kg are opened where they stand, scooped, or carried by two. (common "
               "practice)");
  }
}

void write_air(const View& whole, Page& page) {
  const measures::RoomAir air = measures::room_air(whole);
  for (const measures::VapourBound& one : air.vapours) {
    if (!one.brief.known()) {
      page.entry("vapour", quantity::printed(one.mass, "g") + " of " + one.substance +
                               " dries off; how much of it stands in the air is not known: needs " +
                               joined(whole.missing->words(air.missing)) + ".");
      continue;
    }
    std::string words = quantity::printed(one.mass, "g") + " of " + one.substance +
                        " dries off: upper bounds, all of it at once, " +
                        quantity::printed(one.brief, "mg/m3") + " over the worst 15 minutes and " +
                        quantity::printed(one.shift, "mg/m3") + " over 8 hours";
    if (one.limits == nullptr) {
      words += "; no limit of it was found, which makes it no safer.";
    } else {
      const auto brief = measures::vapour_limit(whole, *one.limits, "short term");
      const auto mean = measures::vapour_limit(whole, *one.limits, "mean");
      const auto burns = measures::vapour_limit(whole, *one.limits, "explosive");
      if (brief && mean) {
        words += "; limits " + quantity::printed(*brief, "mg/m3") + " and " +
                 quantity::printed(*mean, "mg/m3") + " (as quoted)";
      }
      if (burns) {
        words += "; it burns from " + quantity::printed(*burns, "g/m3") +
                 " on (from memory), and the room holds " + quantity::printed(one.peak, "g/m3");
      }
      words += ".";
    }
    page.entry("vapour", words);
  }
  const auto index = measures::find("gas.wet_batch");
  const auto& traits = whole.blend->product->traits;
  if (!index || std::find(traits.begin(), traits.end(), "effervescent") == traits.end()) return;
  const measures::Measured gas = measures::computed(measures::all()[*index], whole);
  if (!gas.value.known()) {
    page.entry("gas",
               "A batch that gets wet gives off carbon dioxide; how much of the room it fills "
               "is not known: needs " +
                   joined(whole.missing->words(gas.missing)) + ".");
    return;
  }
  if (!(gas.value.high > 0)) return;
  page.entry(
      "gas",
      "If all of it gets wet, carbon dioxide could come to " + quantity::printed(gas.value, "%") +
          " of the room, lowest down most: out, and the door open. Limits 0.5 % over 8 hours "
          "and 1.5 % over 15 minutes; 4 % is dangerous at once (as quoted).");
}

void write_workplace_law(const blend::Blend& blend, Page& page) {
  struct Line {
    std::string_view market;
    const char* words;
  };
  constexpr std::array lines{
      Line{"GB",
           "COSHH: an assessment of what is handled, written from five workers on; DSEAR for "
           "dust and vapour that burn."},
      Line{"NI", "Northern Ireland's own COSHH and DSEAR regulations."},
      Line{"EU", "The law of the country after Directives 98/24/EC and 1999/92/EC."},
      Line{"US", "OSHA's hazard communication standard, and the limits of 29 CFR 1910.1000."},
      Line{"CA", "The province's law of workplaces, and WHMIS."},
  };
  for (const Line& line : lines) {
    const bool sold =
        std::any_of(blend.markets.begin(), blend.markets.end(),
                    [&](const blend::StatedWord& market) { return market.text == line.market; });
    if (sold) {
      page.entry("law, " + std::string(line.market),
                 std::string("If it is made there: ") + line.words + " (from memory)");
    }
  }
}

}  // namespace sudsmark::worksheet
