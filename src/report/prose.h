// Sentences of the program and of rules on a page, set as a printer would set them: single quotes
// that curl, a cubic metre with its three, degrees with their ring, and what stands between
// backquotes as code.
//
// Double quotes stay as they are: they may belong to a line that somebody copies into a formula.
#pragma once

#include <string>
#include <string_view>

#include "report/markup.h"

namespace sudsmark::report {

[[nodiscard]] std::string typeset(std::string_view words);

/// The words at the place where the page stands.
void write_prose(Markup& page, std::string_view words);

/// An element of its own with the words.
void prose_element(Markup& page, std::string_view tag, std::initializer_list<Attribute> attributes,
                   std::string_view words);

/// "The label has to …" for "the label has to …"; a symbol such as pH stays what it is.
[[nodiscard]] std::string capital(std::string words);

/// The opposite: "linalool" for "Linalool"; "SLSA" and "Lavandula Oil/Extract" stay.
[[nodiscard]] std::string uncapital(std::string words);

}  // namespace sudsmark::report
