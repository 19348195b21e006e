// The tables of a page: composition, portions, how each figure came about, sources.
#include <algorithm>
#include <initializer_list>
#include <string>
#include <vector>

#include "report/formula_page.h"
#include "report/html_table.h"
#include "report/prose.h"
#include "report/svg_bars.h"
#include "wording/citations.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

std::string comma_list(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

const IngredientRow* ingredient(const PortionResult& portion, const std::string& name) {
  for (const IngredientRow& row : portion.ingredients) {
    if (row.name == name) return &row;
  }
  return nullptr;
}

std::string share_in(const PortionResult& portion, const std::string& name) {
  const IngredientRow* row = ingredient(portion, name);
  return row == nullptr ? "none" : shown(row->share);
}

bool same_everywhere(const std::vector<PortionResult>& portions, const std::string& name) {
  return std::all_of(portions.begin(), portions.end(), [&](const PortionResult& portion) {
    return share_in(portion, name) == share_in(portions.front(), name);
  });
}

void write_bars(const FormulaPage& view) {
  std::vector<Bar> supplied;
  for (const IngredientRow& row : view.formula.ingredients) {
    supplied.push_back({row.name, row.share});
  }
  std::vector<Bar> pure;
  for (const CompositionRow& row : view.formula.composition) {
    pure.push_back({row.substance, row.share});
  }
  view.page.open("div", {{"class", "figures"}});
  const auto one = [&](const std::vector<Bar>& bars, const std::string& id,
                       const std::string& title) {
    if (bars.empty()) return;
    view.page.open("figure");
    draw_bars(view.page, bars, view.prefix + id, title);
    view.page.element("figcaption", title);
    view.page.close();
  };
  one(supplied, "supplied-bars", "As weighed out, by mass");
  one(pure, "pure-bars", "As pure substances; hatched: between the ends of the range");
  view.page.close();
}

}  // namespace

void write_portions(const FormulaPage& view) {
  const auto& portions = view.formula.portions;
  if (portions.empty()) return;
  open_section(view, "portions", "Portions side by side");
  view.page.element("p", "Only what differs from portion to portion; all else they share.");
  std::vector<std::string> columns{"What"};
  for (const PortionResult& portion : portions) columns.push_back(portion.name);
  {
    Table table(view.page, "Portions of the mixed batch", columns);
    const auto row = [&](const std::string& title, const auto& words) {
      table.row();
      table.cell(title);
      for (const PortionResult& portion : portions) table.cell(words(portion), "figure");
      table.end_row();
    };
    row("share of the batch", [](const PortionResult& portion) { return shown(portion.share); });
    std::vector<std::string> names;
    for (const PortionResult& portion : portions) {
      for (const IngredientRow& of : portion.ingredients) {
        const bool known = std::find(names.begin(), names.end(), of.name) != names.end();
        if (!known && !same_everywhere(portions, of.name)) names.push_back(of.name);
      }
    }
    for (const std::string& name : names) {
      row(name, [&](const PortionResult& portion) { return share_in(portion, name); });
    }
    for (std::size_t at = 0; at < portions.front().measures.size(); ++at) {
      row(portions.front().measures[at].name,
          [&](const PortionResult& portion) { return shown(portion.measures[at].figure); });
    }
  }
  close_section(view);
}

namespace {

/// A material or a pure substance: what it is, how much of it there is, and who says so.
template <class Row>
void write_matter(const FormulaPage& view, Table& table, const std::string& name, const Row& of) {
  table.row();
  table.cell(name);
  table.cell(of.inci);
  table.cell(of.cas, "code");
  table.cell(comma_list(of.roles));
  table.cell(shown(of.share), "figure");
  table.open_cell();
  write_references(view, of.sources);
  table.close_cell();
  table.end_row();
}

}  // namespace

void write_composition(const FormulaPage& view) {
  if (view.formula.ingredients.empty() && view.formula.composition.empty()) return;
  open_section(view, "composition", "What is in it");
  write_bars(view);
  if (!view.formula.ingredients.empty()) {
    Table table(view.page, "Materials as supplied",
                {"Material", "INCI", "CAS", "Role", "Share", "Source"}, "stack contents");
    for (const IngredientRow& of : view.formula.ingredients) {
      write_matter(view, table, of.name, of);
    }
  }
  if (!view.formula.composition.empty()) {
    Table table(view.page, "Pure substances of the finished product",
                {"Substance", "INCI", "CAS", "Role", "Share", "Source"}, "stack contents");
    for (const CompositionRow& of : view.formula.composition) {
      write_matter(view, table, of.substance, of);
    }
  }
  close_section(view);
}

void write_measures(const FormulaPage& view, const MeasureGroup& group) {
  Markup& page = view.page;
  Table table(page, group.subject, {"Measure", "Figure", "How it came about"}, "stack measures");
  for (const MeasureResult* of : group.measures) {
    table.row();
    table.open_cell();
    const std::string meaning = meaning_of(*of, view.parts);
    if (!meaning.empty()) write_prose(page, capital(meaning) + " ");
    page.element("code", of->name);
    table.close_cell();
    table.cell(shown(of->figure), "figure");
    table.open_cell();
    write_prose(page, of->from);
    if (!of->missing.empty()) {
      write_prose(page, (of->from.empty() ? "Needs " : ". Needs ") + joined(of->missing));
    }
    table.close_cell();
    table.end_row();
  }
}

void write_sources(const FormulaPage& view) {
  if (view.sources.all().empty()) return;
  Markup& page = view.page;
  open_section(view, "sources", "Sources, by how far they can be trusted");
  std::string kind;
  std::size_t number = 0;
  for (const SourceNote& note : view.sources.all()) {
    ++number;
    if (note.kind != kind) {
      if (!kind.empty()) page.close();
      kind = note.kind;
      page.open(view.level == 2 ? "h3" : "h4",
                {{"class", view.sources.is_told(kind) ? "told" : "behind"}});
      page.text(kind == "published"         ? "Published"
                : kind == "common practice" ? "Common practice of the trade"
                                            : "From memory, to be looked up");
      page.close();
      page.open("ol", {{"class", "sources"}, {"start", std::to_string(number)}});
    }
    // those that nothing on paper points to are left to the screen
    page.open("li", {{"id", view.prefix + "source-" + std::to_string(number)},
                     {"value", std::to_string(number)},
                     {"class", view.sources.is_told(number - 1) ? "told" : "behind"}});
    if (!note.title.empty()) page.element("cite", note.title);
    if (!note.where.empty()) page.text((note.title.empty() ? "" : ", ") + note.where);
    page.text(how_found(note));
    page.close();
  }
  page.close();
  close_section(view);
}

}  // namespace sudsmark::report
