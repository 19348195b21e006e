#include "cli/inputs.h"

#include <sys/stat.h>

#include <algorithm>
#include <filesystem>

#include "cli/exit.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_formula = std::size_t{1} << 20U;

std::string folder_of(const std::string& path) {
  return path == "-" ? std::string() : std::filesystem::path(path).parent_path().string();
}

}  // namespace

std::optional<Inputs::Identity> Inputs::identity(const std::string& path) {
  struct stat about {};
  if (::stat(path.c_str(), &about) != 0 || !S_ISREG(about.st_mode)) return std::nullopt;
  return Identity(about.st_dev, about.st_ino);
}

void Inputs::remember(const std::string& path) {
  const auto file = identity(path);
  const std::lock_guard lock(mutex_);
  if (file) read_.try_emplace(*file, path);
}

text::FileBytes Inputs::read(const std::string& path, std::size_t most, text::Pipes pipes) {
  text::FileBytes read = text::read_file(path, most, pipes);
  if (read.bytes) remember(path);
  return read;
}

text::FileBytes Inputs::read_standard_input() {
  remember("/dev/stdin");
  return text::read_standard_input(most_formula);
}

std::optional<FormulaText> Inputs::read_formula(const std::string& path, bool in_folder,
                                                std::vector<Problem>& problems) {
  text::FileBytes read =
      path == "-" ? read_standard_input() : Inputs::read(path, most_formula, text::Pipes::read);
  if (!read.bytes) {
    problems.push_back({path, 0, 0, "cannot be read: " + read.reason, {}});
    return std::nullopt;
  }
  return FormulaText{path, std::move(*read.bytes), in_folder};
}

std::function<std::optional<std::string>(const std::string&)> Inputs::reader_for(
    const std::vector<std::string>& formulas) {
  std::vector<std::string> folders;
  for (const std::string& formula : formulas) folders.push_back(folder_of(formula));
  return [this, folders](const std::string& path) {
    const bool inside =
        outside_ || std::any_of(folders.begin(), folders.end(), [&](const std::string& folder) {
          return text::stands_below(path, folder);
        });
    text::FileBytes found;
    if (inside) {
      found = read(path, most_formula);
    } else {
      found.reason = "a link leads out of the folder of the formula: --allow-outside lets it";
    }
    if (!found.bytes) {
      const std::lock_guard lock(mutex_);
      unread_.try_emplace(path, found.reason);
    }
    return found.bytes;
  };
}

void Inputs::tell_unread() const {
  for (const auto& [path, reason] : unread_) complain("'" + path + "' is not read: " + reason);
}

std::optional<std::string> Inputs::would_lose(const std::string& path) const {
  const auto file = identity(path);
  if (!file) return std::nullopt;
  const std::lock_guard lock(mutex_);  // pages are written while other formulas are read
  const auto found = read_.find(*file);
  if (found == read_.end()) return std::nullopt;
  return "'" + path + "' is not written: it is '" + found->second +
         "' itself, which this command reads";
}

}  // namespace sudsmark::cli
