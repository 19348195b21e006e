#include "report/source_register.h"

#include <algorithm>
#include <tuple>

namespace sudsmark::report {
namespace {

auto key(const SourceNote& note) {
  return std::tie(note.kind, note.title, note.where, note.quoted, note.computed);
}

bool same(const SourceNote& a, const SourceNote& b) {
  return key(a) == key(b);
}

int rank(const SourceNote& note) {
  if (note.kind == "published") return 0;
  return note.kind == "common practice" ? 1 : 2;
}

}  // namespace

SourceRegister::SourceRegister(const FormulaResult& formula) {
  for (const Finding& finding : formula.findings) {
    if (finding.kind != Kind::not_applicable) add(finding.sources);
  }
  for (const IngredientRow& row : formula.ingredients) add(row.sources);
  for (const CompositionRow& row : formula.composition) add(row.sources);
  std::stable_sort(all_.begin(), all_.end(),
                   [](const SourceNote& a, const SourceNote& b) { return rank(a) < rank(b); });
  told_.resize(all_.size());
  const auto tell = [&](const std::vector<SourceNote>& notes) {
    for (const std::size_t number : numbers(notes)) told_[number - 1] = true;
  };
  for (const Finding& finding : formula.findings) {
    const bool silent = finding.kind == Kind::pass || finding.kind == Kind::not_applicable;
    if (!silent || finding.allowed) tell(finding.sources);
  }
  for (const IngredientRow& row : formula.ingredients) tell(row.sources);
  for (const CompositionRow& row : formula.composition) tell(row.sources);
}

bool SourceRegister::is_told(const std::string& kind) const {
  for (std::size_t at = 0; at < all_.size(); ++at) {
    if (all_[at].kind == kind && told_[at]) return true;
  }
  return false;
}

void SourceRegister::add(const std::vector<SourceNote>& notes) {
  for (const SourceNote& note : notes) {
    const bool known = std::any_of(all_.begin(), all_.end(),
                                   [&](const SourceNote& other) { return same(note, other); });
    if (!known) all_.push_back(note);
  }
}

std::vector<std::size_t> SourceRegister::numbers(const std::vector<SourceNote>& notes) const {
  std::vector<std::size_t> out;
  for (std::size_t at = 0; at < all_.size(); ++at) {
    const bool named = std::any_of(notes.begin(), notes.end(),
                                   [&](const SourceNote& note) { return same(note, all_[at]); });
    if (named) out.push_back(at + 1);
  }
  return out;
}

}  // namespace sudsmark::report
