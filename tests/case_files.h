// Tests as data: an input file, and beside it what is expected of it. A new case is a new file.
// With SUDSMARK_RENEW=1 in the environment the expectations are written anew, and the run fails.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "text/diagnostic.h"
#include "text/source.h"
#include "where.h"

namespace sudsmark::testing {

inline std::string file_contents(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  REQUIRE_MESSAGE(stream.good(), path.string());
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// Files of a folder of the project with this ending, by name.
inline std::vector<std::filesystem::path> case_files(const std::string& folder,
                                                     std::string_view ending) {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path root = testing::source_dir() / folder;
  for (const auto& entry : std::filesystem::directory_iterator(root)) {
    if (entry.path().extension() == ending) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// One line a diagnostic: "3:7 unknown-key 'sauce' is not …; see 1:3".
inline std::string printed(const text::Sources& sources, const text::Diagnostics& diagnostics) {
  std::string out;
  const auto place = [&](const text::Span& span) {
    const text::Position position = sources.position(span);
    return std::to_string(position.line) + ":" + std::to_string(position.column);
  };
  for (const text::Diagnostic& item : diagnostics.in_order()) {
    out += item.places.empty() ? std::string("-") : place(item.places.front());
    out += ' ';
    out += item.message->id;
    out += ' ';
    out += text::sentence(item);
    for (std::size_t at = 1; at < item.places.size(); ++at)
      out += "; see " + place(item.places[at]);
    out += '\n';
  }
  return out;
}

/// Compares with what the file at `path` says, or renews it.
inline void check_expected(const std::filesystem::path& path, const std::string& actual) {
  const char* renew = std::getenv("SUDSMARK_RENEW");
  const bool exists = std::filesystem::exists(path);
  if (renew != nullptr && std::string_view(renew) == "1") {
    if (exists && file_contents(path) == actual) return;
    std::ofstream(path, std::ios::binary) << actual;
    FAIL_CHECK("renewed ", path.filename().string());
    return;
  }
  REQUIRE_MESSAGE(exists, path.string());
  CHECK_MESSAGE(file_contents(path) == actual, path.filename().string(), ":\n", actual);
}

}  // namespace sudsmark::testing
