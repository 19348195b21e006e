// Accuracy classes of scales: what the law lets a verified scale be off.
#pragma once

#include <cstdint>
#include <optional>

#include "science/provenance.h"

namespace sudsmark::science {

enum class AccuracyClass : std::uint8_t { two, three, four };  ///< II, III and IIII

/// At verification, or in use afterwards (twice the error).
enum class ScaleAge : std::uint8_t { new_or_verified, in_service };

/// SI 1995/1907 (read).
inline constexpr double in_service_factor = 2.0;

struct PermissibleError {
  double mass = 0.0;   ///< [g] either way
  double share = 0.0;  ///< of the load
  Provenance source;
};

/// Maximum permissible error at `load` [g], 0 < load, of a scale whose verification interval is
/// `interval` [g]; none above the last load that the class's table covers.
/// Source: SI 1995/1907 Schedule 2 Table 3 (read; the page misprints the first step of class II as
/// 20 000 intervals, 5 000 is meant).
[[nodiscard]] std::optional<PermissibleError> permissible_error(AccuracyClass accuracy,
                                                                double interval, double load,
                                                                ScaleAge age);

/// Smallest load [g] at which the permissible error is within `tolerance` [share]; none if the
/// class never promises that. Just above a step of the table the promise can lapse again: ask
/// `permissible_error` for a given load.
[[nodiscard]] std::optional<double> smallest_load_in_class(AccuracyClass accuracy, double interval,
                                                           double tolerance, ScaleAge age);

/// Least load [g] that the class allows: 20 intervals (III), 10 (IIII); class II is not known here.
/// Source: OIML R 76-1 (from memory).
[[nodiscard]] std::optional<double> minimum_capacity(AccuracyClass accuracy, double interval);

}  // namespace sudsmark::science
