// What the parts of a page share: sections, marks, references to sources; and the head of a sheet.
#include <array>
#include <string>

#include "report/html_parts.h"
#include "report/verdict_words.h"

namespace sudsmark::report {

namespace {

struct Count {
  Mark mark;
  std::size_t count;
  std::string_view words;
};

void write_particulars(const Sheet& sheet) {
  if (sheet.formula.particulars.empty()) return;
  sheet.page.open("dl", {{"class", "card"}});
  for (const Particular& particular : sheet.formula.particulars) {
    sheet.page.open("div");
    sheet.page.element("dt", particular.name);
    sheet.page.open("dd");
    sheet.page.name(particular.words);
    if (particular.assumed) sheet.page.element("small", " usual for it");
    sheet.page.close();
    sheet.page.close();
  }
  sheet.page.close();
}

}  // namespace

void open_section(const Sheet& sheet, const std::string& id, std::string_view title) {
  const std::string name = sheet.prefix + id;
  sheet.page.open("section",
                  {{"id", name}, {"aria-labelledby", name + "-title " + sheet.prefix + "name"}});
  sheet.page.element(sheet.level == 2 ? "h2" : "h3", {{"id", name + "-title"}}, title);
  sheet.page.open("div", {{"class", "body"}});
}

void heading(const Sheet& sheet, std::string_view words) {
  sheet.page.element(sheet.level == 2 ? "h3" : "h4", words);
}

void close_section(const Sheet& sheet) {
  sheet.page.close();
  sheet.page.close();
}

void draw_mark(Markup& page, Mark mark) {
  page.open("svg", {{"class", "mark"},
                    {"viewBox", "0 0 12 12"},
                    {"aria-hidden", "true"},
                    {"focusable", "false"}});
  const auto ring = [&] {
    page.empty("circle", {{"class", "ring"}, {"cx", "6"}, {"cy", "6"}, {"r", "4.2"}});
  };
  switch (mark) {
    case Mark::broken:
      page.empty("path", {{"class", "cross"}, {"d", "M2 2L10 10M10 2L2 10"}});
      break;
    case Mark::noted:
      page.empty("path", {{"class", "edge"}, {"d", "M6 1.2L10.8 6L6 10.8L1.2 6z"}});
      break;
    case Mark::perhaps:
      ring();
      page.empty("path", {{"class", "solid maybe"}, {"d", "M6 1.8A4.2 4.2 0 0 1 6 10.2z"}});
      break;
    case Mark::unknown:
      ring();
      break;
    case Mark::kept:
      page.empty("circle", {{"class", "solid kept"}, {"cx", "6"}, {"cy", "6"}, {"r", "4.2"}});
      break;
    case Mark::allowed:
      ring();
      page.empty("path", {{"class", "bar"}, {"d", "M3 6H9"}});
      break;
    case Mark::outside:
      page.empty("path", {{"class", "bar"}, {"d", "M3 6H9"}});
      break;
  }
  page.close();
}

Tone tone_of(Mark mark) {
  switch (mark) {
    case Mark::broken:
      return Tone::loud;
    case Mark::perhaps:
      return Tone::perhaps;
    case Mark::noted:
    case Mark::unknown:
    case Mark::kept:
    case Mark::allowed:
    case Mark::outside:
      break;
  }
  return Tone::quiet;
}

void write_tally(Markup& page, const FormulaResult& formula) {
  const Tally of = tally(formula);
  const std::array counts{Count{Mark::broken, of.must + of.should, "to change"},
                          Count{Mark::perhaps, of.perhaps, "may be broken"},
                          Count{Mark::unknown, of.undecided, "not known"},
                          Count{Mark::noted, of.noted, "worth knowing"},
                          Count{Mark::allowed, of.allowed, "allowed"},
                          Count{Mark::kept, of.kept, "kept"},
                          Count{Mark::kept, of.from_memory, "kept, by a limit from memory"},
                          Count{Mark::outside, of.outside, "do not apply"}};
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

void write_references(const Sheet& sheet, const std::vector<SourceNote>& notes) {
  const auto numbers = sheet.sources.numbers(notes);
  if (numbers.empty()) return;
  sheet.page.open("span", {{"class", "refs"}});
  sheet.page.text("[");
  for (std::size_t at = 0; at < numbers.size(); ++at) {
    if (at > 0) sheet.page.text(", ");
    const std::string number = std::to_string(numbers[at]);
    sheet.page.element(
        "a",
        {{"href", "#" + sheet.prefix + "source-" + number}, {"aria-label", "source " + number}},
        number);
  }
  sheet.page.text("]");
  sheet.page.close();
}

void write_head(const Sheet& sheet) {
  Markup& page = sheet.page;
  page.open("header", {{"class", "head"}});
  page.open(sheet.level == 2 ? "h1" : "h2", {{"id", sheet.prefix + "name"}});
  page.name(sheet.formula.name);
  page.close();
  page.open("p", {{"class", "of"}});
  page.name(sheet.formula.file);
  page.text(", checked by the rules in force on ");
  page.element("time", {{"datetime", sheet.formula.on}}, sheet.formula.on);
  page.close();
  page.element("p", {{"class", "verdict"}}, verdict_words(sheet.formula));
  write_tally(page, sheet.formula);
  write_particulars(sheet);
  page.close();
}

}  // namespace sudsmark::report
