#include "report/explain/course.h"

#include <algorithm>
#include <map>

#include <sudsmark/check.h>

#include "drill/layout.h"
#include "drill/sheet.h"
#include "front/parts.h"
#include "text/name.h"
#include "wording/citations.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

/// Every measure of a model card with its amounts in the middle of their windows, in words.
std::map<std::string, std::string> figures_of(const rules::Training& training,
                                              const std::string& name, const Rulesets& rulesets) {
  std::map<std::string, std::string> out;
  for (const rules::ModelCard& card : training.cards) {
    if (card.name != name) continue;
    drill::Sheet sheet = drill::read_sheet(card.formula);
    drill::take_middles(sheet);
    CheckOptions options;
    options.verdicts = false;
    options.measures = true;
    const RunResult run =
        check({"card.formula", drill::write(sheet, drill::Style::fills).text}, rulesets, options);
    for (const FormulaResult& formula : run.formulas) {
      for (const MeasureResult& measure : formula.measures) {
        out[measure.name] = wording::printed(measure.figure);
      }
    }
  }
  return out;
}

/// A line of the working with the figures in their places.
std::string filled(std::string_view line, const std::map<std::string, std::string>& figures) {
  std::string out;
  while (!line.empty()) {
    const std::size_t open = std::min(line.find('{'), line.size());
    out += line.substr(0, open);
    line.remove_prefix(open);
    const std::size_t close = line.find('}');
    if (close == std::string_view::npos) break;
    const auto known = figures.find(std::string(line.substr(1, close - 1)));
    out += known == figures.end() ? "unknown" : known->second;
    line.remove_prefix(close + 1);
  }
  return out;
}

void write_limits(const rules::Chapter& chapter, const front::Parts& parts, wording::Page& page) {
  for (const rules::Rule& rule : parts.ruleset.rules) {
    const std::string& file = parts.ruleset.files[rule.file].name;
    const auto& own = chapter.subjects;
    if (std::find(own.begin(), own.end(), file) == own.end()) continue;
    const auto notes = wording::notes(rule.sources, parts.catalogue);
    std::string source = notes.empty() ? std::string() : wording::words(notes.front());
    if (notes.size() > 1) source += "; and " + std::to_string(notes.size() - 1) + " more";
    page.entry(rule.id, rule.words->title + (source.empty() ? "" : " (" + source + ")"));
  }
}

}  // namespace

void write_contents(const Rulesets& rulesets, wording::Page& page) {
  const rules::Training& training = *front::parts(rulesets).ruleset.training;
  page.heading("The course for new staff");
  page.gap();
  page.paragraph(
      "One chapter after the other; each ends with what to practise. `sudsmark explain course "
      "NAME` shows a chapter, and `--format html=FOLDER/` writes all of them as pages.");
  page.gap();
  std::size_t number = 0;
  for (const rules::Chapter& chapter : training.chapters) {
    page.entry(std::to_string(++number), chapter.name + ": " + chapter.title);
  }
}

void write_chapter(const rules::Chapter& chapter, const Rulesets& rulesets, wording::Page& page) {
  const front::Parts& parts = front::parts(rulesets);
  const rules::Training& training = *parts.ruleset.training;
  page.heading(chapter.title);
  page.gap();
  page.paragraph(chapter.what);
  page.gap();
  page.heading("Why it matters");
  page.paragraph(chapter.why);
  page.gap();
  page.heading(chapter.sum + ", on the card '" + chapter.card + "'");
  const auto figures = figures_of(training, chapter.card, rulesets);
  std::size_t number = 0;
  for (const std::string& line : chapter.working) {
    page.entry(std::to_string(++number), filled(line, figures));
  }
  page.gap();
  page.heading("Limits, and where they come from");
  write_limits(chapter, parts, page);
  page.gap();
  page.heading("What goes wrong in practice");
  for (const std::string& line : chapter.practice) page.entry("-", line);
  page.gap();
  page.heading("Where the law stops and the assessor decides");
  page.paragraph(chapter.assessor);
  page.gap();
  page.heading("What can hurt, and what to do first");
  for (const rules::Caution& caution : training.cautions) {
    const auto& own = chapter.cautions;
    if (std::find(own.begin(), own.end(), caution.name) == own.end()) continue;
    page.entry(caution.name, caution.words);
    if (!caution.first_aid.empty()) page.entry("first aid", caution.first_aid);
    if (const auto source = parts.catalogue.find_citation(caution.source)) {
      page.entry("source", wording::words(wording::notes({*source}, parts.catalogue)));
    }
  }
  page.paragraph(
      "Whom to ask: the data sheet's own telephone number, a poison centre or a doctor for a "
      "person; the supplier for a material; the assessor for a product.");
  page.gap();
  std::string practise = "To practise: sudsmark drill";
  for (const std::string& subject : chapter.subjects) practise += " " + subject;
  page.paragraph(practise);
}

const rules::Chapter* find_chapter(std::string_view topic, const Rulesets& rulesets) {
  const std::string folded = text::fold(topic);
  for (const rules::Chapter& chapter : front::parts(rulesets).ruleset.training->chapters) {
    if (folded == "course " + text::fold(chapter.name)) return &chapter;
  }
  return nullptr;
}

std::string address(const rules::Chapter& chapter) {
  std::string out = chapter.name;
  std::replace(out.begin(), out.end(), ' ', '-');
  return out + ".html";
}

}  // namespace sudsmark::report
