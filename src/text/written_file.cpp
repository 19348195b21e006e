#include "text/written_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstdio>
#include <filesystem>
#include <random>
#include <system_error>

#include "text/files.h"

namespace sudsmark::text {
namespace {

namespace fs = std::filesystem;

/// As many links as a path may lead over.
constexpr int most_links = 40;
constexpr int most_tries = 100;
constexpr mode_t permissions = 07777;

/// Where a path leads: to a file by that name, or to something that this process has open already.
struct Target {
  fs::path path;
  int open = -1;  ///< the number under which it is open; -1: it is not
  int error = 0;
};

/// The number of an open file that a path such as "/proc/self/fd/1" stands for; -1 for others.
int open_number(const fs::path& path) {
  std::error_code error;
  const std::string folder = fs::canonical(path.parent_path(), error).string();
  const std::string own = "/proc/" + std::to_string(::getpid()) + "/fd";
  if (error || folder != own) return -1;
  const std::string digits = path.filename().string();
  int number = -1;
  const auto [end, wrong] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return wrong == std::errc() && end == digits.data() + digits.size() ? number : -1;
}

Target target_of(const std::string& named) {
  std::error_code error;
  fs::path path = fs::absolute(named, error);
  for (int links = 0; !error && links < most_links; ++links) {
    const int number = open_number(path);
    if (number >= 0) return {path, number, 0};
    if (!fs::is_symlink(path, error)) return {path, -1, 0};
    const fs::path next = fs::read_symlink(path, error);
    path = next.is_absolute() ? next : path.parent_path() / next;
  }
  return {path, -1, error ? error.value() : ELOOP};
}

/// Writes all to an open file; an error's number, 0 when all is well.
int write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

/// The same, and closes it: some disks tell only then that they are full.
int write_and_close(int file, std::string_view text) {
  const int wrong = write_all(file, text);
  const int late = ::close(file) == 0 ? 0 : errno;
  return wrong != 0 ? wrong : late;
}

/// Into what exists and is no file.
int write_into(const fs::path& path, std::string_view text) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
  return file < 0 ? errno : write_and_close(file, text);
}

/// A new file that nobody else has, in a folder; its path.
int make_own(const fs::path& folder, fs::path& path) {
  std::random_device device;
  for (int tries = 0; tries < most_tries; ++tries) {
    char name[32];
    std::snprintf(name, sizeof name, ".sudsmark-%08x.new", static_cast<unsigned>(device()));
    path = folder / name;
    const int file =
        ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (file >= 0 || errno != EEXIST) return file;
  }
  return -1;
}

/// To a file of its own beside the target, which then takes its name. `before`: the target as it
/// is; null: there is none yet.
int replace(const fs::path& path, const struct stat* before, std::string_view text) {
  fs::path beside;
  const int file = make_own(path.parent_path(), beside);
  if (file < 0) return errno;
  int wrong = 0;
  if (before != nullptr) {
    // whose it is can be kept by an administrator alone, and is nothing to fail for
    if (::fchown(file, before->st_uid, before->st_gid) != 0) errno = 0;
    if (::fchmod(file, before->st_mode & permissions) != 0) wrong = errno;
  }
  const int written = write_and_close(file, text);
  if (wrong == 0) wrong = written;
  if (wrong == 0 && ::rename(beside.c_str(), path.c_str()) != 0) wrong = errno;
  if (wrong != 0) ::unlink(beside.c_str());
  return wrong;
}

int write_target(const Target& target, std::string_view text) {
  if (target.error != 0) return target.error;
  if (target.open >= 0) return write_all(target.open, text);
  struct stat before {};
  if (::stat(target.path.c_str(), &before) != 0) {
    return errno == ENOENT ? replace(target.path, nullptr, text) : errno;
  }
  if (S_ISDIR(before.st_mode)) return EISDIR;
  if (!S_ISREG(before.st_mode)) return write_into(target.path, text);
  // replacing it asks for a right to its folder alone: a file that is kept from being written stays
  if (::access(target.path.c_str(), W_OK) != 0) return errno;
  return replace(target.path, &before, text);
}

}  // namespace

std::optional<std::string> make_folder(const std::string& path) {
  std::error_code error;
  fs::create_directories(path, error);
  if (is_folder(path)) return std::nullopt;
  return "cannot make the folder '" + path + "'" +
         (error ? ": " + reason_of(error.value()) : std::string());
}

std::optional<std::string> write_file(const std::string& path, std::string_view text) {
  const int wrong = write_target(target_of(path), text);
  if (wrong == 0) return std::nullopt;
  const std::string reason = wrong == ENOENT ? "there is no such folder" : reason_of(wrong);
  return "cannot write '" + path + "': " + reason;
}

}  // namespace sudsmark::text
