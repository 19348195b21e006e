// A name for a message, cut to what a line can hold.
#pragma once

#include <string>
#include <string_view>

namespace sudsmark::text {

/// At most 60 bytes of a name: what is no name may be as long as a file.
[[nodiscard]] std::string shortened(std::string_view name);

}  // namespace sudsmark::text
