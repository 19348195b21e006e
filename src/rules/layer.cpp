#include "rules/layer.h"

#include <algorithm>
#include <deque>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "catalogue/builder.h"
#include "rules/builder.h"
#include "rules/messages.h"
#include "text/yaml.h"

namespace sudsmark::rules {

Rulebook add_layer(Rulebook base, const text::Sources& sources,
                   std::span<const text::FileIndex> files, bool built_in,
                   text::Diagnostics& diagnostics) {
  std::vector<text::FileIndex> ordered(files.begin(), files.end());
  std::stable_sort(ordered.begin(), ordered.end(), [&](text::FileIndex a, text::FileIndex b) {
    return sources[a].path() < sources[b].path();
  });
  std::deque<text::Node> roots;  // at addresses that stay
  catalogue::CatalogueBuilder catalogue(diagnostics, std::move(base.catalogue));
  RulesetBuilder rules(sources, diagnostics, std::move(base.ruleset));
  for (const text::FileIndex file : ordered) {
    auto root = text::read_yaml(sources, file, diagnostics);
    if (!root) continue;
    if (root->kind == text::Node::Kind::nothing || root->items.empty()) {
      diagnostics.add(messages::nothing_in_file, text::Span{file, 0, 0});
      continue;
    }
    const text::Node& kept = roots.emplace_back(std::move(*root));
    const std::string name = std::filesystem::path(sources[file].path()).stem().string();
    catalogue.add(kept, name, rule_keys());
    rules.add(kept, name);
  }
  Rulebook book;
  book.catalogue = catalogue.finish();
  book.ruleset = rules.finish(book.catalogue, built_in);
  return book;
}

}  // namespace sudsmark::rules
