// Classification of a powder mix by the mixture rules of the CLP regulation, for the person who
// handles it: skin and eye corrosion and irritation, airways, skin sensitisers.
//
// It is for raw materials and premixes; the finished cosmetic is outside the regulation. What goes
// in are the statements of each component's own safety data sheet (the supplier's come first; a
// supplier's specific limits too) and the share of each component, as a range. What comes out are
// statements: definite where the whole range reaches the threshold, possible where only part of it
// does. Each says on which ground, and out of which components.
//
// The rules, as shares of the mix (generic limits; `*` marks those that are from memory only):
//
//   H314  sum of H314 from 5 %
//   H315  sum of H315 from 10 %, H314 counting ten times
//   H318  sum of H318 and H314 from 3 % *; a surfactant, acid or base alone from 1 % *
//   H319  sum of H319 from 10 %, H318 and H314 counting ten times *; such a component from 3 % *
//   H335, H336  the sum of each for itself from 20 %
//   H317  a component from 1 % (category 1B, or 1 without more), 0.1 % (1A) *
//   H314 and H318  a mix whose pH is at most 2 or at least 11.5
//
// For skin and eyes components below 1 % do not count. Surfactants, acids and bases, inorganic
// salts, aldehydes and phenols irritate below what a sum would say: for those the regulation sets
// limits that do not add up, and the stricter of both readings is followed. Other statements of the
// components (acute toxicity, flammability, the environment, sensitisation by breathing) have no
// rule here: they come back as `undecided`, so that nobody takes silence for safety.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "science/interval.h"
#include "science/provenance.h"

namespace sudsmark::science {

/// Subcategory of a skin sensitiser, where its supplier states one.
enum class SensitiserCategory : std::uint8_t { unknown, one_a, one_b };

/// A supplier's own limit: from this share of the component on, the statement applies.
struct SpecificLimit {
  std::string_view statement;
  double share = 0.0;  ///< fraction of the mix, > 0
};

struct MixtureComponent {
  std::string_view name;                     ///< components of one name are added up
  std::vector<std::string_view> statements;  ///< "H318", "H360FD"; empty: none
  Interval share;                            ///< fraction of the mix
  /// Surfactant, acid, base, inorganic salt, aldehyde or phenol: its effects may not just add up.
  bool not_additive = false;
  SensitiserCategory sensitiser = SensitiserCategory::unknown;
  std::vector<SpecificLimit> limits;
};

enum class Ground : std::uint8_t {
  sum,           ///< contributions add up to the limit
  single,        ///< one component reaches a limit of its own
  not_additive,  ///< the exception for surfactants, acids and so on
  extreme_ph     ///< pH of the mix
};

struct Reason {
  Ground ground = Ground::sum;
  bool definite = false;  ///< over the whole range of shares
  Interval of_limit;      ///< how many times the limit is reached; 1 and more counts (sums, shares)
  std::vector<std::string> components;
  Provenance source;
};

struct MixtureStatement {
  std::string_view code;  ///< "H318"
  bool definite = false;  ///< some reason is
  std::vector<Reason> reasons;
};

struct UndecidedStatement {
  std::string code;
  std::string component;
};

struct MixtureClassification {
  /// In the order of their codes. A statement that a definite graver one takes in (H315 in H314,
  /// H319 in H318) is left out.
  std::vector<MixtureStatement> statements;
  std::vector<UndecidedStatement> undecided;

  /// The entry of a code, or null.
  [[nodiscard]] const MixtureStatement* find(std::string_view code) const;
};

/// Classifies a mix; `ph` is the range of its pH, where it is known.
[[nodiscard]] MixtureClassification classify_mixture(std::span<const MixtureComponent> components,
                                                     std::optional<Interval> ph = std::nullopt);

}  // namespace sudsmark::science
