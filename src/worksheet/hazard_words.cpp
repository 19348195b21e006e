#include "worksheet/hazard_words.h"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace sudsmark::worksheet {
namespace {

struct Said {
  std::string_view code;
  std::string_view words;
};

constexpr std::array all_words{
    Said{"H225", "catches fire very easily"},
    Said{"H226", "catches fire"},
    Said{"H228", "the powder catches fire"},
    Said{"H270", "feeds a fire"},
    Said{"H271", "can make a fire or blow up, feeds it strongly"},
    Said{"H272", "feeds a fire"},
    Said{"H290", "eats metals"},
    Said{"H300", "deadly if swallowed"},
    Said{"H301", "poisonous if swallowed"},
    Said{"H302", "harmful if swallowed"},
    Said{"H304", "can kill if it is swallowed and gets into the lung"},
    Said{"H311", "poisonous on the skin"},
    Said{"H312", "harmful on the skin"},
    Said{"H314", "burns skin and eyes"},
    Said{"H315", "irritates skin"},
    Said{"H317", "can make skin allergic"},
    Said{"H318", "damages eyes for good"},
    Said{"H319", "irritates eyes"},
    Said{"H330", "deadly to breathe"},
    Said{"H331", "poisonous to breathe"},
    Said{"H332", "harmful to breathe"},
    Said{"H334", "can bring on asthma"},
    Said{"H335", "irritates nose and throat"},
    Said{"H336", "makes drowsy"},
    Said{"H340", "may change what is inherited"},
    Said{"H341", "is suspected of changing what is inherited"},
    Said{"H350", "may cause cancer"},
    Said{"H351", "is suspected of causing cancer"},
    Said{"H360", "may harm fertility or an unborn child"},
    Said{"H361", "is suspected of harming fertility or an unborn child"},
    Said{"H362", "may harm breast-fed children"},
    Said{"H370", "harms organs"},
    Said{"H371", "may harm organs"},
    Said{"H372", "harms organs over time"},
    Said{"H373", "may harm organs over time"},
    Said{"H400", "very poisonous to life in water"},
    Said{"H410", "very poisonous to life in water for long"},
    Said{"H411", "poisonous to life in water for long"},
    Said{"H412", "harmful to life in water for long"},
};

constexpr const char* practice = "common practice";
constexpr const char* serious =
    "published, as quoted: registration dossiers, and P310 of Regulation (EC) No 1272/2008";

bool any(const measures::HandledHazards& hazards, std::initializer_list<std::string_view> codes) {
  return std::any_of(codes.begin(), codes.end(),
                     [&](std::string_view code) { return hazards.find(code) != nullptr; });
}

}  // namespace

std::string_view hazard_words(std::string_view code) {
  constexpr std::size_t plain = 4;  // "H360" of "H360FD"
  const auto* found = std::find_if(all_words.begin(), all_words.end(), [&](const Said& said) {
    return said.code == code.substr(0, plain);
  });
  return found == all_words.end() ? std::string_view() : found->words;
}

std::vector<Advice> precautions(const measures::HandledHazards& hazards) {
  std::vector<Advice> out;
  if (any(hazards, {"H314", "H318", "H319"})) {
    out.push_back({"eyes",
                   "Closed goggles while tipping, sieving and mixing; water within reach; "
                   "no rubbing with a dusty hand.",
                   practice});
  }
  if (any(hazards, {"H314", "H315", "H317", "H311", "H312"})) {
    out.push_back({"skin", "Gloves and long sleeves; wash off dust before it is damp.", practice});
  }
  const bool asthma = any(hazards, {"H334"});
  if (asthma || any(hazards, {"H330", "H331", "H332", "H335", "H336", "H370", "H371", "H372",
                              "H373", "H350", "H340", "H341", "H351"})) {
    out.push_back(
        {"breath",
         std::string("A fitted mask, ") +
             (asthma ? "FFP3 or P100 (FFP2 and N95 are not enough), fit-tested and on a "
                       "shaven face"
                     : "FFP2 at the least") +
             "; tip low and slowly with the bag's mouth in the vessel; nobody in the room "
             "without one.",
         practice});
  }
  if (asthma) {
    out.push_back({"asthma",
                   "Whoever has asthma, or ever wheezed at this work, does something "
                   "else. It comes after months without a sign, and it stays. Where there are "
                   "workers, checks of their lungs are due by law, by somebody trained, with a "
                   "record of them (published, as quoted: HSE G402). Enzymes such as papain are "
                   "bought as granules or left out.",
                   practice});
  }
  if (any(hazards, {"H360", "H361", "H362"})) {
    out.push_back({"pregnancy", "Nobody who is pregnant, wants to be, or breast-feeds handles it.",
                   practice});
  }
  if (any(hazards, {"H270", "H271", "H272"})) {
    out.push_back(
        {"oxidiser",
         "It feeds a fire: kept from acid, damp, wood, paper, oil and scent, in a pack with "
         "a vent and never in a tight jar, below 40 C; from about 50 C percarbonate heats "
         "itself and bursts its vessel (published: ICSC 1744, and a maker's sheet as "
         "quoted; the 40 C is common practice).",
         practice});
  }
  if (any(hazards, {"H225", "H226", "H228"})) {
    out.push_back(
        {"fire", "No flame, no glowing heater, no smoking where it stands open.", practice});
  }
  return out;
}

std::vector<Advice> first_aid(const measures::HandledHazards& hazards) {
  std::vector<Advice> out;
  if (any(hazards, {"H314", "H318"})) {
    out.push_back(
        {"in the eyes",
         "Rinse with plenty of water for at least 15 minutes, lids held open, contact lenses "
         "out if that is easy. Call a poison centre or a doctor at once; take the "
         "supplier's data sheet along.",
         serious});
  } else if (any(hazards, {"H319"})) {
    out.push_back({"in the eyes",
                   "Rinse with plenty of water for several minutes, take contact "
                   "lenses out if that is easy, then see a doctor; take the "
                   "supplier's data sheet along.",
                   practice});
  }
  if (any(hazards, {"H314", "H315", "H317", "H311", "H312"})) {
    out.push_back({"on the skin",
                   "Take dusty clothes off and wash with water. See a doctor if it "
                   "stays red, itches or blisters.",
                   practice});
  }
  if (any(hazards, {"H330", "H331", "H332", "H334", "H335", "H336"})) {
    out.push_back({"breathed in",
                   "Out into fresh air, sit upright and rest. Get medical help at "
                   "once if breathing is short or wheezes, or if coughing does not "
                   "stop.",
                   practice});
  }
  if (any(hazards, {"H300", "H301", "H302", "H304", "H314", "H318"})) {
    out.push_back({"swallowed",
                   "Rinse the mouth, do not make anybody vomit, and ask a doctor or a "
                   "poison centre with the data sheet in hand.",
                   practice});
  }
  return out;
}

}  // namespace sudsmark::worksheet
