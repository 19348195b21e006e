#include "report/verdict_mark.h"

namespace sudsmark::report {

void draw_mark(Markup& page, VerdictMark mark) {
  page.open("svg", {{"class", "mark"},
                    {"viewBox", "0 0 12 12"},
                    {"aria-hidden", "true"},
                    {"focusable", "false"}});
  const auto ring = [&] {
    page.empty("circle", {{"class", "ring"}, {"cx", "6"}, {"cy", "6"}, {"r", "4.2"}});
  };
  switch (mark) {
    case VerdictMark::broken:
      page.empty("path", {{"class", "cross"}, {"d", "M2 2L10 10M10 2L2 10"}});
      break;
    case VerdictMark::noted:
      page.empty("path", {{"class", "edge"}, {"d", "M6 1.2L10.8 6L6 10.8L1.2 6z"}});
      break;
    case VerdictMark::perhaps:
      ring();
      page.empty("path", {{"class", "solid maybe"}, {"d", "M6 1.8A4.2 4.2 0 0 1 6 10.2z"}});
      break;
    case VerdictMark::unknown:
      ring();
      break;
    case VerdictMark::kept:
      page.empty("circle", {{"class", "solid kept"}, {"cx", "6"}, {"cy", "6"}, {"r", "4.2"}});
      break;
    case VerdictMark::allowed:
      ring();
      page.empty("path", {{"class", "bar"}, {"d", "M3 6H9"}});
      break;
    case VerdictMark::outside:
      page.empty("path", {{"class", "bar"}, {"d", "M3 6H9"}});
      break;
  }
  page.close();
}

Tone tone_of(VerdictMark mark) {
  switch (mark) {
    case VerdictMark::broken:
      return Tone::loud;
    case VerdictMark::perhaps:
      return Tone::perhaps;
    case VerdictMark::noted:
    case VerdictMark::unknown:
    case VerdictMark::kept:
    case VerdictMark::allowed:
    case VerdictMark::outside:
      break;
  }
  return Tone::quiet;
}

}  // namespace sudsmark::report
