// One strip at the head of a page: the limits that a maker knows by name, each as a range on its
// band, with the verdict in words.
#include <string>
#include <vector>

#include "report/check/html_parts.h"
#include "report/named_limits.h"
#include "report/prose.h"
#include "report/svg_scale.h"
#include "wording/margin.h"

namespace sudsmark::report {
namespace {

VerdictMark mark_of(const Finding& finding) {
  if (finding.allowed) return VerdictMark::allowed;
  switch (finding.kind) {
    case Kind::fail:
      return finding.level > Level::note ? VerdictMark::broken : VerdictMark::noted;
    case Kind::review:
      return finding.met_from_memory ? VerdictMark::kept : VerdictMark::perhaps;
    case Kind::open:
      return VerdictMark::unknown;
    case Kind::pass:
      return VerdictMark::kept;
    case Kind::not_applicable:
      break;
  }
  return VerdictMark::outside;
}

}  // namespace

void write_strip(const FormulaPage& view) {
  const std::vector<NamedLimit> limits = named_limits(view.formula, view.parts);
  if (limits.empty()) return;
  Markup& page = view.page;
  open_section(view, "glance", "At a glance");
  page.element("p", {{"class", "key"}},
               "The pale band is within the limit, the dark bar where the true figure lies; what "
               "of it is hatched is outside. An arrow goes on without a known end.");
  page.open("ul", {{"class", "strip"}});
  for (const NamedLimit& limit : limits) {
    const VerdictMark mark = mark_of(*limit.finding);
    page.open("li");
    page.element("p", {{"class", "name"}}, capital(limit.name));
    if (limit.measured && !wording::nothing_to_show(*limit.finding)) {
      draw_scale(page, *limit.measured, *limit.limit, limit.name + ": " + limit.words,
                 tone_of(mark));
    }
    page.open("p");
    draw_mark(page, mark);
    page.element("b", limit.verdict);
    if (!limit.words.empty()) {
      page.text(" ");
      prose_element(page, "small", {}, limit.words);
    }
    page.close();
    page.close();
  }
  page.close();
  close_section(view);
}

}  // namespace sudsmark::report
