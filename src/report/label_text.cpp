// Labels in words that can be read aloud to a printer.
#include <sudsmark/label.h>

#include "wording/citations.h"
#include "wording/code_points.h"
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

class Writing {
 public:
  explicit Writing(bool verbose) : verbose_(verbose) {}

  void formula(const FormulaResult& formula) {
    if (formula.labels.empty()) {
      line("Label of \"" + harmless(formula.name) + "\": it names no market. Write e.g. `market " +
           "GB, EU` into the formula, or give --market.");
      line("");
    }
    for (const MarketLabel& label : formula.labels) market(formula, label);
    papers("What a safety assessment will ask for and the formula does not answer", formula.papers);
  }

  [[nodiscard]] std::string finished() && {
    text_ += std::string(reminder) + "\n";
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

  void market(const FormulaResult& formula, const MarketLabel& label) {
    line("Label of \"" + harmless(formula.name) + "\" for " + label.market);
    line("by the law of " + formula.on +
         (formula.first_sold.empty() ? ", first sold that day"
                                     : ", first sold " + formula.first_sold));
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
    allergens(label);
    if (!label.doubts.empty()) {
      line("What is not certain:");
      for (const std::string& doubt : label.doubts) item("  - ", harmless(doubt));
      line("");
    }
    words(label);
    points(label);
    papers("Papers and duties for " + label.market, label.duties);
  }

  void allergens(const MarketLabel& label) {
    if (label.allergens_known == 0) {
      line("Allergens: no list of names was found in force here.");
    } else {
      line("Allergens: " + std::to_string(label.allergens_known) + " names looked at.");
    }
    if (verbose_ && !label.undecided.empty()) {
      item("  undecided: ", harmless(wording::joined(label.undecided)));
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
      line(one.exact ? "    exactly these words"
                     : "    in this sense; look up how the law prints it");
    }
    if (!one.condition.empty()) item("    asked for: ", one.condition);
    if (verbose_) item("    source: ", wording::words(one.sources));
  }

  void words(const MarketLabel& label) {
    for (const bool certain : {true, false}) {
      bool fresh = true;
      for (const LabelWords& one : label.words) {
        if (one.certain != certain) continue;
        if (fresh) line(certain ? "Words to print:" : "Words to print if the condition holds:");
        fresh = false;
        one_of_words(one);
      }
      if (!fresh) line("");
    }
    if (label.words.empty()) {
      line("Words to print: none that the tables know.");
      line("");
    }
  }

  void points(const MarketLabel& label) {
    if (label.points.empty()) return;
    line("What else has to stand on the pack:");
    for (const LabelPoint& point : label.points) {
      item("  - ", point.name + ": " + point.what + " [" + point.entry + "]");
      if (!point.condition.empty()) item("    but: ", point.condition);
      if (!point.small.empty()) item("    ", small_words(point.small));
      if (verbose_) item("    source: ", wording::words(point.sources));
    }
    line("");
  }

  void papers(const std::string& title, const std::vector<LabelPaper>& list) {
    if (list.empty()) return;
    line(title + ":");
    for (const LabelPaper& paper : list) {
      item("  - ", paper.paper + (paper.why.empty() ? "" : ": " + paper.why) +
                       (paper.entry.empty() ? "" : " [" + paper.entry + "]"));
      if (!paper.about.empty()) item("    of: ", harmless(wording::joined(paper.about)));
    }
    line("");
  }

  bool verbose_;
  std::string text_;
};

}  // namespace

std::string label_text(const RunResult& run, const TextOptions& options) {
  Writing writing(options.verbose);
  for (const FormulaResult& formula : run.formulas) writing.formula(formula);
  std::string out = std::move(writing).finished();
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark
