// Variants: the formula with a material that it did not have, or one in another's place, as a rule
// names it for a remedy. A variant has dials of its own, the newcomer's among them.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "front/parts.h"
#include "mending/beside.h"
#include "mending/dials.h"
#include "mending/edits.h"
#include "mending/remedies.h"

namespace sudsmark::mending {

struct Variant {
  VerdictKey verdict;    ///< that it is to mend
  std::size_t mend = 0;  ///< of the rule's list
  std::vector<Brought> brought;
  formula::Card card;
  std::optional<blend::Blend> blend;
  std::unique_ptr<Dials> dials;
};

/// What a formula is varied from. All must outlive it.
struct Original {
  const rules::Rulebook& book;
  const Beside& beside;
  const formula::SameName& same_name;
  const Dials& dials;
  const Remedies& remedies;
};

/// The variants that one mend of a verdict's rule asks for: one with the material added; or one for
/// each line that it could stand in the place of, the greatest first. None where it is there
/// already.
[[nodiscard]] std::vector<std::unique_ptr<Variant>> variants_of(const Original& original,
                                                                const catalogue::ProductKind& kind,
                                                                const Trialled& verdict,
                                                                std::size_t mend);

/// The formula with what two verdicts' rules bring in, one material for each, the likeliest first.
/// It is the first one's variant.
[[nodiscard]] std::vector<std::unique_ptr<Variant>> of_both(const Original& original,
                                                            const catalogue::ProductKind& kind,
                                                            const Trialled& first,
                                                            const Trialled& second);

/// The formula as it is, and then with an inert powder that it did not have, to take up what a
/// remedy of the verdict leaves: starch in a bath, clay in a bar for hair; then with both.
[[nodiscard]] std::vector<std::unique_ptr<Variant>> filled_up(const Original& original,
                                                              const catalogue::ProductKind& kind,
                                                              const Trialled& verdict,
                                                              std::size_t mend);

/// How much of one material does what one part of another does: by active matter, or by acid
/// equivalents; else as much.
[[nodiscard]] double worth_of(const catalogue::Material& out, const catalogue::Material& in);

}  // namespace sudsmark::mending
