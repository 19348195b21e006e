// Layers: a catalogue and its ruleset, made together out of YAML files.
#pragma once

#include <span>

#include "catalogue/catalogue.h"
#include "rules/ruleset.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::rules {

struct Rulebook {
  catalogue::Catalogue catalogue;
  Ruleset ruleset;
};

/// Reads YAML files (already in `sources`) as one layer over a base, in the order of their paths,
/// so that the order in which they are named changes nothing. With `built_in` the rules must have
/// all that a built-in rule needs. Errors are in the diagnostics; then the answer is not to be
/// used.
[[nodiscard]] Rulebook add_layer(Rulebook base, const text::Sources& sources,
                                 std::span<const text::FileIndex> files, bool built_in,
                                 text::Diagnostics& diagnostics);

}  // namespace sudsmark::rules
