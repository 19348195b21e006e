// How the program ends, and what it tells on the way.
#pragma once

#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::cli {

/// Exit statuses of the contract.
enum class Exit : int { fine = 0, found = 1, unusable = 2, broken = 3 };

/// Tells standard error what is wrong with the command line or a file it names.
void complain(std::string_view words);
/// The same, for a command that ends with it.
[[nodiscard]] Exit refused(std::string_view words);

/// Tells standard error something that is no error.
void remark(std::string_view words);

/// Tells standard error what could not be read or used: beside its place in the GNU format, and
/// where that is no line, in the program's name.
void tell(const std::vector<Problem>& problems, bool ascii);

}  // namespace sudsmark::cli
