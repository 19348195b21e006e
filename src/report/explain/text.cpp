// `explain`: all about one name, whatever it names.
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/report.h>

#include "front/parts.h"
#include "measures/registry.h"
#include "report/explain/course.h"
#include "report/explain/explain_catalogue.h"
#include "report/explain/explain_law.h"
#include "report/explain/topics.h"
#include "rules/side.h"
#include "text/name.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::Page;

void explain_rule(const rules::Rule& rule, const front::Parts& parts, Page& page) {
  const rules::RuleFile& file = parts.ruleset.files[rule.file];
  page.heading(rule.id + ", a rule: " + rule.words->title);
  page.gap();
  page.entry("subject", file.subject + " (" + std::string(authority_word(file.authority)) + ")");
  if (!file.markets.empty()) page.entry("markets", wording::joined(file.markets));
  if (rule.pair) page.entry("asked of", "a tweak and its base");
  if (!rule.words->when_text.empty()) page.entry("asked when", rule.words->when_text);
  if (!rule.words->expect_text.empty()) page.entry("must hold", rule.words->expect_text);
  if (rule.decided_by == "label") {
    page.entry("held against", "what `sudsmark label` says of the formula");
  }
  if (rule.decided_by == "claims") {
    page.entry("held against", "the words of the table `claim-words`, in its name and `claims`");
  }
  if (rule.decided_by == "traces") {
    page.entry("held against", "the sums of what the formula states as `traces`");
  }
  if (rule.words->paper.empty()) {
    page.entry("otherwise", wording::level_word(rule.otherwise));
  } else {
    std::string paper;
    for (const rules::MessagePart& part : rule.words->paper) {
      paper += part.text;
      if (part.value) paper += "{" + part.value_text + "}";
    }
    page.entry("otherwise", "open, until there is " + paper);
  }
  if (rule.undecided != Level::note) {
    page.entry("not known", wording::level_word(rule.undecided));
  }
  for (const SourceNote& note : wording::notes(rule.sources, parts.catalogue)) {
    page.entry("source", wording::words(note));
  }
  if (!rule.words->why.empty()) {
    page.gap();
    page.paragraph(rule.words->why);
  }
  if (!rule.words->remedy.empty()) {
    page.gap();
    page.paragraph("What to change: " + rule.words->remedy);
  }
}

void explain_measure(const measures::Measure& measure, Page& page) {
  page.heading(std::string(measure.name) + ", a measure");
  page.gap();
  page.entry("unit", measure.unit);
  page.entry("meaning", measure.meaning);
  page.entry("source", measure.source);
  if (!measure.about.empty()) {
    page.gap();
    page.paragraph(measure.about);
  }
}

void explain_named(const rules::NamedMeasure& measure, Page& page) {
  page.heading(measure.name + ", a measure of the rulesets");
  page.gap();
  page.entry("unit", measure.unit);
  if (!measure.meaning.empty()) page.entry("meaning", measure.meaning);
  page.entry("is", measure.text);
}

void list_measures(const front::Parts& parts, Page& page) {
  page.heading("Measures");
  page.gap();
  const auto line = [&](std::string_view name, std::string_view unit, std::string_view meaning) {
    std::string label(name);
    if (label.size() < 22) label.append(22 - label.size(), ' ');
    page.entry(label, std::string(unit) + (meaning.empty() ? "" : ": " + std::string(meaning)));
  };
  for (const measures::Measure& measure : measures::all()) {
    line(measure.name, measure.unit, measure.meaning);
  }
  for (const rules::NamedMeasure& measure : parts.ruleset.measures) {
    line(measure.name, measure.unit, measure.meaning.empty() ? measure.text : measure.meaning);
  }
  page.gap();
  page.paragraph(
      "A rule over a tweak and its base asks either of them: base.oils, tweak.oils, "
      "base.share(oil), base.forming.");
}

/// Names near to one that nothing is called by.
std::vector<std::string> near_names(std::string_view name, const front::Parts& parts) {
  std::vector<std::string> known;
  for (const rules::Rule& rule : parts.ruleset.rules) known.push_back(rule.id);
  for (const measures::Measure& measure : measures::all()) known.emplace_back(measure.name);
  for (const rules::NamedMeasure& measure : parts.ruleset.measures) known.push_back(measure.name);
  for (const catalogue::ProductKind& kind : parts.catalogue.products) known.push_back(kind.name);
  for (const rules::Chapter& chapter : parts.ruleset.training->chapters) {
    known.push_back("course " + chapter.name);
  }
  for (const catalogue::Material& material : parts.catalogue.materials) {
    known.push_back(material.name);
    for (const catalogue::Synonym& synonym : material.synonyms) known.push_back(synonym.word);
  }
  return text::nearest(name, known);
}

}  // namespace

namespace report {

void write_topic(std::string_view name, const Rulesets& rulesets, Page& page) {
  const front::Parts& parts = front::parts(rulesets);
  if (text::fold(name) == "course") write_contents(rulesets, page);
  if (const auto* chapter = find_chapter(name, rulesets)) write_chapter(*chapter, rulesets, page);
  if (name == "measures") list_measures(parts, page);
  if (name == "law") report::explain_law(parts.catalogue, page);
  if (const auto rule = parts.ruleset.find_rule(name)) {
    const std::string renamed = parts.ruleset.renamed(name);
    if (!renamed.empty()) page.paragraph(renamed + ".");
    explain_rule(parts.ruleset.rules[*rule], parts, page);
  }
  if (const auto measure = measures::find(name)) {
    explain_measure(measures::all()[*measure], page);
  } else if (const auto named = parts.ruleset.find_measure(name)) {
    explain_named(parts.ruleset.measures[*named], page);
  }
  if (const catalogue::ProductKind* kind = parts.catalogue.find_product(name)) {
    report::explain_product(*kind, parts.catalogue, page);
  }
  for (const catalogue::MaterialIndex index : parts.catalogue.find_material(name).materials) {
    report::explain_material(parts.catalogue.materials[index], parts.catalogue, page);
  }
  // a name that a rule asks of one of two formulas
  const rules::Sided asked = rules::sided(name);
  if (page.text().empty() && asked.side != rules::Side::own)
    write_topic(asked.name, rulesets, page);
}

}  // namespace report

Result<Topic> find_topic(std::string_view name, const Rulesets& rulesets) {
  const front::Parts& parts = front::parts(rulesets);
  Page page;
  report::write_topic(name, rulesets, page);
  if (!page.text().empty()) return {Topic{std::string(name)}, {}};
  const auto near = near_names(rules::sided(name).name, parts);
  std::string words = "'" + std::string(name) +
                      "' is no rule, measure, material or kind of product" +
                      (near.empty() ? std::string() : "; perhaps " + text::listed(near));
  return {{}, {{{}, 0, 0, std::move(words), {}}}};
}

namespace report {

std::string explain_text(const Topic& topic, const Rulesets& rulesets,
                         const ReportOptions& options) {
  Page page;
  write_topic(topic.name, rulesets, page);
  page.gap();
  page.paragraph(reminder);
  return options.ascii ? wording::in_ascii(page.text()) : page.text();
}

}  // namespace report
}  // namespace sudsmark
