#include "wording/citations.h"

#include <string_view>

#include "catalogue/citation.h"

namespace sudsmark::wording {

std::vector<SourceNote> notes(const catalogue::Citations& citations,
                              const catalogue::Catalogue& catalogue) {
  std::vector<SourceNote> out;
  for (const catalogue::CitationIndex at : citations) {
    const catalogue::Citation& citation = catalogue.citations[at];
    out.push_back({std::string(catalogue::kind_word(citation.kind)), citation.title, citation.where,
                   citation.quoted, citation.computed});
  }
  return out;
}

std::string how_found(const SourceNote& note) {
  std::string out;
  const auto said = [&](std::string_view words) {
    return note.where.find(words) != std::string::npos;
  };
  if (note.quoted && !said("quoted")) out += " (as quoted elsewhere)";
  if (note.computed && !said("worked out")) out += " (worked out from it)";
  return out;
}

std::string words(const SourceNote& note) {
  std::string out = note.kind;
  if (!note.title.empty()) out += ": " + note.title;
  if (!note.where.empty()) out += ", " + note.where;
  return out + how_found(note);
}

std::string words(const std::vector<SourceNote>& notes) {
  std::string out;
  for (const SourceNote& note : notes) {
    if (!out.empty()) out += "; ";
    out += words(note);
  }
  return out;
}

}  // namespace sudsmark::wording
