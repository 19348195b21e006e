#include "report/check/html_overview.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "report/check/html_parts.h"
#include "report/digest.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"

namespace sudsmark::report {
namespace {

constexpr std::size_t most_rules = 10;

}  // namespace

AtAGlance::Gravest AtAGlance::gravest(const Finding& finding) {
  const bool weighs = finding.level > Level::note && !finding.allowed &&
                      finding.standing != Standing::unchanged && gravity(finding) > 0;
  if (!weighs) return Gravest::nothing;
  if (finding.kind == Kind::open) return Gravest::unknown;
  if (finding.kind == Kind::review) return Gravest::depends;
  return finding.level == Level::error ? Gravest::must_change : Gravest::should_change;
}

std::string_view AtAGlance::heading_of(Gravest gravest) {
  constexpr std::array<std::string_view, 5> words{
      "Nothing to change", "Not known", "Depends on true figures", "Should change", "Must change"};
  return words.at(static_cast<std::size_t>(gravest));
}

void AtAGlance::add(const FormulaResult& formula, const std::string& address) {
  sum_.add(formula);
  Line line;
  const Finding* first = nullptr;
  for (const Finding& finding : formula.findings) {
    const Gravest weight = gravest(finding);
    if (weight == Gravest::nothing || weight < line.gravest) continue;
    if (weight > line.gravest) {
      line = {weight, 0, {}};
      first = nullptr;
    }
    ++line.findings;
    if (first == nullptr || weighs_more(finding, *first, rules_)) first = &finding;
  }
  Markup page(ascii_);
  page.open("li");
  page.open("a", {{"href", address}});
  page.name(formula.name);
  page.close();
  if (first != nullptr) {
    page.open("p");
    write_prose(page,
                capital(subject_prefix(first->subject_kind, first->subject) + first->message));
    if (line.findings > 1) page.text(" (and " + std::to_string(line.findings - 1) + " more)");
    page.close();
  }
  write_tally(page, formula);
  page.open("p", {{"class", "of"}});
  page.name(formula.file);
  page.close();
  page.close();
  line.markup = page.taken();
  lines_.push_back(std::move(line));
}

std::string AtAGlance::title() const {
  return capital(in_words(lines_.size())) +
         (lines_.size() == 1 ? " formula, checked" : " formulas, checked");
}

void AtAGlance::write_sum(Markup& page) const {
  page.element("p", {{"class", "verdict"}}, sum_.sum() + ".");
  const auto most = sum_.broken_most(most_rules);
  if (most.empty()) return;
  Table table(page, "What most of them break", {"Rule", "Formulas", "Called"}, "stack most");
  for (const auto& [id, count] : most) {
    const auto at = parts_.ruleset.find_rule(id);
    table.row();
    table.open_cell();
    write_prose(page, at ? parts_.ruleset.rules[*at].words->title : id);
    table.close_cell();
    table.cell(std::to_string(count), "figure");
    table.open_cell();
    page.element("code", id);
    table.close_cell();
    table.end_row();
  }
}

void AtAGlance::write(Markup& page) {
  if (lines_.empty()) return;
  write_sum(page);
  std::stable_sort(lines_.begin(), lines_.end(), [](const Line& a, const Line& b) {
    return std::pair(a.gravest, a.findings) > std::pair(b.gravest, b.findings);
  });
  for (auto from = lines_.begin(); from != lines_.end();) {
    const auto to = std::find_if(from, lines_.end(),
                                 [&](const Line& one) { return one.gravest != from->gravest; });
    page.element("h2", std::string(heading_of(from->gravest)) + ": " + std::to_string(to - from));
    page.open("ul", {{"class", "formulas"}});
    for (; from != to; ++from) page.constant(from->markup);
    page.close();
  }
}

}  // namespace sudsmark::report
