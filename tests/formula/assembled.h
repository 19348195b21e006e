// Assembling files that stand in the test instead of in a folder.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "dump.h"
#include "formula/assemble.h"
#include "formula/print.h"

namespace sudsmark::formula::test {

using Files = std::map<std::string, std::string>;

/// A whole formula in one file: what was included and what a tweak changed is written out.
inline std::string print(const Card& card) {
  Document written;
  written.formula_name = card.name;
  written.statements = card.statements;
  written.phases = card.phases;
  written.premixes = card.premixes;
  written.portions = card.portions;
  written.fragrances = card.fragrances;
  written.materials = card.materials;
  written.workshops = card.workshops;
  written.tasks = card.tasks;
  if (card.label) written.labels.push_back(*card.label);
  return formula::print(written);
}

/// A file assembled, with its errors as `dump.h` lists them.
struct Assembled {
  std::optional<Card> card;
  std::string errors;
  text::Sources sources;

  [[nodiscard]] std::string printed() const { return card ? print(*card) : errors; }
  /// "file:line:column" of a place.
  [[nodiscard]] std::string at(const Span& place) const {
    const text::Position position = sources.position(place);
    return std::string(sources.path(place)) + ":" + std::to_string(position.line) + ":" +
           std::to_string(position.column);
  }
};

inline Assembled assembled(const Files& files, const std::string& named,
                           AssembleOptions options = {}) {
  Assembled out;
  const text::FileIndex file = out.sources.add(named, files.at(named));
  options.read = [&](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    if (found == files.end()) return std::nullopt;
    return found->second;
  };
  text::Diagnostics diagnostics;
  out.card = assemble(out.sources, file, options, diagnostics);
  out.errors = listing(diagnostics, out.sources, file);
  return out;
}

}  // namespace sudsmark::formula::test
