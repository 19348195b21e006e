// The style sheet of the pages.
#pragma once

#include <string_view>

namespace sudsmark::report {

/// Quiet and typographic: one serif, rules instead of boxes, and colour only beside a shape or a
/// word that says the same. Light and dark, telephone, desk, A4 and Letter.
extern const std::string_view page_style;

}  // namespace sudsmark::report
