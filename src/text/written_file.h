// Writing files: whole or not at all, and never in the place of what is no file.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

struct stat;

namespace sudsmark::text {

/// Makes a folder and those above it where they are missing. Returns an error's words, none when
/// all is well.
[[nodiscard]] std::optional<std::string> make_folder(const std::string& path);

/// A file that is written bit by bit, and stands whole or not at all: what is written goes to a new
/// file beside it, which takes its place in the end and keeps who may read it. Links are followed,
/// so that what they lead to is written. What exists and is no file (a device, a pipe, /dev/stdout)
/// is written to as it is. Unless it is finished, a file stays as it was.
class WrittenFile {
 public:
  explicit WrittenFile(const std::string& path);
  WrittenFile(const WrittenFile&) = delete;
  WrittenFile& operator=(const WrittenFile&) = delete;
  ~WrittenFile();

  /// The first thing that went wrong, in words with the reason; none when all is well. Each call
  /// answers it.
  [[nodiscard]] std::optional<std::string> error() const;
  [[nodiscard]] std::optional<std::string> append(std::string_view text);
  [[nodiscard]] std::optional<std::string> finish();

 private:
  int open_target();
  int open_beside(const struct stat* before);

  std::string named_;
  std::filesystem::path target_;
  std::filesystem::path beside_;  ///< empty: what is written has no name yet, or stands already
  int file_ = -1;
  int wrong_ = 0;          ///< an error's number
  bool shared_ = false;    ///< was open before, and stays so
  bool replaces_ = false;  ///< takes the target's place in the end
};

/// The same at once.
[[nodiscard]] std::optional<std::string> write_file(const std::string& path, std::string_view text);

}  // namespace sudsmark::text
