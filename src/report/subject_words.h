// What a verdict is about, where it is not the product as a whole.
#pragma once

#include <string>

namespace sudsmark::report {

/// "material 'goat milk'".
[[nodiscard]] std::string named_subject(const std::string& kind, const std::string& subject);

/// "material 'goat milk': ", before what is said of it; empty for the product, and for a row of a
/// table, which the words name themselves.
[[nodiscard]] std::string subject_prefix(const std::string& kind, const std::string& subject);

/// " of material 'goat milk'", after the id of a rule; empty in the same cases.
[[nodiscard]] std::string of_subject(const std::string& kind, const std::string& subject);

}  // namespace sudsmark::report
