#include "front/composition.h"

#include <algorithm>
#include <map>
#include <string>

#include "front/ingredients.h"
#include "wording/citations.h"
#include "wording/figures.h"

namespace sudsmark::front {
using namespace wording;

namespace {

using blend::ContentView;
using quantity::Range;

/// A substance that is one by name, or what a material holds beside what it names.
struct Key {
  std::uint32_t substance = blend::no_substance;
  blend::MaterialId rest_of = 0;
  friend auto operator<=>(const Key&, const Key&) = default;
};

Key key_of(const ContentView& content, blend::MaterialId material) {
  if (content.substance != nullptr) return {content.substance_id, 0};
  return {blend::no_substance, material};
}

CompositionRow row_of(const Key& key, const ContentView& content, const blend::Blend& blend) {
  CompositionRow row;
  if (content.substance == nullptr) {
    row.substance = "what '" + blend.material(key.rest_of).name + "' holds beside";
    return row;
  }
  row.substance = content.substance->name;
  row.inci = content.substance->inci;
  row.roles = role_words(content.roles);
  if (!content.substance->cas.empty()) row.cas = content.substance->cas.front();
  return row;
}

/// Where the share of a substance in a material comes from.
const catalogue::Citations& sources_of(const catalogue::Material& material,
                                       const ContentView& content) {
  for (const catalogue::Content& stated : material.contents) {
    if (stated.substance == content.substance_id && !stated.sources.empty()) return stated.sources;
  }
  return material.sources;
}

void add_sources(const catalogue::Citations& more, catalogue::Citations& sources) {
  for (const catalogue::CitationIndex at : more) {
    if (std::find(sources.begin(), sources.end(), at) == sources.end()) sources.push_back(at);
  }
}

struct Gathered {
  CompositionRow row;
  std::vector<Range> shares;  ///< of each ingredient
  catalogue::Citations sources;
};

}  // namespace

void add_composition(const blend::Blend& blend, std::vector<CompositionRow>& out) {
  const blend::Composition& composition = blend.whole.composition;
  const std::size_t count = composition.ingredients.size();
  std::map<Key, Gathered> rows;
  for (std::size_t at = 0; at < count; ++at) {
    const blend::MaterialId material = composition.ingredients[at].material;
    if (!(composition.ingredients[at].mass.high > 0)) continue;
    for (const ContentView& content : blend.contents(material)) {
      const Key key = key_of(content, material);
      auto [row, fresh] = rows.try_emplace(key);
      if (fresh) {
        row->second.row = row_of(key, content, blend);
        row->second.shares.assign(count, Range(0.0));
      }
      row->second.shares[at] += content.share;
      add_sources(sources_of(blend.material(material), content), row->second.sources);
    }
  }
  for (auto& [key, gathered] : rows) {
    const Range share = quantity::clamp(composition.weighted_share(gathered.shares), 0.0, 1.0);
    gathered.row.share = figure(share, "%");
    gathered.row.sources = notes(gathered.sources, *blend.catalogue);
    out.push_back(std::move(gathered.row));
  }
  std::stable_sort(out.begin(), out.end(), [](const CompositionRow& a, const CompositionRow& b) {
    return a.share.high.value_or(0) > b.share.high.value_or(0);
  });
}

}  // namespace sudsmark::front
