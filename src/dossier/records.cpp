// Headings 9 and 10: effects, claims, the file.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "dossier/gathering.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

struct IngredientList {
  std::string list;
  std::vector<std::string> markets;
};

/// Each list once, with the markets that print it.
std::vector<IngredientList> lists_of(const FormulaResult& checked) {
  std::vector<IngredientList> out;
  for (const MarketLabel& label : checked.labels) {
    std::string list;
    for (const LabelIngredient& one : label.ingredients) {
      list += (list.empty() ? "" : ", ") + one.name;
    }
    const auto same = [&](const IngredientList& one) { return one.list == list; };
    const auto known = std::find_if(out.begin(), out.end(), same);
    if (known == out.end()) {
      out.push_back({std::move(list), {label.market}});
    } else {
      known->markets.push_back(label.market);
    }
  }
  return out;
}

/// How many checks are kept and how far their sources can be trusted, and how many are open.
std::string standing_of(const FormulaResult& checked) {
  std::size_t kept = 0;
  std::size_t quoted = 0;
  std::size_t recalled = 0;
  std::size_t open = 0;
  for (const Finding& one : checked.findings) {
    if (one.kind == Kind::open) ++open;
    if (one.kind != Kind::pass) continue;
    ++kept;
    const auto any = [&](const auto& test) {
      return std::any_of(one.sources.begin(), one.sources.end(), test);
    };
    if (any([](const SourceNote& note) { return note.kind == "from memory"; })) {
      ++recalled;
    } else if (any([](const SourceNote& note) { return note.quoted; })) {
      ++quoted;
    }
  }
  return std::to_string(kept) + " checks are kept; " + std::to_string(recalled) +
         " of them lean on a source that is recalled and " + std::to_string(quoted) +
         " on one that is quoted elsewhere. " + std::to_string(open) + " could not be decided.";
}

}  // namespace

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
  for (const auto& [list, markets] : lists_of(to.checked)) {
    to.entry(10, "ingredient list, " + wording::joined(markets), list + ".");
  }
  to.entry(10, "how sure", standing_of(to.checked));
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
