// Writing files: whole or not at all, and never in the place of what is no file.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace sudsmark::text {

/// Makes a folder and those above it where they are missing. Returns an error's words, none when
/// all is well.
[[nodiscard]] std::optional<std::string> make_folder(const std::string& path);

/// Writes a file whole or not at all: to a new file of its own name beside it, which then takes its
/// place and keeps who may read it. Links are followed, so that what they lead to is written. What
/// exists and is no file (a device, a pipe, /dev/stdout) is written to as it is. Returns an error's
/// words with the reason, none when all is well.
[[nodiscard]] std::optional<std::string> write_file(const std::string& path, std::string_view text);

}  // namespace sudsmark::text
