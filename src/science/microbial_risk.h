// How likely germs are to grow in a product: a screening by the criteria of ISO 29621:2017 as a
// laboratory quotes them (the standard itself was not read). It never exempts from anything.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::science {

/// What is known of a product. Shares are fractions of 1.
struct MicrobialFacts {
  double free_water = 0.0;  ///< most that there may be
  double alcohol = 0.0;     ///< least that stays in it
  /// Most that it may be; none: no bound is known.
  std::optional<double> water_activity = std::nullopt;
  std::optional<double> least_ph = std::nullopt;     ///< of its solution; none: not known
  std::optional<double> greatest_ph = std::nullopt;  ///< likewise
  bool peroxide = false;                             ///< it holds what gives off oxygen
  bool wet_in_use = false;                           ///< it lies wet for weeks while it is used up
};

enum class MicrobialRisk { likely_low, between, test };
[[nodiscard]] std::string_view risk_words(MicrobialRisk risk);

struct MicrobialClass {
  MicrobialRisk risk = MicrobialRisk::test;
  std::vector<std::string> reasons;
};

/// Of the criteria one is enough: pH below 3 or above 10, water activity below 0.75, more than 20 %
/// of alcohol, oxidising, or no free water. A water activity of 0.75 to 0.9 stands between; what
/// lies wet in use is always tested.
[[nodiscard]] MicrobialClass microbial_class(const MicrobialFacts& facts);

}  // namespace sudsmark::science
