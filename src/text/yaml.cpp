#include "text/yaml.h"

#include <algorithm>

#include "text/yaml_bytes.h"
#include "text/yaml_events.h"
#include "text/yaml_scalar.h"

namespace sudsmark::text {

const Node* Node::find(std::string_view wanted) const {
  const auto found = std::find_if(items.begin(), items.end(),
                                  [&](const Node& item) { return item.key == wanted; });
  return kind == Kind::map && found != items.end() ? &*found : nullptr;
}

std::optional<Node> read_yaml(const Sources& sources, FileIndex file, Diagnostics& diagnostics) {
  if (!check_yaml_bytes(sources, file, diagnostics)) return std::nullopt;
  return parse_yaml(sources[file].text(), file, diagnostics);
}

Span place_in(const Node& scalar, std::string_view file_text, std::size_t begin, std::size_t end) {
  const auto at = [&](std::size_t byte) {
    return stretch_of(file_text, scalar.span.begin, scalar.style, scalar.text, byte);
  };
  const Stretch first = at(begin);
  const std::size_t past = end > begin ? at(end - 1).end : first.begin;
  return {scalar.span.file, static_cast<std::uint32_t>(first.begin),
          static_cast<std::uint32_t>(std::max(past, first.begin))};
}

}  // namespace sudsmark::text
