// Where the tests find the project's files, and the program that they run.
#pragma once

#include <filesystem>

namespace sudsmark::testing {

[[nodiscard]] std::filesystem::path source_dir();
[[nodiscard]] std::filesystem::path program();

}  // namespace sudsmark::testing
