#include <algorithm>
#include <array>

#include "catalogue/entries.h"
#include "catalogue/figure.h"
#include "catalogue/messages.h"

namespace sudsmark::catalogue {
namespace {

/// The substance that a content is of, or water of some class; none after an error.
bool read_kind(text::Fields& fields, Content& content, const Reading& reading) {
  constexpr std::array classes{std::string_view("free"), std::string_view("bound"),
                               std::string_view("crystal")};
  const text::Node* active = fields.find("active");
  const text::Node* substance = fields.find("substance");
  const text::Node* water = fields.find("water");
  const int given = (active != nullptr) + (substance != nullptr) + (water != nullptr);
  if (given != 1) {
    if (fields.valid()) reading.diagnostics.add(messages::content_kind, fields.node().span);
    return false;
  }
  if (water != nullptr) {
    const auto at = read_choice(*water, classes, "a way in which water is held", reading);
    if (!at) return false;
    content.substance = reading.catalogue.water();
    content.water = static_cast<WaterClass>(*at + 1);
    return true;
  }
  const auto index = read_substance_name(active != nullptr ? *active : *substance, reading);
  if (!index) return false;
  content.substance = *index;
  content.active = active != nullptr;
  if (content.substance == reading.catalogue.water()) content.water = WaterClass::free;
  return true;
}

std::optional<Content> read_content(const text::Node& node, const Material& material,
                                    const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Content content;
  bool whole = read_kind(fields, content, reading);
  if (const text::Node* share = fields.needed("share")) {
    const auto range = read_figure(*share, quantity::dimension::share, reading.diagnostics);
    whole = whole && range.has_value();
    if (range && range->high > 1) {
      reading.diagnostics.add(messages::over_whole, share->span);
      whole = false;
    }
    content.share = range.value_or(quantity::Range());
  } else {
    whole = false;
  }
  content.sources = read_sources(fields, &material.sources, "a content", reading);
  fields.refuse_others();
  if (!whole) return std::nullopt;
  return content;
}

}  // namespace

void read_contents(const text::Node& node, Material& material, const Reading& reading) {
  const text::Node* list = node.find("contains");
  if (list == nullptr) {
    const auto own = reading.catalogue.find_substance(material.name);
    if (own && *own == reading.catalogue.water()) {
      material.contents.push_back({*own, 1.0, false, WaterClass::free, material.sources});
    }
    return;
  }
  constexpr std::size_t most_contents = 256;
  double least = 0;
  for (const text::Node& item : text::list_of(*list, reading.diagnostics)) {
    const auto content = read_content(item, material, reading);
    if (!content) continue;
    if (material.contents.size() == most_contents) {
      reading.diagnostics.add(messages::too_many, item.span,
                              {static_cast<double>(most_contents), "contents"});
      break;
    }
    const bool twice =
        std::any_of(material.contents.begin(), material.contents.end(), [&](const Content& other) {
          return other.substance == content->substance && other.water == content->water;
        });
    if (twice) {
      const std::string& name = reading.catalogue.substances[content->substance].name;
      reading.diagnostics.add(messages::content_twice, item.span, {name});
      continue;
    }
    least += content->share.low;
    material.contents.push_back(*content);
  }
  if (least > 1 + quantity::equal_within) {
    reading.diagnostics.add(messages::contents_over, list->key_span, {100 * least});
  }
}

}  // namespace sudsmark::catalogue
