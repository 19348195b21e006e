// Labels in words that can be read aloud to a printer.
#include <sudsmark/report.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::harmless;

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

std::string padded(std::string text, std::size_t width) {
  if (text.size() < width) text.append(width - text.size(), ' ');
  return text;
}

/// "[Art. 19 (1) (a)]", with the markets before it where not all of the formula's are meant.
std::string entry_words(const std::string& entry, const std::vector<std::string>& markets,
                        std::size_t all) {
  std::string out;
  if (markets.size() < all) out = wording::joined(markets);
  if (!entry.empty()) out += (out.empty() ? "" : ": ") + entry;
  return out.empty() ? out : " [" + out + "]";
}

/// Things of several markets, each told once with the markets that ask for it.
template <typename Thing>
struct Told {
  const Thing* thing = nullptr;
  std::vector<std::string> markets;
};

/// Goes over what each label has, joins what is alike, and keeps the order.
template <typename Thing, typename Same>
std::vector<Told<Thing>> told_once(const std::vector<MarketLabel>& labels,
                                   std::vector<Thing> MarketLabel::*list, const Same& same) {
  std::vector<Told<Thing>> out;
  for (const MarketLabel& label : labels) {
    for (const Thing& thing : label.*list) {
      const auto known = std::find_if(
          out.begin(), out.end(), [&](const Told<Thing>& one) { return same(*one.thing, thing); });
      if (known == out.end()) {
        out.push_back({&thing, {label.market}});
      } else if (known->markets.back() != label.market) {
        known->markets.push_back(label.market);
      }
    }
  }
  return out;
}

/// Whether two markets print the same list with the same words and doubts.
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

class Writing {
 public:
  explicit Writing(bool verbose) : verbose_(verbose) {}

  void formula(const FormulaResult& formula) {
    if (!formula.against_making.empty()) {
      std::vector<std::string> reasons;
      for (const std::string& one : formula.against_making) reasons.push_back(harmless(one));
      wording::Page page;
      page.frame(wording::not_to_be_made, reasons);
      text_ += page.text() + "\n";
    }
    if (formula.labels.empty()) {
      line("Label of \"" + harmless(formula.name) + "\": it names no market. Write e.g. `market " +
           "GB, EU` into the formula, or give --market.");
      line("");
    }
    std::vector<std::vector<const MarketLabel*>> alike;
    for (const MarketLabel& label : formula.labels) {
      const auto group = std::find_if(alike.begin(), alike.end(), [&](const auto& labels) {
        return same_print(*labels.front(), label);
      });
      if (group == alike.end()) {
        alike.push_back({&label});
      } else {
        group->push_back(&label);
      }
    }
    for (const auto& labels : alike) print(formula, labels);
    points(formula.labels);
    duties(formula.labels);
    papers(formula.papers);
  }

  [[nodiscard]] std::string finished() && {
    if (!text_.empty()) text_ += std::string(reminder) + "\n";
    return std::move(text_);
  }

 private:
  void line(const std::string& words) { text_ += words + "\n"; }

  /// Words under a mark, broken at spaces so that no line is longer than a terminal is wide.
  void item(const std::string& mark, const std::string& words) {
    constexpr std::size_t width = 96;
    const std::string indent(mark.size(), ' ');
    std::string row = mark;
    bool fresh = true;
    std::size_t at = 0;
    while (at < words.size()) {
      std::size_t end = words.find(' ', at);
      if (end == std::string::npos) end = words.size();
      if (!fresh && row.size() + 1 + (end - at) > width) {
        line(row);
        row = indent;
        fresh = true;
      }
      if (!fresh) row += ' ';
      row.append(words, at, end - at);
      fresh = false;
      at = end + 1;
    }
    line(row);
  }

  /// One list, for all markets that print the same.
  void print(const FormulaResult& formula, const std::vector<const MarketLabel*>& labels) {
    const MarketLabel& label = *labels.front();
    std::vector<std::string> markets;
    for (const MarketLabel* one : labels) markets.push_back(one->market);
    line("Label of \"" + harmless(formula.name) + "\" for " + wording::joined(markets));
    line("by the law of " + formula.on +
         (formula.batch_made.empty() ? ", of a batch made that day"
                                     : ", of a batch made " + formula.batch_made) +
         (formula.on_sale_since.empty() ? "" : ", on sale since " + formula.on_sale_since));
    line("");
    std::string list;
    for (const LabelIngredient& one : label.ingredients) {
      list += (list.empty() ? "" : ", ") + harmless(one.name);
    }
    item("  ", "Ingredients: " + list);
    line("");
    line("How this order comes about:");
    std::size_t number = 0;
    for (const LabelIngredient& one : label.ingredients) {
      const std::string at = std::to_string(++number);
      line("  " + std::string(at.size() < 2 ? 1 : 0, ' ') + at + ". " +
           padded(harmless(one.name), 40) + "  " + padded(wording::printed(one.share), 18) + "  " +
           group_words(one.group));
    }
    line("");
    allergens(labels);
    if (!label.doubts.empty()) {
      line("What is not certain:");
      for (const std::string& doubt : label.doubts) item("  - ", harmless(doubt));
      line("");
    }
    words(label);
  }

