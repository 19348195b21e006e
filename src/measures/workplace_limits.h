// Workplace limits of the air: which of the table's rows counts for a substance.
//
// The table `workplace-limits` holds them by country. The countries of the formula's markets come
// first, the strictest figure of them. Where none of them has a limit for a substance, the
// strictest of the other countries stands in and is marked so: that is no law there, but it is
// better advice than silence. What counts in the end is the country where the powder is handled.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measures/registry.h"

namespace sudsmark::measures {

/// A limit of one fraction of the dust.
struct AirLimit {
  double value = 0.0;      ///< [g/l] of air, 8 h mean
  std::string country;     ///< "GB"
  std::string basis;       ///< "WEL", "AGW", "PEL"
  bool elsewhere = false;  ///< of no country that the formula names
};

struct SubstanceLimits {
  std::string name;                   ///< of the row
  std::optional<AirLimit> inhalable;  ///< total dust counts as inhalable
  std::optional<AirLimit> respirable;
  std::optional<AirLimit> short_term;  ///< 15 min mean, inhalable
  bool sensitiser = false;
  [[nodiscard]] bool any() const { return inhalable || respirable; }
};

/// The limits of a substance by its index in the catalogue; nothing in them if none is known.
[[nodiscard]] SubstanceLimits workplace_limits(const blend::Blend& blend, std::uint32_t substance);

}  // namespace sudsmark::measures
