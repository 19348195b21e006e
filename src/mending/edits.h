// Edits: turned dials as lines of a tweak.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/suggest.h>

#include "mending/dials.h"

namespace sudsmark::mending {

/// A material that was not there: it comes in with a line of its own, or in another's place.
struct Brought {
  std::size_t dial = 0;
  std::string phase;                  ///< that it is added to
  std::string out_of;                 ///< the name in whose place it stands; empty: it is added
  double least = 0;                   ///< of the product, that comes in at least; 0: any amount
  std::optional<std::size_t> gave{};  ///< the dial that gave way for it, if one did so noticeably
};

/// A name as an edit or a line can hold it: in quotes where a word in it would end it.
[[nodiscard]] std::string written(const formula::Word& name);
/// A share in per cent, as the maker writes it, where its digits are few; ppm are no one's bench.
[[nodiscard]] std::string printed_edit(const formula::Amount& amount);

/// What a dial brings in; null where it was there.
[[nodiscard]] const Brought* comes_in(const std::vector<Brought>& brought, std::size_t dial);

/// The edits that turn the dials so: what comes in, lines taken out, lines set, and the line that
/// takes the rest.
[[nodiscard]] std::vector<std::string> edits_of(const Dials& dials, const Turns& turns,
                                                const std::vector<Brought>& brought = {});

/// A tweak of these edits, without comments.
[[nodiscard]] std::string tweak_of(const std::string& name, const std::string& base_path,
                                   std::optional<double> batch,
                                   const std::vector<std::string>& edits);

}  // namespace sudsmark::mending
