// Words and addresses as SARIF wants them.
#pragma once

#include <string>
#include <string_view>

namespace sudsmark::report {

/// The text of a message: control marks made harmless, braces doubled, and nothing of it a link.
[[nodiscard]] std::string sarif_words(std::string_view text);

/// A path as a URI reference: relative paths stay relative, others become `file://`.
[[nodiscard]] std::string uri_of_path(std::string_view path);

}  // namespace sudsmark::report
