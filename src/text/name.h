// Names as people write them: folding to one spelling, and finding the nearest known ones.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::text {

/// One spelling for all that count as equal: ASCII letters in lower case, each run of space, tab,
/// hyphen and underscore one space, none at either end. Other bytes stay as they are.
[[nodiscard]] std::string fold(std::string_view name);
/// Appends what `fold` answers.
void append_folded(std::string& out, std::string_view name);

/// Edits (insert, delete, replace, swap of neighbours) that lead from a to b, counted in bytes;
/// stops and returns limit + 1 once it is sure to be above the limit.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit);

/// Up to `most` of the candidates that are near to a name (a third of its length in edits, at least
/// one, at most four; or one holds the other), nearest first, then in the order given. Names are
/// compared folded; candidates are returned as they were given.
[[nodiscard]] std::vector<std::string> nearest(std::string_view name,
                                               std::span<const std::string> candidates,
                                               std::size_t most = 3);

/// "a", "a or b", "a, b or c". Empty for none.
[[nodiscard]] std::string series(std::span<const std::string> items, std::string_view last);
/// "'a'": a name for a sentence.
[[nodiscard]] std::string in_quotes(std::string_view name);
/// "'a'", "'a' or 'b'", "'a', 'b' or 'c'": names for a sentence. Empty for none.
[[nodiscard]] std::string listed(std::span<const std::string> names, std::string_view last = "or");

/// "; perhaps 'a' or 'b'", or nothing: the end of a sentence about a name that nobody knows.
[[nodiscard]] std::string perhaps(std::span<const std::string> near);

}  // namespace sudsmark::text
