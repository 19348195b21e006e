#include "label/findings.h"

#include <sudsmark/label.h>

#include <algorithm>
#include <array>

#include "text/name.h"

namespace sudsmark::label {
namespace {

constexpr std::string_view list_law =
    "article 19 (1) (g) of Regulation (EC) No 1223/2009 and its text in Great Britain; 21 CFR "
    "701.3; "
    "section 21.4 of the Cosmetic Regulations of Canada";

constexpr std::array<FindingInfo, label_findings.size()> all{{
    {"label-market-unknown", "A label is checked for a market", "note",
     "Which names, allergens and cautions a label needs depends on where the product is sold.",
     "Write `market GB, EU` into the formula, or give --market.", list_law},
    {"label-ingredient-missing", "The label names every ingredient", "warning",
     "Whoever reacts to a substance looks for it in the list. Allergens of a scent are named "
     "beside "
     "it where there is more of them than the law's figure, all sources together.",
     "Put the name into the list: `sudsmark label` writes the whole list of each market.",
     list_law},
    {"label-ingredient-extra", "The label names nothing that is not in it", "warning",
     "A list that names what is not there is as wrong as one that leaves something out. Often it "
     "is "
     "the list of an older formula, or a name that the law does not know.",
     "Take the name out, or write it as `sudsmark label` does.", list_law},
    {"label-ingredient-misspelt", "Ingredients are spelt as the law spells them", "warning",
     "People search for a name letter by letter, and so do those who check labels.",
     "Write the name as the finding has it.", list_law},
    {"label-ingredient-misplaced", "Ingredients stand in the order of the law", "warning",
     "Ingredients fall by weight as they were put in, down to 1 %; those below follow in any "
     "order, "
     "and colours come last.",
     "Move the name to where `sudsmark label` has it.", list_law},
    {"label-caution-missing", "The label bears the words that are asked for", "warning",
     "A caution that is not on the pack protects nobody. Some have to stand word for word; of "
     "others "
     "the sense is enough.",
     "Write the words into the `warning` of the label section, and print them. Directions for safe "
     "use are looked for there too.",
     "Annexes III to VI of Regulation (EC) No 1223/2009; 21 CFR 740.17"},
}};

}  // namespace

const FindingInfo* find_info(std::string_view id) {
  const std::string wanted = text::fold(id);
  const auto found = std::find_if(
      all.begin(), all.end(), [&](const FindingInfo& one) { return text::fold(one.id) == wanted; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace sudsmark::label
