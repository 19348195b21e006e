// What is kept and how each figure came about, folded by subject.
#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "report/check/html_parts.h"
#include "report/check/html_scales.h"
#include "report/prose.h"
#include "report/verdict_words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

/// The limit that whoever signs looks for first.
constexpr std::string_view signed_for = "scent of its certificate";

ScaleRow row_of(const FormulaPage& view, const Finding& finding) {
  const rules::Rule* rule = rule_of(view, finding);
  ScaleRow row;
  row.title = rule == nullptr ? finding.rule : rule->words->title;
  row.note = finding.subject;
  row.measured = &*finding.measured;
  row.limit = &*finding.limit;
  row.margin = margin(*finding.measured, *finding.limit);
  row.mark = mark_of(row.margin.side);
  row.word = verdict_word(finding);
  return row;
}

bool is_kept(const Finding& finding) {
  return finding.kind == Kind::pass || finding.met_from_memory;
}

/// Rules of one file that are kept.
struct Kept {
  std::string subject;
  rules::Concern concern = rules::Concern::craft;
  bool first = false;  ///< it holds the limit that is looked for first
  std::vector<ScaleRow> rows;
  std::vector<std::string> titles;  ///< of those that have no figure to show
  std::size_t count = 0;
};

std::vector<Kept> kept_by_subject(const FormulaPage& view) {
  std::vector<Kept> out;
  for (const Finding& finding : view.formula.findings) {
    if (!is_kept(finding) || finding.allowed) continue;
    const rules::Rule* rule = rule_of(view, finding);
    const std::string subject =
        rule == nullptr ? "Others" : view.parts.ruleset.files[rule->file].subject;
    auto group = std::find_if(out.begin(), out.end(),
                              [&](const Kept& one) { return one.subject == subject; });
    if (group == out.end()) group = out.insert(group, Kept{subject, {}, false, {}, {}, 0});
    ++group->count;
    if (rule != nullptr) {
      group->concern = std::min(group->concern, rule->words->telling.concern);
      group->first = group->first || rule->words->telling.known_as == signed_for;
    }
    if (!nothing_to_show(finding)) {
      group->rows.push_back(row_of(view, finding));
      continue;
    }
    std::string title = rule == nullptr ? finding.rule : rule->words->title;
    if (!finding.subject.empty()) title += " (" + finding.subject + ")";
    const bool known =
        std::find(group->titles.begin(), group->titles.end(), title) != group->titles.end();
    if (!known) group->titles.push_back(std::move(title));
  }
  std::stable_sort(out.begin(), out.end(), [](const Kept& a, const Kept& b) {
    return std::pair(!a.first, a.concern) < std::pair(!b.first, b.concern);
  });
  return out;
}

std::string sum_of(const Kept& group) {
  std::string out = group.subject + ": " + std::to_string(group.count) + " kept";
  const auto nearest = std::min_element(
      group.rows.begin(), group.rows.end(),
      [](const ScaleRow& a, const ScaleRow& b) { return a.margin.relative < b.margin.relative; });
  if (nearest != group.rows.end()) out += "; nearest: " + nearest->margin.words;
  return out;
}

void write_run_in(Markup& page, const std::vector<std::string>& words) {
  page.open("ul", {{"class", "run-in"}});
  for (const std::string& one : words) prose_element(page, "li", {}, one);
  page.close();
}

/// What is folded stays folded on paper; what is open is printed.
void open_fold(Markup& page, const std::string& words, bool open) {
  if (open) {
    page.open("details", {{"class", "fold"}, {"open", "open"}});
  } else {
    page.open("details", {{"class", "fold"}});
  }
  prose_element(page, "summary", {}, words);
}

}  // namespace

void write_kept(const FormulaPage& view) {
  std::vector<Kept> groups = kept_by_subject(view);
  if (groups.empty()) return;
  Markup& page = view.page;
  open_section(view, "kept", "What is kept, by subject");
  page.element("p", {{"class", "key"}},
               "The nearest to its limit comes first. What is folded stays so on paper.");
  for (Kept& group : groups) {
    open_fold(page, sum_of(group), group.first);
    if (!group.rows.empty()) write_scales(page, std::move(group.rows), "Limit", group.subject);
    if (!group.titles.empty()) write_run_in(page, group.titles);
    page.close();
  }
  close_section(view);
}

void write_figures(const FormulaPage& view) {
  if (view.formula.measures.empty()) return;
  Markup& page = view.page;
  open_section(view, "figures", "How each figure came about");
  const GroupedMeasures grouped = by_subject(view.formula);
  for (const MeasureGroup& group : grouped.groups) {
    open_fold(page, std::string(group.subject) + ": " + std::to_string(group.measures.size()),
              false);
    write_measures(view, group);
    page.close();
  }
  if (!grouped.none.empty()) {
    open_fold(page, "Nothing of it here: " + std::to_string(grouped.none.size()), false);
    write_run_in(page, grouped.none);
    page.close();
  }
  close_section(view);
}

void write_rest(const FormulaPage& view) {
  std::vector<std::string> titles;
  for (const Finding& finding : view.formula.findings) {
    if (finding.kind != Kind::not_applicable || finding.allowed) continue;
    const rules::Rule* rule = rule_of(view, finding);
    std::string words = rule == nullptr ? finding.rule : rule->words->title;
    if (std::find(titles.begin(), titles.end(), words) == titles.end()) {
      titles.push_back(std::move(words));
    }
  }
  if (titles.empty()) return;
  open_section(view, "rest", "What does not apply");
  open_fold(view.page, std::to_string(titles.size()) + " rules are asked of other formulas", false);
  write_run_in(view.page, titles);
  view.page.close();
  close_section(view);
}

}  // namespace sudsmark::report
