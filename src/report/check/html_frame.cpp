// What the parts of a page share: sections, marks, references to sources; and the head of a of.
#include <array>
#include <string>

#include "report/check/html_parts.h"
#include "report/verdict_words.h"

namespace sudsmark::report {

namespace {

struct Count {
  VerdictMark mark;
  std::size_t count;
  std::string_view words;
};

void write_particulars(const FormulaPage& view) {
  if (view.formula.particulars.empty()) return;
  view.page.open("dl", {{"class", "card"}});
  for (const Particular& particular : view.formula.particulars) {
    view.page.open("div");
    view.page.element("dt", particular.name);
    view.page.open("dd");
    view.page.name(particular.words);
    if (particular.assumed) view.page.element("small", " usual for it");
    view.page.close();
    view.page.close();
  }
  view.page.close();
}

}  // namespace

const rules::Rule* rule_of(const FormulaPage& view, const Finding& finding) {
  const auto at = view.parts.ruleset.find_rule(finding.rule);
  return at ? &view.parts.ruleset.rules[*at] : nullptr;
}

void open_section(const FormulaPage& view, const std::string& id, std::string_view title) {
  const std::string name = view.prefix + id;
  view.page.open("section",
                 {{"id", name}, {"aria-labelledby", name + "-title " + view.prefix + "name"}});
  view.page.element(view.level == 2 ? "h2" : "h3", {{"id", name + "-title"}}, title);
  view.page.open("div", {{"class", "body"}});
}

void heading(const FormulaPage& view, std::string_view words) {
  view.page.element(view.level == 2 ? "h3" : "h4", words);
}

void close_section(const FormulaPage& view) {
  view.page.close();
  view.page.close();
}

void write_tally(Markup& page, const FormulaResult& formula) {
  const Tally of = tally(formula);
  const std::array counts{
      Count{VerdictMark::broken, of.must, change_word(Level::error)},
      Count{VerdictMark::broken, of.should, change_word(Level::warning)},
      Count{VerdictMark::perhaps, of.perhaps, of.perhaps == 1 ? "depends" : "depend"},
      Count{VerdictMark::unknown, of.undecided, "not known"},
      Count{VerdictMark::noted, of.noted, "worth knowing"},
      Count{VerdictMark::allowed, of.allowed, "allowed"},
      Count{VerdictMark::kept, of.kept, "kept"},
      Count{VerdictMark::kept, of.from_memory, "kept, by a limit from memory"},
      Count{VerdictMark::outside, of.outside, "do not apply"}};
  page.open("ul", {{"class", "tally"}});
  for (const Count& one : counts) {
    if (one.count == 0) continue;
    page.open("li");
    draw_mark(page, one.mark);
    page.element("b", std::to_string(one.count));
    page.text(" ");
    page.text(one.words);
    page.close();
  }
  if (of.fresh > 0) {
    page.element("li", std::to_string(of.fresh) + " new since the baseline");
  }
  page.close();
}

void write_references(const FormulaPage& view, const std::vector<SourceNote>& notes) {
  const auto numbers = view.sources.numbers(notes);
  if (numbers.empty()) return;
  view.page.open("span", {{"class", "refs"}});
  view.page.text("[");
  for (std::size_t at = 0; at < numbers.size(); ++at) {
    if (at > 0) view.page.text(", ");
    const std::string number = std::to_string(numbers[at]);
    view.page.element(
        "a", {{"href", "#" + view.prefix + "source-" + number}, {"aria-label", "source " + number}},
        number);
  }
  view.page.text("]");
  view.page.close();
}

void write_head(const FormulaPage& view) {
  Markup& page = view.page;
  page.open("header", {{"class", "head"}});
  page.open(view.level == 2 ? "h1" : "h2", {{"id", view.prefix + "name"}});
  page.name(view.formula.name);
  page.close();
  page.open("p", {{"class", "of"}});
  page.name(view.formula.file);
  page.text(", checked by the rules in force on ");
  page.element("time", {{"datetime", view.formula.on}}, view.formula.on);
  page.close();
  page.element("p", {{"class", "verdict"}}, verdict_words(view.formula));
  write_tally(page, view.formula);
  write_particulars(view);
  page.close();
}

}  // namespace sudsmark::report
