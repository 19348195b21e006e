#include "measures/trace_sums.h"

#include <algorithm>
#include <array>
#include <variant>

#include "catalogue/role.h"
#include "measures/selection.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view releasers = "formaldehyde-releasers";

/// The words of a list with commas between, folded.
std::vector<std::string> words_of(std::string_view list) {
  std::vector<std::string> out;
  std::size_t at = 0;
  // a comma between two digits belongs to a name: "1,4-dioxane"
  const auto digit = [&](std::size_t where) {
    return where < list.size() && list[where] >= '0' && list[where] <= '9';
  };
  while (at < list.size()) {
    std::size_t end = list.find(',', at);
    while (end != std::string_view::npos && end > 0 && digit(end - 1) && digit(end + 1)) {
      end = list.find(',', end + 1);
    }
    end = std::min(end, list.size());
    std::string one = text::fold(list.substr(at, end - at));
    if (!one.empty()) out.push_back(std::move(one));
    at = end + 1;
  }
  return out;
}

catalogue::Roles roles_of(std::string_view list) {
  catalogue::Roles out = 0;
  for (const std::string& one : words_of(list)) {
    if (const auto role = catalogue::find_role(one)) out |= catalogue::bit(*role);
  }
  return out;
}

bool holds(const catalogue::Row& row, const blend::ContentView& content) {
  return content.substance != nullptr && content.share.high > 0 &&
         std::find(row.substances.begin(), row.substances.end(), content.substance_id) !=
             row.substances.end();
}

/// Whether a material is of those that may bring a trace.
bool may_bring(const View& view, const catalogue::Row& row, catalogue::Roles roles,
               blend::MaterialId id) {
  if ((view.blend->material(id).roles & roles) != 0) return true;
  const auto& contents = view.blend->contents(id);
  return std::any_of(contents.begin(), contents.end(),
                     [&](const blend::ContentView& one) { return holds(row, one); });
}

std::vector<const blend::Trace*> statements(const View& view, blend::MaterialId id,
                                            const std::vector<std::string>& names) {
  std::vector<const blend::Trace*> out;
  for (const blend::Trace& trace : view.blend->traces) {
    const std::string name = text::fold(trace.name);
    if (trace.material == id && std::find(names.begin(), names.end(), name) != names.end()) {
      out.push_back(&trace);
    }
  }
  return out;
}

bool is_releaser(const void* context, const Candidate& candidate) {
  return candidate.content != nullptr &&
         holds(*static_cast<const catalogue::Row*>(context), *candidate.content);
}

Measured formaldehyde(const View& view) {
  return freed_formaldehyde(view);
}

Span formula_place(const View& view) {
  return view.blend->place;
}

constexpr std::array trace_table{
    Measure{
        "formaldehyde.freed", "ppm",
        "formaldehyde that the preservatives in it can free in all, by their formulas: an "
        "upper bound",
        "hydroxymethyl groups by the structural formula, 30.03 g/mol", formaldehyde, formula_place,
        "A supplier's measurement may show less. From 10 ppm on the label says that it releases "
        "formaldehyde.",
        true},
};

}  // namespace

TraceSum trace_sum(const View& view, const catalogue::Table& of, const catalogue::Row& row) {
  std::vector<std::string> names;
  if (!view.blend->traces.empty()) names = words_of(of.word(row, "traces"));
  const catalogue::Roles roles = roles_of(of.word(row, "brought-by"));
  const blend::Composition& composition = view.part->composition;
  TraceSum out;
  std::vector<Range> counts;
  double most = 0;
  for (const blend::Ingredient& ingredient : composition.ingredients) {
    Range held = 0.0;
    const auto stated = statements(view, ingredient.material, names);
    const std::string& name = view.blend->material(ingredient.material).name;
    for (const blend::Trace* one : stated) {
      held += one->share;
      if (one->share.high * ingredient.mass.high > most) {
        most = one->share.high * ingredient.mass.high;
        out.place = one->place;
      }
    }
    if (!stated.empty()) {
      out.stated.push_back(name);
    } else if (ingredient.mass.high > 0 && may_bring(view, row, roles, ingredient.material)) {
      out.silent.push_back(name);
    }
    counts.push_back(held);
  }
  if (out.stated.empty() && out.silent.empty()) {
    out.share = 0.0;
    return out;
  }
  out.share = counts.empty() ? Range(0.0) : composition.weighted_share(counts);
  if (!out.silent.empty()) out.share = Range::at_least(out.share.low);
  return out;
}

Measured freed_formaldehyde(const View& view) {
  Measured out{0.0, {}};
  const catalogue::Table* of = view.blend->catalogue->find_table(releasers);
  const auto column = of == nullptr ? std::nullopt : of->column("frees");
  if (!column) return {Range::unknown(), {}};
  View silent = view;
  silent.trace = nullptr;
  for (const catalogue::Row& row : of->rows) {
    const auto* frees = std::get_if<Range>(&row.cells[*column]);
    const Measured held = share(silent, {&is_releaser, &row, false});
    if (!(held.value.high > 0)) continue;
    out.missing |= held.missing;
    if (frees == nullptr) {
      out.value = Range::at_least(out.value.low);
      out.missing |=
          view.missing->add("how much formaldehyde " + row.name + " can free", view.blend->place);
      continue;
    }
    // no more is known than that it frees between nothing and all of it: the bound is all
    out.value += held.value * *frees;
    trace(view, quantity::printed(held.value, "%") + " of " + row.name + " can free " +
                    quantity::printed(*frees, "%") + " of it");
  }
  return out;
}

std::span<const Measure> trace_measures() {
  return trace_table;
}

}  // namespace sudsmark::measures
