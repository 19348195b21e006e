#include "text/files.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <system_error>

namespace sudsmark::text {
namespace {

namespace fs = std::filesystem;

/// A file that is open, and is closed with the object.
class Opened {
 public:
  explicit Opened(int number) : number_(number) {}
  ~Opened() {
    if (number_ >= 0) ::close(number_);
  }
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;
  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
};

FileBytes failed(int error) {
  return {std::nullopt, reason_of(error)};
}

/// `size`: of a plain file, whose end needs no reading; 0: it is none, or does not say.
FileBytes read_all(int file, std::size_t most, std::size_t size = 0) {
  std::string bytes;
  char buffer[16384];
  while (bytes.size() <= most) {
    const std::size_t wanted = std::min(sizeof buffer, most + 1 - bytes.size());
    const ssize_t got = ::read(file, buffer, wanted);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return failed(errno);
    if (got == 0) break;
    bytes.append(buffer, static_cast<std::size_t>(got));
    if (bytes.size() == size) break;
  }
  return {std::move(bytes), {}};
}

/// Until somebody has written to a pipe that was opened without waiting, or has closed it.
void wait_for_writer(int pipe) {
  ::fcntl(pipe, F_SETFL, 0);
  pollfd ready{pipe, POLLIN, 0};
  while (::poll(&ready, 1, -1) < 0 && errno == EINTR) continue;
}

/// Why something of that kind is not read; empty if it is.
std::string refusal(mode_t mode, Pipes pipes) {
  if (S_ISREG(mode)) return {};
  if (S_ISDIR(mode)) return reason_of(EISDIR);
  if (S_ISFIFO(mode)) return pipes == Pipes::read ? std::string() : "it is a pipe";
  return "it is a device, and no file";
}

/// Why a link or another thing with a formula's name is no file to read; empty if it is one.
std::string refusal_below(const fs::directory_entry& entry, const std::string& folder,
                          bool outside) {
  // of most the folder itself says that they are plain files
  std::error_code unsaid;
  if (!entry.is_symlink(unsaid) && entry.is_regular_file(unsaid)) return {};
  struct stat about {};
  if (::stat(entry.path().c_str(), &about) != 0) {
    return errno == ENOENT ? "it is a link to what is not there" : reason_of(errno);
  }
  std::error_code error;
  if (entry.is_symlink(error) && !outside && !stands_below(entry.path().string(), folder)) {
    return "it is a link that leads out of the folder: --allow-outside lets it";
  }
  return refusal(about.st_mode, Pipes::refused);
}

/// Looks through one folder; those in it are added to `open`.
void look_through(const std::string& top, const fs::path& folder, std::string_view ending,
                  bool outside, std::vector<fs::path>& open, FilesBelow& below) {
  std::error_code error;
  fs::directory_iterator entries(folder, error);
  for (; !error && entries != fs::directory_iterator(); entries.increment(error)) {
    const fs::directory_entry& entry = *entries;
    const std::string path = entry.path().string();
    std::error_code unknown;
    if (entry.is_directory(unknown)) {
      if (entry.is_symlink(unknown)) {
        below.linked_folders.push_back(path);
      } else {
        open.push_back(entry.path());
      }
      continue;
    }
    if (!path.ends_with(ending)) continue;
    std::string reason = refusal_below(entry, top, outside);
    if (reason.empty()) {
      below.files.push_back(path);
    } else {
      below.unread.push_back({path, std::move(reason)});
    }
  }
  if (error) below.unread.push_back({folder.string(), reason_of(error.value())});
}

}  // namespace

std::string reason_of(int error) {
  switch (error) {
    case ENOENT:
      return "no such file";
    case EACCES:
    case EPERM:
      return "no permission";
    case EISDIR:
      return "it is a folder";
    case ENOTDIR:
      return "what should be its folder is none";
    case ELOOP:
      return "its links lead in a circle";
    case ENOSPC:
    case EDQUOT:
      return "the disk is full";
    case EROFS:
      return "the disk cannot be written to";
    case ENAMETOOLONG:
      return "its name is too long";
    default:
      return std::generic_category().message(error);
  }
}

FileBytes read_file(const std::string& path, std::size_t most, Pipes pipes) {
  // without O_NONBLOCK a pipe that nobody writes to would keep us here before we know what it is
  const Opened file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.number() < 0) return failed(errno);
  struct stat about {};
  if (::fstat(file.number(), &about) != 0) return failed(errno);
  std::string why = refusal(about.st_mode, pipes);
  if (!why.empty()) return {std::nullopt, std::move(why)};
  if (S_ISFIFO(about.st_mode)) wait_for_writer(file.number());
  const auto size = S_ISREG(about.st_mode) ? static_cast<std::size_t>(about.st_size) : 0;
  return read_all(file.number(), most, size);
}

FileBytes read_standard_input(std::size_t most) {
  return read_all(STDIN_FILENO, most);
}

FilesBelow files_below(const std::string& folder, std::string_view ending, bool outside) {
  FilesBelow below;
  std::vector<fs::path> open{folder};
  while (!open.empty()) {
    const fs::path next = std::move(open.back());
    open.pop_back();
    look_through(folder, next, ending, outside, open, below);
  }
  std::sort(below.files.begin(), below.files.end());
  std::sort(below.linked_folders.begin(), below.linked_folders.end());
  std::sort(below.unread.begin(), below.unread.end(),
            [](const auto& one, const auto& other) { return one.path < other.path; });
  return below;
}

bool is_folder(const std::string& path) {
  std::error_code error;
  return fs::is_directory(path, error);
}

bool stands_below(const std::string& path, const std::string& folder) {
  std::error_code error;
  const fs::path inner = fs::weakly_canonical(fs::absolute(path), error);
  if (error) return false;
  const fs::path outer = fs::weakly_canonical(fs::absolute(folder.empty() ? "." : folder), error);
  if (error) return false;
  const fs::path way = inner.lexically_relative(outer);
  return !way.empty() && *way.begin() != "..";
}

}  // namespace sudsmark::text
