// What a word may have been meant for that opens neither a section nor a statement.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "formula/words.h"

namespace sudsmark::formula {

/// All that a section knows, for a sentence: "bath, batch and users".
[[nodiscard]] std::string known_statements(Section section);

/// "; perhaps 'workshop'", or nothing. Candidates are the words that open sections and, where asked
/// for, the section's statements.
[[nodiscard]] std::string section_hint(Section section, std::string_view word,
                                       bool with_statements);

/// The one statement that a misspelled word is near to, if it has as many parts: of the others
/// nobody knows how much of the line to change. Else empty.
[[nodiscard]] std::string only_statement(Section section, std::string_view word);

/// The section whose word is nearest to a misspelled one, within so many edits, if none of the
/// statements of the open section is as near.
[[nodiscard]] std::optional<Section> nearest_section(Section open, std::string_view word,
                                                     std::size_t limit);

}  // namespace sudsmark::formula
