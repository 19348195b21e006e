// Files: the one place of the library that opens any to read. Writing is in written_file.h.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::text {

/// The bytes of a file; where it has none, the reason in words: "no such file".
struct FileBytes {
  std::optional<std::string> bytes;
  std::string reason;
};

/// Whether a pipe may stand where a file is asked for. Reading one waits for whoever writes to it.
enum class Pipes { refused, read };

/// The bytes of a file, at most `most` of them. What is no file (a folder, a device, and a pipe
/// where these are refused) is never opened for long: a reader of it could wait for ever.
/// A file that is longer is read to `most` + 1 bytes, so that a reader's own bound can refuse it.
[[nodiscard]] FileBytes read_file(const std::string& path, std::size_t most,
                                  Pipes pipes = Pipes::refused);

/// All of standard input, in the same way.
[[nodiscard]] FileBytes read_standard_input(std::size_t most);

/// What stands below a folder.
struct FilesBelow {
  /// Something that cannot be read, and the reason why.
  struct Unread {
    std::string path;
    std::string reason;
  };
  std::vector<std::string> files;           ///< that end as asked for, sorted by path
  std::vector<Unread> unread;               ///< folders, and links and others that end so
  std::vector<std::string> linked_folders;  ///< which are not followed
};

/// Files below a folder whose name ends so (".formula"). A link counts as the file that it leads
/// to; one that leads out of the folder is not read, unless `outside` lets it.
[[nodiscard]] FilesBelow files_below(const std::string& folder, std::string_view ending,
                                     bool outside = false);

[[nodiscard]] bool is_folder(const std::string& path);

/// Whether a path stands below a folder once all links are followed. A path that does not exist
/// stands where its folder does.
[[nodiscard]] bool stands_below(const std::string& path, const std::string& folder);

/// Why something failed, in plain words, by the number that the system gave.
[[nodiscard]] std::string reason_of(int error);

}  // namespace sudsmark::text
