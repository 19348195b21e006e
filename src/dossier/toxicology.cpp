// Heading 8: what the user's own table says of substances, and the question for all others.
#include <algorithm>

#include "dossier/gathering.h"
#include "measures/exposure_measures.h"
#include "quantity/number.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

std::string in(const quantity::Range& value, std::string_view unit) {
  return quantity::printed(value, unit);
}

}  // namespace

void add_toxicology(const Gathering& to) {
  const measures::SkinExposures found = measures::skin_exposures(to.whole);
  std::vector<std::string> told;
  for (const measures::SubstanceExposure& one : found.substances) {
    told.push_back(one.substance);
    std::string words = "systemic dose " + in(one.systemic, "mg/kg") + " a day, " +
                        in(one.absorption, "%") + " through the skin" +
                        (one.absorption_stated ? "" : " (not stated)");
    if (one.point_of_departure) {
      words += "; point of departure " + in(*one.point_of_departure, "mg/kg") + ", margin " +
               in(one.margin, "1") + " (the guidance asks for 100, from memory)";
    }
    if (one.threshold) {
      words += "; threshold of class " + one.threshold_class + " " + in(*one.threshold, "mg/kg") +
               " (as quoted), of which it is " + in(one.systemic / *one.threshold, "1") + " times";
    }
    to.entry(8, one.substance, words + ".");
  }
  std::vector<std::string> open;
  for (const CompositionRow& one : to.checked.composition) {
    if (one.substance == "Water") continue;
    if (std::find(told.begin(), told.end(), one.substance) == told.end()) {
      open.push_back(one.substance);
    }
  }
  to.entry(8, "figures",
           "no figure of toxicology is in this program; those above, if any, were given by the "
           "user.");
  if (open.empty()) return;
  const std::size_t count = open.size();
  to.question(
      {8, Answerer::assessor,
       "Which point of departure, absorption and local effects (skin, eyes, allergy, light) "
       "stand for each of these?",
       "Given in a table `toxicological-figures`, margins and thresholds are worked out.",
       std::move(open), count});
}

}  // namespace sudsmark::dossier
