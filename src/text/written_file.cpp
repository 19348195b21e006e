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

constexpr const char* own_files = "/proc/self/fd";

std::string own_name(std::random_device& device) {
  char name[32];
  std::snprintf(name, sizeof name, ".sudsmark-%08x.new", static_cast<unsigned>(device()));
  return name;
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

/// A new file that nobody else has, in a folder; its path. -1: none can be made, and errno says
/// why.
int make_own(const fs::path& folder, fs::path& path) {
  std::random_device device;
  for (int tries = 0; tries < most_tries; ++tries) {
    path = folder / own_name(device);
    const int file =
        ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (file >= 0 || errno != EEXIST) return file;
  }
  return -1;
}

/// A new file that has no name yet, so that an interrupted run leaves nothing behind; -1: this disk
/// has no such files, or they cannot be given a name later.
int make_nameless(const fs::path& folder) {
#ifdef O_TMPFILE
  if (::access(own_files, X_OK) != 0) return -1;
  return ::open(folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666);
#else
  return -1;
#endif
}

/// Gives a file without a name one of its own in a folder; an error's number.
int give_name(int file, const fs::path& folder, fs::path& path) {
  const std::string open = own_files + ("/" + std::to_string(file));
  std::random_device device;
  for (int tries = 0; tries < most_tries; ++tries) {
    path = folder / own_name(device);
    if (::linkat(AT_FDCWD, open.c_str(), AT_FDCWD, path.c_str(), AT_SYMLINK_FOLLOW) == 0) return 0;
    if (errno != EEXIST) return errno;
  }
  return EEXIST;
}

std::string words_of(const std::string& path, int wrong) {
  const std::string reason = wrong == ENOENT ? "there is no such folder" : reason_of(wrong);
  return "cannot write '" + path + "': " + reason;
}

std::optional<std::string> told(const std::string& path, int wrong) {
  if (wrong == 0) return std::nullopt;
  return words_of(path, wrong);
}

}  // namespace

std::optional<std::string> make_folder(const std::string& path) {
  std::error_code error;
  fs::create_directories(path, error);
  if (is_folder(path)) return std::nullopt;
  return "cannot make the folder '" + path + "'" +
         (error ? ": " + reason_of(error.value()) : std::string());
}

WrittenFile::WrittenFile(const std::string& path) : named_(path) {
  const Target target = target_of(path);
  target_ = target.path;
  if (target.error != 0) {
    wrong_ = target.error;
  } else if (target.open >= 0) {
    file_ = target.open;
    shared_ = true;
  } else {
    wrong_ = open_target();
  }
}

int WrittenFile::open_target() {
  struct stat before {};
  if (::stat(target_.c_str(), &before) != 0) {
    return errno == ENOENT ? open_beside(nullptr) : errno;
  }
  if (S_ISDIR(before.st_mode)) return EISDIR;
  if (!S_ISREG(before.st_mode)) {
    file_ = ::open(target_.c_str(), O_WRONLY | O_CLOEXEC);
    return file_ < 0 ? errno : 0;
  }
  // replacing it asks for a right to its folder alone: a file that is kept from being written stays
  if (::access(target_.c_str(), W_OK) != 0) return errno;
  return open_beside(&before);
}

/// A file of its own beside the target. `before`: the target as it is; null: there is none yet.
int WrittenFile::open_beside(const struct stat* before) {
  replaces_ = true;
  file_ = make_nameless(target_.parent_path());
  if (file_ < 0) file_ = make_own(target_.parent_path(), beside_);
  if (file_ < 0) return errno;
  if (before == nullptr) return 0;
  // whose it is can be kept by an administrator alone, and is nothing to fail for
  if (::fchown(file_, before->st_uid, before->st_gid) != 0) errno = 0;
  return ::fchmod(file_, before->st_mode & permissions) == 0 ? 0 : errno;
}

WrittenFile::~WrittenFile() {
  if (file_ >= 0 && !shared_) ::close(file_);
  if (!beside_.empty()) ::unlink(beside_.c_str());
}

std::optional<std::string> WrittenFile::append(std::string_view text) {
  if (wrong_ == 0) wrong_ = write_all(file_, text);
  return error();
}

std::optional<std::string> WrittenFile::error() const {
  return told(named_, wrong_);
}

std::optional<std::string> WrittenFile::finish() {
  if (wrong_ == 0 && replaces_ && beside_.empty()) {
    wrong_ = give_name(file_, target_.parent_path(), beside_);
  }
  // some disks tell only then that they are full
  if (file_ >= 0 && !shared_ && ::close(file_) != 0 && wrong_ == 0) wrong_ = errno;
  file_ = -1;
  if (wrong_ == 0 && replaces_) {
    if (::rename(beside_.c_str(), target_.c_str()) != 0) {
      wrong_ = errno;
    } else {
      beside_.clear();
    }
  }
  return error();
}

std::optional<std::string> write_file(const std::string& path, std::string_view text) {
  WrittenFile file(path);
  if (auto wrong = file.append(text)) return wrong;
  return file.finish();
}

}  // namespace sudsmark::text
