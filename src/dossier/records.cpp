// Headings 9 and 10: effects, claims, the file.
#include <string>

#include "dossier/gathering.h"
#include "wording/words.h"

namespace sudsmark::dossier {

void add_records(const Gathering& to) {
  to.entry(9, "known here", "none: a formula says nothing of people who used it.");
  std::vector<std::string> claims;
  for (const blend::StatedWord& one : to.blend.claims) claims.push_back(one.text);
  if (!claims.empty()) {
    const std::size_t count = claims.size();
    to.entry(10, "claims", wording::joined(claims) + ".");
    to.question({10, Answerer::maker, "What shows that each claim is true?",
                 "Claims are held against the common criteria of Regulation (EU) No 655/2013.",
                 std::move(claims), count});
  }
  for (const MarketLabel& label : to.checked.labels) {
    std::string list;
    for (const LabelIngredient& one : label.ingredients) {
      list += (list.empty() ? "" : ", ") + one.name;
    }
    to.entry(10, "ingredient list, " + label.market, list + ".");
  }
  std::size_t broken = 0;
  for (const Finding& one : to.checked.findings) {
    const bool fails = one.kind == Kind::fail || one.kind == Kind::review;
    if (!fails || one.level != Level::error || one.allowed) continue;
    ++broken;
    to.entry(10, "against it", one.message + " [" + one.rule + "]", one.sources);
  }
  if (broken == 0) {
    to.entry(10, "checks",
             "no check of this program forbids it by the law of " + to.checked.on +
                 ". That is no conclusion of safety.");
  }
}

}  // namespace sudsmark::dossier
