// The balance: what the amounts of a recipe come to, and bringing them back to that after an edit.
//
// A recipe is all phases of a formula together, or one premix. Its lines may be given in shares,
// masses or parts; here they are made comparable as far as that goes without a catalogue. Doses
// come on top and count for nothing, and what is given by volume has no mass yet.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "formula/card.h"
#include "formula/draft.h"
#include "text/diagnostic.h"

namespace sudsmark::formula {

/// How far shares may be off 100 % and still be meant to make it [fraction].
inline constexpr double share_tolerance = 0.0005;

/// Twelve digits that count: 0.44 where binary fractions made 0.43999999999999995 of it.
[[nodiscard]] Range tidy(const Range& range);

class Balance {
 public:
  /// Remembers what the recipe comes to now, before the edits. `mass` is what all of it weighs [g],
  /// where that is stated.
  Balance(std::vector<DraftPart*> parts, std::optional<double> mass,
          const std::vector<Premix>& premixes);

  /// How an amount that stands on several lines is split over them, as fractions of 1; empty if
  /// they are given in ways that do not add up.
  [[nodiscard]] std::vector<double> proportions(const std::vector<DraftLine*>& lines) const;

  /// Scales the lines that no edit touched, so that the recipe comes to what it came to before. A
  /// line with q.s. makes that needless.
  void scale_rest(Span place, text::Diagnostics& diagnostics) const;

  /// Gives the lines that stand in `filled` what the others leave.
  void fill(const std::vector<DraftLine*>& filled, const Word& name, Span place,
            text::Diagnostics& diagnostics) const;

 private:
  /// Sums of a recipe, each kind of amount on its own.
  struct Sums {
    Range share;
    Range mass;
    Range parts;
    bool has_share = false;
    bool has_mass = false;
    bool has_parts = false;
    bool has_fill = false;
    std::size_t volumes = 0;  ///< lines given by volume, which are in no sum
  };
  /// The one unit in which all lines of a recipe add up, before the edits and after them.
  struct Common {
    std::string_view unit;
    bool shares_weigh = false;    ///< shares are counted by what they weigh
    std::optional<double> whole;  ///< what the lines have to come to, where that is stated
    Range total;                  ///< what they came to before the edits
  };

  template <typename Wanted>
  [[nodiscard]] Sums sums(const Wanted& wanted) const;
  /// What a line weighs [g], by the middle of its range; none if that cannot be told here.
  [[nodiscard]] std::optional<double> weight(const Line& line) const;
  [[nodiscard]] Range makes_of(const Word& premix) const;
  [[nodiscard]] std::optional<Common> common(const Word* name, Span place,
                                             text::Diagnostics& diagnostics) const;
  [[nodiscard]] Range in_common(const Sums& sums, const Common& common) const;
  void share_out(const Range& value, const Common& common,
                 const std::vector<DraftLine*>& lines) const;
  /// Gives a q.s. line of the base the figure that it stood for. False if there is none.
  [[nodiscard]] bool settle_fill(const std::vector<DraftLine*>& filled, const Common& common) const;

  std::vector<DraftPart*> parts_;
  std::optional<double> mass_;
  const std::vector<Premix>& premixes_;
  Sums before_;
};

}  // namespace sudsmark::formula
