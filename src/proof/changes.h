// Changes of an expression that its examples should notice: a limit moved, a bound taken in or left
// out, a part dropped, a thing exchanged for another.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.h"
#include "rules/expression.h"

namespace sudsmark::proof {

enum class ChangeKind : std::uint8_t {
  limit,    ///< a figure a tenth higher or lower
  bound,    ///< `<` for `<=`, `>` for `>=`, and the other way round
  part,     ///< a part of `and`, `or`, a list, `between`, `if`, `min`, `max`, or a `not`, dropped
  exchange  ///< a role, a form, a material, a word or a kind of product exchanged for another
};
inline constexpr std::array change_kinds{ChangeKind::limit, ChangeKind::bound, ChangeKind::part,
                                         ChangeKind::exchange};
/// "limit moved by a tenth"
[[nodiscard]] std::string_view words_of(ChangeKind kind);

struct Change {
  ChangeKind kind = ChangeKind::limit;
  std::string words;  ///< "30 % a tenth higher"; told apart from all others of the expression
  rules::Tree tree;   ///< of the changed expression, over the same text
};

/// All changes of an expression, in the order in which they are written. Some may not compile.
[[nodiscard]] std::vector<Change> changes_of(const rules::Tree& tree, std::string_view text,
                                             const catalogue::Catalogue& catalogue);

}  // namespace sudsmark::proof
