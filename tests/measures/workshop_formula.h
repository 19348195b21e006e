// Formulas mixed with the project's own catalogue, for tests of the workshop's measures.
#pragma once

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "measures/registry.h"
#include "own_catalogue.h"

namespace sudsmark::testing {

/// A formula with its measures.
struct WorkshopFormula {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::optional<blend::Blend> blend;
  mutable blend::MissingTable missing;
  mutable measures::Trace trace;

  explicit WorkshopFormula(const std::string& text,
                           const catalogue::Catalogue& catalogue = own_catalogue()) {
    const auto file = sources.add("bench.formula", text);
    const auto sheet = formula::assemble(sources, file, {}, diagnostics);
    if (sheet) blend = blend::mix(*sheet, catalogue, diagnostics);
    REQUIRE_MESSAGE(blend.has_value(), printed(sources, diagnostics));
  }
  [[nodiscard]] measures::View view() const {
    return {&*blend, &blend->whole, nullptr, &missing, &trace};
  }
  [[nodiscard]] measures::View view_of_task(std::size_t at) const {
    return {&*blend, &blend->tasks[at].handled, &blend->tasks[at], &missing, &trace};
  }
  /// A measure in its own unit; its trace stays to be read.
  [[nodiscard]] quantity::Range operator()(std::string_view name) const { return of(name, view()); }
  [[nodiscard]] quantity::Range of_task(std::string_view name, std::size_t at) const {
    return of(name, view_of_task(at));
  }
  [[nodiscard]] std::string told() const {
    std::string out;
    for (const std::string& clause : trace) out += clause + "\n";
    return out;
  }
  [[nodiscard]] std::string lacks() const {
    std::string out;
    for (const auto& item : missing.items()) out += item.what + "\n";
    return out;
  }

 private:
  [[nodiscard]] quantity::Range of(std::string_view name, const measures::View& view) const {
    const auto index = measures::find(name);
    REQUIRE_MESSAGE(index.has_value(), std::string(name));
    const measures::Measure& measure = measures::all()[*index];
    trace.clear();
    const quantity::Range base = measures::computed(measure, view).value;
    const auto unit = quantity::find_unit(measure.unit);
    return {unit->from_base(base.low), unit->from_base(base.high)};
  }
};

}  // namespace sudsmark::testing
