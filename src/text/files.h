// Files: the one place of the library that opens any.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::text {

/// The bytes of a file, at most `most` of them; none if it cannot be read or is no regular file.
/// A file that is longer is read to `most` + 1 bytes, so that a reader's own bound can refuse it.
[[nodiscard]] std::optional<std::string> read_file(const std::string& path, std::size_t most);

/// All of standard input, in the same way.
[[nodiscard]] std::optional<std::string> read_standard_input(std::size_t most);

/// Files below a folder whose name ends so (".formula"), sorted by path; links to folders are not
/// followed. None if the folder cannot be read.
[[nodiscard]] std::optional<std::vector<std::string>> files_below(const std::string& folder,
                                                                  std::string_view ending);

[[nodiscard]] bool is_folder(const std::string& path);

/// Makes a folder and those above it where they are missing. Returns an error's words, none when
/// all is well.
[[nodiscard]] std::optional<std::string> make_folder(const std::string& path);

/// Writes a file whole or not at all: to a new file beside it, which then takes its name. Returns
/// an error's words, none when all is well.
[[nodiscard]] std::optional<std::string> write_file(const std::string& path, std::string_view text);

}  // namespace sudsmark::text
