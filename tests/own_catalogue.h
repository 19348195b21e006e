// The catalogue that the program has built in, loaded once, for tests of what is made of it.
#pragma once

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "catalogue/loaded.h"

namespace sudsmark::testing {

/// The catalogue's files, in order.
inline std::vector<std::string> catalogue_files() {
  const auto root = testing::source_dir() / "rulesets";
  std::vector<std::filesystem::path> paths{root / "sources.yaml", root / "products.yaml"};
  for (const char* folder : {"materials", "tables"}) {
    for (const auto& entry : std::filesystem::directory_iterator(root / folder)) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> files;
  for (const auto& path : paths) files.push_back(file_contents(path));
  return files;
}

inline const catalogue::Catalogue& own_catalogue() {
  static const catalogue::Catalogue loaded = [] {
    Loaded all(catalogue_files());
    REQUIRE(all.errors() == "");
    return std::move(all.catalogue);
  }();
  return loaded;
}

}  // namespace sudsmark::testing
