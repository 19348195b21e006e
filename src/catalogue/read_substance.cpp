#include "catalogue/entries.h"
#include "catalogue/messages.h"
#include "text/name.h"

namespace sudsmark::catalogue {

Substance read_substance(const text::Node& node, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Substance substance;
  substance.name = fields.needed_text("name");
  substance.inci = fields.text("inci");
  substance.synonyms = fields.strings("synonyms");
  substance.cas = read_cas(fields, reading);
  substance.colour_index = read_colour_indices(fields, reading);
  substance.roles = read_roles(fields, reading);
  fields.refuse_others();
  return substance;
}

std::optional<SubstanceIndex> read_substance_name(const text::Node& node, const Reading& reading) {
  const auto name = text::text_of(node, reading.diagnostics);
  if (!name) return std::nullopt;
  const std::vector<SubstanceIndex> found = reading.catalogue.find_substances(*name);
  if (found.size() == 1) return found.front();
  if (found.empty()) {
    reading.diagnostics.add(messages::unknown_substance, node.span,
                            {*name, reading.substance_hint(*name)});
    return std::nullopt;
  }
  constexpr std::size_t most_named = 4;
  std::vector<std::string> names;
  for (const SubstanceIndex at : found) {
    if (names.size() < most_named) names.push_back(reading.catalogue.substances[at].name);
  }
  reading.diagnostics.add(messages::ambiguous_substance, node.span, {*name, text::listed(names)});
  return std::nullopt;
}

}  // namespace sudsmark::catalogue
