#include "text/files.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <system_error>

namespace sudsmark::text {
namespace {

namespace fs = std::filesystem;

std::optional<std::string> read_stream(std::FILE* file, std::size_t most) {
  std::string text;
  char buffer[16384];
  while (text.size() <= most) {
    const std::size_t wanted = std::min(sizeof buffer, most + 1 - text.size());
    const std::size_t got = std::fread(buffer, 1, wanted, file);
    text.append(buffer, got);
    if (got < wanted) break;
  }
  if (std::ferror(file) != 0) return std::nullopt;
  return text;
}

}  // namespace

std::optional<std::string> read_file(const std::string& path, std::size_t most) {
  std::error_code error;
  if (fs::is_directory(path, error)) return std::nullopt;
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"),
                                                             &std::fclose);
  if (!file) return std::nullopt;
  return read_stream(file.get(), most);
}

std::optional<std::string> read_standard_input(std::size_t most) {
  return read_stream(stdin, most);
}

std::optional<std::vector<std::string>> files_below(const std::string& folder,
                                                    std::string_view ending) {
  std::error_code error;
  std::vector<std::string> files;
  fs::recursive_directory_iterator at(folder, fs::directory_options::skip_permission_denied, error);
  if (error) return std::nullopt;
  for (const fs::recursive_directory_iterator end; at != end; at.increment(error)) {
    if (error) return std::nullopt;
    std::error_code ignored;
    const std::string path = at->path().string();
    if (path.ends_with(ending) && at->is_regular_file(ignored)) files.push_back(path);
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool is_folder(const std::string& path) {
  std::error_code error;
  return fs::is_directory(path, error);
}

std::optional<std::string> make_folder(const std::string& path) {
  std::error_code error;
  fs::create_directories(path, error);
  if (is_folder(path)) return std::nullopt;
  return "cannot make the folder '" + path + "'" + (error ? ": " + error.message() : "");
}

std::optional<std::string> write_file(const std::string& path, std::string_view text) {
  const std::string beside = path + ".new";
  {
    std::ofstream file(beside, std::ios::binary | std::ios::trunc);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.close();
    if (!file) {
      std::error_code ignored;
      fs::remove(beside, ignored);
      return "cannot write '" + path + "'";
    }
  }
  std::error_code error;
  fs::rename(beside, path, error);
  if (error) {
    std::error_code ignored;
    fs::remove(beside, ignored);
    return "cannot write '" + path + "': " + error.message();
  }
  return std::nullopt;
}

}  // namespace sudsmark::text