  void allergens(const std::vector<const MarketLabel*>& labels) {
    std::string words;
    for (const MarketLabel* label : labels) {
      if (!words.empty()) words += ", ";
      words += label->allergens_known == 0 ? std::string("no list of names was found in force")
                                           : std::to_string(label->allergens_known) + " names" +
                                                 (words.empty() ? " looked at" : "");
      if (labels.size() > 1) words += " in " + label->market;
    }
    std::size_t declared = 0;
    for (const LabelIngredient& one : labels.front()->ingredients) {
      if (one.group == LabelGroup::allergen) ++declared;
    }
    if (declared > 0) {
      words += "; " + std::to_string(declared) + (declared == 1 ? " is" : " are") + " in the list";
    }
    const std::size_t open = labels.front()->undecided.size();
    if (open > 0) words += "; " + std::to_string(open) + " could not be decided";
    item("Allergens: ", words + ".");
    if (verbose_ && !labels.front()->undecided.empty()) {
      item("  undecided: ", harmless(wording::joined(labels.front()->undecided)));
    }
    line("");
  }

  void one_of_words(const LabelWords& one) {
    const bool told = !one.words.empty() && one.words.front() == '(';
    std::string words = one.words;
    if (told) {
      words = words.substr(1, words.size() - 2);
      item("  - ", words + " [" + one.entry + "]");
    } else {
      item("  - ", "\"" + words + "\" [" + one.entry + "]");
      line(one.exact ? "    exactly these words" : "    in this sense");
    }
    if (!one.condition.empty()) item("    when: ", one.condition);
    if (verbose_) item("    source: ", wording::words(one.sources));
  }

  void words(const MarketLabel& label) {
    for (const bool certain : {true, false}) {
      bool fresh = true;
      for (const LabelWords& one : label.words) {
        if (one.certain != certain) continue;
        if (fresh) line(certain ? "Words to print:" : "Words to print if they are asked for:");
        fresh = false;
        one_of_words(one);
      }
      if (!fresh) line("");
    }
    if (label.words.empty()) {
      const bool annex = label.market == "EU" || label.market == "NI" || label.market == "GB";
      item("Words to print: ",
           std::string("none that the law prescribes was found.") +
               (annex ? " Art. 19 (1) (d) asks for whatever precautions the assessor sets."
                      : " A hazard to health asks for a warning all the same."));
      line("");
    }
  }

  void points(const std::vector<MarketLabel>& labels) {
    const auto told =
        told_once(labels, &MarketLabel::points, [](const LabelPoint& a, const LabelPoint& b) {
          return a.name == b.name && a.what == b.what && a.entry == b.entry;
        });
    if (told.empty()) return;
    line("What else has to stand on the pack:");
    for (const auto& [point, markets] : told) {
      item("  - ",
           point->name + ": " + point->what + entry_words(point->entry, markets, labels.size()));
      if (!point->condition.empty()) item("    but: ", point->condition);
      if (!point->small.empty()) item("    ", small_words(point->small));
      if (verbose_) item("    source: ", wording::words(point->sources));
    }
    line("");
  }

  void one_paper(const LabelPaper& paper, const std::string& entry) {
    item("  - ", paper.paper + (paper.why.empty() ? "" : ": " + paper.why) + entry);
    if (!paper.about.empty()) item("    of: ", harmless(wording::joined(paper.about)));
  }

  void duties(const std::vector<MarketLabel>& labels) {
    const auto told =
        told_once(labels, &MarketLabel::duties, [](const LabelPaper& a, const LabelPaper& b) {
          return a.paper == b.paper && a.why == b.why && a.entry == b.entry && a.about == b.about;
        });
    if (told.empty()) return;
    line("Papers and duties:");
    for (const auto& [paper, markets] : told) {
      one_paper(*paper, entry_words(paper->entry, markets, labels.size()));
    }
    line("");
  }

  void papers(const std::vector<LabelPaper>& list) {
    if (list.empty()) return;
    line("Papers that a safety assessment will ask for, and that the formula does not have:");
    for (const LabelPaper& paper : list) one_paper(paper, entry_words(paper.entry, {}, 0));
    line("");
  }

  bool verbose_;
  std::string text_;
};

}  // namespace

namespace report {

std::string label_text(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  Writing writing(options.verbose);
  for (const FormulaResult& formula : run.formulas) writing.formula(formula);
  std::string out = std::move(writing).finished();
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace report
}  // namespace sudsmark
