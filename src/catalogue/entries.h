// Readers of the single entries of a data file. Each reads one node, reports what is wrong with it,
// and answers what could be read.
#pragma once

#include "catalogue/reading.h"

namespace sudsmark::catalogue {

/// An item of `sources`.
[[nodiscard]] Citation read_citation(const text::Node& node, const Reading& reading);

/// An item of `substances`.
[[nodiscard]] Substance read_substance(const text::Node& node, const Reading& reading);

/// An item of `materials` without its contents, which `read_contents` reads once all substances are
/// known.
[[nodiscard]] Material read_material(const text::Node& node, const Reading& reading);

/// Reads what the item says under `contains` into the material.
void read_contents(const text::Node& node, Material& material, const Reading& reading);

/// An item of `products`.
[[nodiscard]] ProductKind read_product(const text::Node& node, const Reading& reading);

/// An item of `tables`.
[[nodiscard]] Table read_table(const text::Node& node, const Reading& reading);

/// The substance that a name means, reported if there is none or if there are several.
[[nodiscard]] std::optional<SubstanceIndex> read_substance_name(const text::Node& node,
                                                                const Reading& reading);

}  // namespace sudsmark::catalogue
