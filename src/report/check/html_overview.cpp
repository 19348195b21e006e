#include "report/check/html_overview.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "report/check/html_parts.h"
#include "report/check/text_sum.h"
#include "report/digest.h"
#include "report/html_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"

namespace sudsmark::report {
namespace {

constexpr std::size_t most_rules = 10;

/// In the order in which formulas are told.
enum class Gravest { nothing, unknown, depends, should_change, must_change };

Gravest gravest(const Finding& finding) {
  const bool weighs = finding.level > Level::note && !finding.allowed &&
                      finding.standing != Standing::unchanged && gravity(finding) > 0;
  if (!weighs) return Gravest::nothing;
  if (finding.kind == Kind::open) return Gravest::unknown;
  if (finding.kind == Kind::review) return Gravest::depends;
  return finding.level == Level::error ? Gravest::must_change : Gravest::should_change;
}

std::string_view heading_of(Gravest gravest) {
  constexpr std::array<std::string_view, 5> words{
      "Nothing to change", "Not known", "Depends on true figures", "Should change", "Must change"};
  return words.at(static_cast<std::size_t>(gravest));
}

struct Row {
  std::size_t at = 0;  ///< in the run
  Gravest gravest = Gravest::nothing;
  std::size_t findings = 0;  ///< of that gravity
  const Finding* first = nullptr;
};

Row row_of(const FormulaResult& formula, std::size_t at, const RuleIndex& rules) {
  Row out{at, Gravest::nothing, 0, nullptr};
  for (const Finding& finding : formula.findings) {
    const Gravest weight = gravest(finding);
    if (weight == Gravest::nothing || weight < out.gravest) continue;
    if (weight > out.gravest) out = {at, weight, 0, nullptr};
    ++out.findings;
    if (out.first == nullptr || weighs_more(finding, *out.first, rules)) out.first = &finding;
  }
  return out;
}

void write_rules(Markup& page, const RunResult& run, const front::Parts& parts) {
  Sum sum;
  for (const FormulaResult& formula : run.formulas) sum.add(formula);
  page.element("p", {{"class", "verdict"}}, sum.sum() + ".");
  const auto most = sum.broken_most(most_rules);
  if (most.empty()) return;
  Table table(page, "What most of them break", {"Rule", "Formulas", "Called"}, "stack most");
  for (const auto& [id, count] : most) {
    const auto at = parts.ruleset.find_rule(id);
    table.row();
    table.open_cell();
    write_prose(page, at ? parts.ruleset.rules[*at].words->title : id);
    table.close_cell();
    table.cell(std::to_string(count), "figure");
    table.open_cell();
    page.element("code", id);
    table.close_cell();
    table.end_row();
  }
}

void write_one(Markup& page, const FormulaResult& formula, const std::string& address,
               const Row& one) {
  page.open("li");
  page.open("a", {{"href", address}});
  page.name(formula.name);
  page.close();
  if (one.first != nullptr) {
    page.open("p");
    write_prose(page, capital(subject_prefix(one.first->subject_kind, one.first->subject) +
                              one.first->message));
    if (one.findings > 1) page.text(" (and " + std::to_string(one.findings - 1) + " more)");
    page.close();
  }
  write_tally(page, formula);
  page.open("p", {{"class", "of"}});
  page.name(formula.file);
  page.close();
  page.close();
}

}  // namespace

std::string formulas_checked(const RunResult& run) {
  const std::size_t count = run.formulas.size();
  return capital(in_words(count)) + (count == 1 ? " formula, checked" : " formulas, checked");
}

void write_overview(Markup& page, const RunResult& run, const std::vector<std::string>& addresses,
                    const front::Parts& parts) {
  if (run.formulas.empty()) return;
  write_rules(page, run, parts);
  const RuleIndex rules(parts);
  std::vector<Row> all;
  for (std::size_t at = 0; at < run.formulas.size(); ++at) {
    all.push_back(row_of(run.formulas[at], at, rules));
  }
  std::stable_sort(all.begin(), all.end(), [](const Row& a, const Row& b) {
    return std::pair(a.gravest, a.findings) > std::pair(b.gravest, b.findings);
  });
  for (auto from = all.begin(); from != all.end();) {
    const auto to =
        std::find_if(from, all.end(), [&](const Row& one) { return one.gravest != from->gravest; });
    page.element("h2", std::string(heading_of(from->gravest)) + ": " + std::to_string(to - from));
    page.open("ul", {{"class", "formulas"}});
    for (; from != to; ++from) {
      write_one(page, run.formulas[from->at], addresses[from->at], *from);
    }
    page.close();
  }
}

}  // namespace sudsmark::report
