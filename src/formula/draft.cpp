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

Draft draft_of(const Card& card) {
  Draft draft;
  read_parts(card.phases, PartKind::phase, draft);
  read_parts(card.premixes, PartKind::premix, draft);
  read_parts(card.portions, PartKind::portion, draft);
  return draft;
}

void write_back(Draft draft, Card& card) {
  auto at = draft.begin();
  write_parts(at, card.phases);
  write_parts(at, card.premixes);
  write_parts(at, card.portions);
}

}  // namespace sudsmark::formula
