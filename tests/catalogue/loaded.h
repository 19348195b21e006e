// Catalogues out of YAML texts, for tests.
#pragma once

#include <deque>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "case_files.h"
#include "catalogue/builder.h"
#include "text/yaml.h"

namespace sudsmark::testing {

/// One layer of files, loaded.
struct Loaded {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::deque<text::Node> roots;
  catalogue::Catalogue catalogue;

  explicit Loaded(const std::vector<std::string>& files, catalogue::Catalogue base = {},
                  std::span<const std::string_view> keys_of_others = {}) {
    catalogue::CatalogueBuilder builder(diagnostics, std::move(base));
    for (std::size_t at = 0; at < files.size(); ++at) {
      const std::string name = "file" + std::to_string(at);
      const text::FileIndex file = sources.add(name + ".yaml", files[at]);
      if (auto root = text::read_yaml(sources, file, diagnostics)) {
        roots.push_back(std::move(*root));
        builder.add(roots.back(), name, keys_of_others);
      }
    }
    catalogue = builder.finish();
  }
  [[nodiscard]] std::string errors() const { return printed(sources, diagnostics); }
};

inline std::string prelude() {
  return file_contents(testing::source_dir() / "tests/catalogue/prelude.yaml");
}

}  // namespace sudsmark::testing
