// Labels in words that can be read aloud to a printer.
#include <sudsmark/report.h>

#include <utility>
#include <vector>

#include "report/label/label_words.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::harmless;

std::string padded(std::string text, std::size_t width) {
  if (text.size() < width) text.append(width - text.size(), ' ');
  return text;
}

/// The entry in square brackets, behind what it asks for.
std::string behind(const std::string& entry, const std::vector<std::string>& markets,
                   std::size_t all) {
  const std::string words = report::entry_words(entry, markets, all);
  return words.empty() ? words : " [" + words + "]";
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
    for (const auto& labels : report::printing_alike(formula.labels)) print(formula, labels);
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
    line("Label of \"" + harmless(formula.name) + "\" for " +
         wording::joined(report::markets_of(labels)));
    line(report::by_the_law(formula));
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
           report::group_words(one.group));
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
    item("Allergens: ", report::allergen_words(labels));
    if (verbose_ && !labels.front()->undecided.empty()) {
      item("  undecided: ", harmless(wording::joined(labels.front()->undecided)));
    }
    line("");
  }

  void one_of_words(const LabelWords& one) {
    const std::string words = report::bare_words(one);
    if (report::only_told(one)) {
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
      item("Words to print: ", report::no_words(label));
      line("");
    }
  }

  void points(const std::vector<MarketLabel>& labels) {
    const auto told = report::points_of(labels);
    if (told.empty()) return;
    line("What else has to stand on the pack:");
    for (const auto& [point, markets] : told) {
      item("  - ", point->name + ": " + point->what + behind(point->entry, markets, labels.size()));
      if (!point->condition.empty()) item("    but: ", point->condition);
      if (!point->small.empty()) item("    ", report::small_words(point->small));
      if (verbose_) item("    source: ", wording::words(point->sources));
    }
    line("");
  }

  void one_paper(const LabelPaper& paper, const std::string& entry) {
    item("  - ", paper.paper + (paper.why.empty() ? "" : ": " + paper.why) + entry);
    if (!paper.about.empty()) item("    of: ", harmless(wording::joined(paper.about)));
  }

  void duties(const std::vector<MarketLabel>& labels) {
    const auto told = report::duties_of(labels);
    if (told.empty()) return;
    line("Papers and duties:");
    for (const auto& [paper, markets] : told) {
      one_paper(*paper, behind(paper->entry, markets, labels.size()));
    }
    line("");
  }

  void papers(const std::vector<LabelPaper>& list) {
    if (list.empty()) return;
    line("Papers that a safety assessment will ask for, and that the formula does not have:");
    for (const LabelPaper& paper : list) one_paper(paper, behind(paper.entry, {}, 0));
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
