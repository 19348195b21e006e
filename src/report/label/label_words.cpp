#include "report/label/label_words.h"

#include "wording/words.h"

namespace sudsmark::report {
namespace {

bool same_print(const MarketLabel& a, const MarketLabel& b) {
  const auto ingredient = [](const LabelIngredient& one, const LabelIngredient& other) {
    return one.name == other.name && one.group == other.group;
  };
  const auto words = [](const LabelWords& one, const LabelWords& other) {
    return one.words == other.words && one.entry == other.entry && one.certain == other.certain;
  };
  return a.doubts == b.doubts &&
         std::equal(a.ingredients.begin(), a.ingredients.end(), b.ingredients.begin(),
                    b.ingredients.end(), ingredient) &&
         std::equal(a.words.begin(), a.words.end(), b.words.begin(), b.words.end(), words);
}

}  // namespace

std::string group_words(LabelGroup group) {
  switch (group) {
    case LabelGroup::by_weight:
      return "by weight";
    case LabelGroup::any_order:
      return "in any order";
    case LabelGroup::allergen:
      return "allergen, in any order";
    case LabelGroup::colour:
      return "colour, at the end";
  }
  return {};
}

std::string small_words(const std::string& small) {
  if (small == "leaflet") return "on goods too small for it: a leaflet, tag or card";
  if (small == "notice")
    return "on goods too small even for a leaflet: a notice where they are sold";
  return small.empty() ? std::string() : "on small packs: a " + small;
}

std::string entry_words(const std::string& entry, const std::vector<std::string>& markets,
                        std::size_t all) {
  std::string out;
  if (markets.size() < all) out = wording::joined(markets);
  if (!entry.empty()) out += (out.empty() ? "" : ": ") + entry;
  return out;
}

std::string by_the_law(const FormulaResult& formula) {
  return "by the law of " + formula.on +
         (formula.batch_made.empty() ? ", of a batch made that day"
                                     : ", of a batch made " + formula.batch_made) +
         (formula.on_sale_since.empty() ? "" : ", on sale since " + formula.on_sale_since);
}

std::string allergen_words(const std::vector<const MarketLabel*>& labels) {
  std::string words;
  for (const MarketLabel* label : labels) {
    if (!words.empty()) words += ", ";
    words += label->allergens_known == 0 ? std::string("no list of names was found in force")
                                         : std::to_string(label->allergens_known) + " names" +
                                               (words.empty() ? " looked at" : "");
    if (labels.size() > 1) words += " in " + label->market;
  }
  const auto& list = labels.front()->ingredients;
  const auto declared = std::count_if(list.begin(), list.end(), [](const LabelIngredient& one) {
    return one.group == LabelGroup::allergen;
  });
  if (declared > 0) {
    words += "; " + std::to_string(declared) + (declared == 1 ? " is" : " are") + " in the list";
  }
  const std::size_t open = labels.front()->undecided.size();
  if (open > 0) words += "; " + std::to_string(open) + " could not be decided";
  return words + ".";
}

std::string no_words(const MarketLabel& label) {
  const bool annex = label.market == "EU" || label.market == "NI" || label.market == "GB";
  return std::string("none that the law prescribes was found.") +
         (annex ? " Art. 19 (1) (d) asks for whatever precautions the assessor sets."
                : " A hazard to health asks for a warning all the same.");
}

bool only_told(const LabelWords& words) {
  return !words.words.empty() && words.words.front() == '(';
}

std::string bare_words(const LabelWords& words) {
  return only_told(words) ? words.words.substr(1, words.words.size() - 2) : words.words;
}

std::vector<std::vector<const MarketLabel*>> printing_alike(
    const std::vector<MarketLabel>& labels) {
  std::vector<std::vector<const MarketLabel*>> out;
  for (const MarketLabel& label : labels) {
    const auto group = std::find_if(out.begin(), out.end(), [&](const auto& alike) {
      return same_print(*alike.front(), label);
    });
    if (group == out.end()) {
      out.push_back({&label});
    } else {
      group->push_back(&label);
    }
  }
  return out;
}

std::vector<std::string> markets_of(const std::vector<const MarketLabel*>& labels) {
  std::vector<std::string> out;
  for (const MarketLabel* one : labels) out.push_back(one->market);
  return out;
}

std::vector<Told<LabelPoint>> points_of(const std::vector<MarketLabel>& labels) {
  return told_once(labels, &MarketLabel::points, [](const LabelPoint& a, const LabelPoint& b) {
    return a.name == b.name && a.what == b.what && a.entry == b.entry;
  });
}

std::vector<Told<LabelPaper>> duties_of(const std::vector<MarketLabel>& labels) {
  return told_once(labels, &MarketLabel::duties, [](const LabelPaper& a, const LabelPaper& b) {
    return a.paper == b.paper && a.why == b.why && a.entry == b.entry && a.about == b.about;
  });
}

}  // namespace sudsmark::report
