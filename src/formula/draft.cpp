#include "formula/draft.h"

#include <utility>

namespace sudsmark::formula {
namespace {

template <typename Sections>
void read_parts(const Sections& sections, PartKind kind, Draft& draft) {
  for (const auto& section : sections) {
    DraftPart& part = draft.emplace_back();
    part.kind = kind;
    part.name = section.name;
    for (const Line& line : section.lines) part.lines.push_back({line});
  }
}

template <typename Sections>
void write_parts(Draft::iterator& from, Sections& sections) {
  for (auto& section : sections) {
    section.lines.clear();
    for (DraftLine& line : from->lines) section.lines.push_back(std::move(line.line));
    ++from;
  }
}

}  // namespace

Draft draft_of(const Sheet& sheet) {
  Draft draft;
  read_parts(sheet.phases, PartKind::phase, draft);
  read_parts(sheet.premixes, PartKind::premix, draft);
  read_parts(sheet.portions, PartKind::portion, draft);
  return draft;
}

void write_back(Draft draft, Sheet& sheet) {
  auto at = draft.begin();
  write_parts(at, sheet.phases);
  write_parts(at, sheet.premixes);
  write_parts(at, sheet.portions);
}

}  // namespace sudsmark::formula
