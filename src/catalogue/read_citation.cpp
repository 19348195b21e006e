#include <array>

#include "catalogue/entries.h"
#include "catalogue/messages.h"

namespace sudsmark::catalogue {

Citation read_citation(const text::Node& node, const Reading& reading) {
  constexpr std::array kinds{std::string_view("published"), std::string_view("common practice"),
                             std::string_view("from memory")};
  text::Fields fields(node, reading.diagnostics);
  Citation citation;
  citation.id = fields.needed_text("id");
  check_id(fields.find("id"), reading);
  if (const text::Node* kind = fields.needed("kind")) {
    if (const auto at = read_choice(*kind, kinds, "a kind of source", reading)) {
      citation.kind = static_cast<SourceKind>(*at);
    }
  }
  citation.title = fields.needed_text("title");
  citation.where = fields.text("where");
  if (const text::Node* read = fields.find("read")) {
    const auto word = text::text_of(*read, reading.diagnostics);
    citation.quoted = word == "quoted";
    if (word && !citation.quoted) {
      reading.diagnostics.add(messages::wrong_word, read->span, {"'quoted'", *word});
    }
  }
  citation.computed = fields.flag("computed");
  fields.refuse_others();
  return citation;
}

}  // namespace sudsmark::catalogue
