// Figures of the data files: "65 - 72 %", "34 to 38 C", "below 3 %", "at least 90 %", "15.0".
#pragma once

#include <optional>

#include "quantity/range.h"
#include "quantity/unit.h"
#include "text/diagnostic.h"
#include "text/yaml.h"

namespace sudsmark::catalogue {

/// The figure of a text node, in the base unit of the dimension wanted. The unit may be left out
/// only for plain numbers; only a temperature may be negative. `below X` is 0 to X (open downwards
/// for a temperature); `at least X` is X to the whole for a share, else open upwards. None after an
/// error, which is reported at the node.
[[nodiscard]] std::optional<quantity::Range> read_figure(const text::Node& node,
                                                         const quantity::Dimension& wanted,
                                                         text::Diagnostics& diagnostics);

/// A plain number that is no range, for instance a count of protons.
[[nodiscard]] std::optional<double> read_exact(const text::Node& node,
                                               text::Diagnostics& diagnostics);

}  // namespace sudsmark::catalogue
