// The head of a check sheet: the verdict in words, and how many there are of each kind.
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

}  // namespace

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

void write_head(const FormulaPage& view) {
  Markup& page = view.page;
  page.open("header", {{"class", "head"}});
  write_name(view);
  page.open("p", {{"class", "of"}});
  write_file(view);
  page.text(", checked by the rules in force on ");
  page.element("time", {{"datetime", view.formula.on}}, view.formula.on);
  page.close();
  page.element("p", {{"class", "verdict"}}, verdict_words(view.formula));
  write_tally(page, view.formula);
  write_particulars(view);
  page.close();
}

}  // namespace sudsmark::report
