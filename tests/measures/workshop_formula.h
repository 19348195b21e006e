// Formulas mixed with the project's own catalogue, for tests of the workshop's measures.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "catalogue/loaded.h"
#include "formula/assemble.h"
#include "measures/registry.h"
#include "where.h"

namespace sudsmark::testing {

/// The catalogue that the program has built in, loaded once.
inline const catalogue::Catalogue& own_catalogue() {
  static const catalogue::Catalogue loaded = [] {
    const auto root = testing::source_dir() / "rulesets";
    std::vector<std::filesystem::path> paths{root / "sources.yaml", root / "products.yaml"};
    for (const char* folder : {"materials", "tables"}) {
      for (const auto& entry : std::filesystem::directory_iterator(root / folder)) {
        if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
      }
    }
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> files;
    for (const auto& path : paths) files.push_back(file_contents(path));
    Loaded all(files);
    REQUIRE(all.errors() == "");
    return std::move(all.catalogue);
  }();
  return loaded;
}

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
    const quantity::Range base = measure.compute(view).value;
    const auto unit = quantity::find_unit(measure.unit);
    return {unit->from_base(base.low), unit->from_base(base.high)};
  }
};

}  // namespace sudsmark::testing
