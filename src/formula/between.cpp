#include "formula/between.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <string_view>
#include <type_traits>
#include <utility>

#include "formula/balance.h"
#include "formula/checks.h"
#include "formula/print.h"
#include "formula/statements.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

bool near(double a, double b) {
  constexpr double within = 1e-12;
  return a == b || std::abs(a - b) <= within * std::max(std::abs(a), std::abs(b));
}

bool alike(const Amount& a, const Amount& b) {
  return a.kind == b.kind && a.unit == b.unit && near(a.value.low, b.value.low) &&
         near(a.value.high, b.value.high);
}

std::string written(const Statements& statements) {
  Document document;
  document.formula_name = Word{"x", {}, true};
  document.statements = statements;
  return print(document);
}

/// One section without its places, for comparing.
template <typename Section>
std::string written(std::vector<Section> Document::*list, Section section) {
  Document document;
  (document.*list).push_back(std::move(section));
  return print(document);
}

template <typename Section>
const Section* find(const std::vector<Section>& sections, const std::string& folded) {
  for (const Section& section : sections) {
    if (text::fold(section.name.text) == folded) return &section;
  }
  return nullptr;
}

/// A list of sections without those of a name, and with those that another list has of it.
template <typename Section>
void replace(std::vector<Section>& sections, const std::vector<Section>& with,
             const std::string& folded) {
  const Section* other = find(with, folded);
  for (Section& section : sections) {
    if (text::fold(section.name.text) != folded || other == nullptr) continue;
    if constexpr (std::is_same_v<Section, Premix>) {
      // its lines are differences of their own
      section.makes = other->makes;
      section.unit = other->unit;
    } else {
      section = *other;
    }
    return;
  }
  if (other == nullptr) {
    std::erase_if(sections,
                  [&](const Section& section) { return text::fold(section.name.text) == folded; });
  } else {
    sections.push_back(*other);
  }
}

/// Adds what only the other formula defines: it changes nothing until a line names it.
template <typename Section>
void unite(std::vector<Section>& sections, const std::vector<Section>& with) {
  for (const Section& section : with) {
    if (find(sections, text::fold(section.name.text)) == nullptr) sections.push_back(section);
  }
}

bool names(const std::vector<Line>& lines, const std::string& folded) {
  return std::any_of(lines.begin(), lines.end(),
                     [&](const Line& line) { return text::fold(line.name.text) == folded; });
}

bool in_use(const Card& card, const std::string& folded) {
  const auto in = [&](const auto& sections) {
    return std::any_of(sections.begin(), sections.end(),
                       [&](const auto& section) { return names(section.lines, folded); });
  };
  return in(card.phases) || in(card.premixes) || in(card.portions) ||
         std::any_of(card.tasks.begin(), card.tasks.end(), [&](const Task& task) {
           return task.handles && text::fold(task.handles->name.text) == folded;
         });
}

/// Calls `use(word, list of a card, list of a document)` for sections that a line or a statement
/// names, and for tasks.
template <typename Use>
void each_section(const Use& use) {
  use("premix", &Card::premixes, &Document::premixes);
  use("fragrance", &Card::fragrances, &Document::fragrances);
  use("material", &Card::materials, &Document::materials);
  use("workshop", &Card::workshops, &Document::workshops);
  use("task", &Card::tasks, &Document::tasks);
}

bool same_portions(const Card& a, const Card& b) {
  if (a.portions.size() != b.portions.size()) return false;
  return std::all_of(a.portions.begin(), a.portions.end(), [&](const Portion& portion) {
    const Portion* other = find(b.portions, text::fold(portion.name.text));
    return other != nullptr && near(portion.share.value.low, other->share.value.low) &&
           near(portion.share.value.high, other->share.value.high);
  });
}

/// What stands in a list, the first line of a name before its second.
std::vector<const Line*> of_name(const std::vector<Line>& lines, const std::string& wanted,
                                 const std::function<std::string(const std::string&)>& key) {
  std::vector<const Line*> out;
  for (const Line& line : lines) {
    if (key(line.name.text) == wanted) out.push_back(&line);
  }
  return out;
}

}  // namespace

Between::Between(const Card& from, const Card& to, const SameName& same_name,
                 const text::Sources& sources)
    : from_(from), to_(to), same_name_(same_name), sources_(sources) {
  compare_lines(PartKind::phase, from.phases, to.phases);
  portions_by_line_ = same_portions(from, to);
  if (portions_by_line_) {
    compare_lines(PartKind::portion, from.portions, to.portions);
  } else {
    const Span place = !to.portions.empty() ? to.portions.front().place : to.place;
    changes_.push_back({What::portions, PartKind::portion, {}, {}, {}, {}});
    switches_.push_back({"the portions", place});
  }
  compare_sections();
  compare_statements();
}

std::string Between::key(const std::string& name) const {
  const std::string folded = text::fold(name);
  const auto own = [&](const Card& card) {
    return find(card.premixes, folded) != nullptr || find(card.fragrances, folded) != nullptr ||
           find(card.materials, folded) != nullptr;
  };
  if (!same_name_ || own(from_) || own(to_)) return folded;
  return same_name_(name);
}

void Between::add(Change change, const Span& old_place, const Span& new_place) {
  const std::string old_words = written_line(sources_, old_place);
  const std::string new_words = written_line(sources_, new_place);
  std::string words;
  if (new_words.empty()) {
    words = "'" + old_words + "', which is gone";
  } else if (old_words.empty()) {
    words = "'" + new_words + "', which is new";
  } else {
    words = "'" + new_words + "' in place of '" + old_words + "'";
  }
  switches_.push_back({std::move(words), new_place.somewhere() ? new_place : old_place});
  changes_.push_back(std::move(change));
}

template <typename Section>
void Between::compare_lines(PartKind kind, const std::vector<Section>& from,
                            const std::vector<Section>& to) {
  static const std::vector<Line> none;
  for (const Section& section : from) {
    const Section* other = find(to, text::fold(section.name.text));
    compare_part(kind, section.name, section.lines, other == nullptr ? none : other->lines);
  }
  for (const Section& section : to) {
    if (find(from, text::fold(section.name.text)) != nullptr) continue;
    compare_part(kind, section.name, none, section.lines);
  }
}

void Between::compare_part(PartKind kind, const Word& name, const std::vector<Line>& from,
                           const std::vector<Line>& to) {
  const auto key_of = [&](const std::string& word) { return key(word); };
  std::vector<std::string> order;
  for (const auto* lines : {&from, &to}) {
    for (const Line& line : *lines) {
      const std::string wanted = key(line.name.text);
      if (std::find(order.begin(), order.end(), wanted) == order.end()) order.push_back(wanted);
    }
  }
  for (const std::string& wanted : order) {
    auto before = of_name(from, wanted, key_of);
    auto after = of_name(to, wanted, key_of);
    // lines that both have pair up first, wherever they stand
    std::erase_if(before, [&](const Line* line) {
      const auto same = std::find_if(after.begin(), after.end(), [&](const Line* other) {
        return alike(line->amount, other->amount) &&
               line->dries_off.has_value() == other->dries_off.has_value();
      });
      if (same == after.end()) return false;
      after.erase(same);
      return true;
    });
    for (std::size_t at = 0; at < std::max(before.size(), after.size()); ++at) {
      Change change{What::line, kind, text::fold(name.text), {}, {}, {}};
      if (at < before.size()) change.old_line = *before[at];
      if (at < after.size()) change.new_line = *after[at];
      const Span old_place = change.old_line ? change.old_line->place : Span{};
      const Span new_place = change.new_line ? change.new_line->place : Span{};
      add(std::move(change), old_place, new_place);
    }
  }
}

void Between::compare_statements() {
  each_field<Statements>([&](const auto& row) {
    using Field = typename std::remove_cvref_t<decltype(row)>::FieldType;
    if constexpr (changes_verdicts<Field>) {
      const Field& before = from_.statements.*(row.field);
      const Field& after = to_.statements.*(row.field);
      Statements only_before;
      Statements only_after;
      only_before.*(row.field) = before;
      only_after.*(row.field) = after;
      if (written(only_before) == written(only_after)) return;
      add({What::statement, {}, {}, {}, {}, std::string(row.full)}, place_of(before),
          place_of(after));
    }
  });
}

void Between::compare_sections() {
  each_section([&](std::string_view word, auto list, auto document_list) {
    const bool task = word == "task";
    for (const auto& section : to_.*list) {
      const std::string folded = text::fold(section.name.text);
      const auto* other = find(from_.*list, folded);
      if (other == nullptr) {
        // defined beside the lines that name it; only a task does something by being there
        if (task) add({What::section, {}, {}, {}, {}, "task " + folded}, {}, section.place);
        continue;
      }
      auto before = *other;
      auto after = section;
      if constexpr (std::is_same_v<decltype(before), Premix>) {
        compare_part(PartKind::premix, section.name, before.lines, after.lines);
        before.lines.clear();
        after.lines.clear();
      }
      if (written(document_list, before) == written(document_list, after)) continue;
      changes_.push_back({What::section, {}, {}, {}, {}, std::string(word) + " " + folded});
      switches_.push_back(
          {"the " + std::string(word) + " '" + section.name.text + "'", section.place});
    }
    for (const auto& section : from_.*list) {
      const std::string folded = text::fold(section.name.text);
      if (!task || find(to_.*list, folded) != nullptr) continue;
      add({What::section, {}, {}, {}, {}, "task " + folded}, section.place, {});
    }
  });
  const auto label = [](const Card& card) {
    Document document;
    if (card.label) document.labels.push_back(*card.label);
    return print(document);
  };
  if (label(from_) == label(to_)) return;
  changes_.push_back({What::label, {}, {}, {}, {}, {}});
  switches_.push_back({"the label", to_.label ? to_.label->place : from_.label->place});
}

void Between::change_line(const Change& change, std::vector<DraftPart*>& disturbed,
                          Draft& draft) const {
  for (DraftPart& part : draft) {
    if (part.kind != change.kind || text::fold(part.name.text) != change.part) continue;
    auto at = part.lines.end();
    if (change.old_line) {
      at = std::find_if(part.lines.begin(), part.lines.end(), [&](const DraftLine& line) {
        return line.line.place == change.old_line->place;
      });
    }
    if (at != part.lines.end() && change.new_line) {
      *at = {*change.new_line, true};
    } else if (at != part.lines.end()) {
      part.lines.erase(at);
    } else if (change.new_line) {
      part.lines.push_back({*change.new_line, true});
    }
    disturbed.push_back(&part);
    return;
  }
}

void Between::change_lines(const std::vector<bool>& on, Card& card,
                           text::Diagnostics& diagnostics) const {
  Draft draft = draft_of(card);
  const auto parts_of = [&](PartKind kind) {
    std::vector<DraftPart*> parts;
    for (DraftPart& part : draft) {
      if (part.kind == kind) parts.push_back(&part);
    }
    return parts;
  };
  std::optional<double> mass;
  if (from_.statements.batch) {
    const Range& batch = from_.statements.batch->value;
    mass = batch.low + (batch.high - batch.low) / 2;
  }
  const Balance phases(parts_of(PartKind::phase), mass, card.premixes);
  const std::vector<DraftPart*> premixes = parts_of(PartKind::premix);
  std::vector<Balance> premix_balances;
  for (std::size_t at = 0; at < premixes.size(); ++at) {
    premix_balances.emplace_back(std::vector{premixes[at]}, card.premixes[at].makes.value.high,
                                 card.premixes);
  }
  std::vector<DraftPart*> disturbed;
  Span last;
  for (std::size_t at = 0; at < changes_.size(); ++at) {
    if (!on[at] || changes_[at].what != What::line) continue;
    change_line(changes_[at], disturbed, draft);
    last = switches_[at].place;
  }
  const auto moved = [&](const DraftPart* part) {
    return std::find(disturbed.begin(), disturbed.end(), part) != disturbed.end();
  };
  const std::vector<DraftPart*> phase_parts = parts_of(PartKind::phase);
  if (std::any_of(phase_parts.begin(), phase_parts.end(), moved)) {
    phases.scale_rest(last, diagnostics);
  }
  for (std::size_t at = 0; at < premixes.size(); ++at) {
    if (moved(premixes[at])) premix_balances[at].scale_rest(last, diagnostics);
  }
  write_back(std::move(draft), card);
}

void Between::change_rest(const Change& change, Card& card) const {
  switch (change.what) {
    case What::line:
      break;
    case What::statement:
      each_field<Statements>([&](const auto& row) {
        if (row.full == change.name) {
          card.statements.*(row.field) = to_.statements.*(row.field);
        }
      });
      break;
    case What::section:
      each_section([&](std::string_view word, auto list, auto /*document_list*/) {
        const std::string begin = std::string(word) + " ";
        if (change.name.starts_with(begin)) {
          replace(card.*list, to_.*list, change.name.substr(begin.size()));
        }
      });
      break;
    case What::portions:
      card.portions = to_.portions;
      break;
    case What::label:
      card.label = to_.label;
      break;
  }
}

Card Between::with(const std::vector<bool>& on, text::Diagnostics& diagnostics) const {
  if (std::all_of(on.begin(), on.end(), [](bool one) { return one; })) return to_;
  Card card = from_;
  if (std::none_of(on.begin(), on.end(), [](bool one) { return one; })) return card;
  const std::size_t own_premixes = card.premixes.size();
  for (const Phase& phase : to_.phases) {
    if (find(card.phases, text::fold(phase.name.text)) == nullptr) {
      card.phases.push_back({phase.name, {}, phase.place});
    }
  }
  unite(card.premixes, to_.premixes);
  unite(card.fragrances, to_.fragrances);
  unite(card.materials, to_.materials);
  unite(card.workshops, to_.workshops);
  change_lines(on, card, diagnostics);
  for (std::size_t at = 0; at < changes_.size(); ++at) {
    if (on[at]) change_rest(changes_[at], card);
  }
  // a premix that only one of them has is there while something names it
  const std::vector<Premix> all = card.premixes;
  for (std::size_t at = 0; at < all.size(); ++at) {
    const std::string folded = text::fold(all[at].name.text);
    const bool in_both = at < own_premixes && find(to_.premixes, folded) != nullptr;
    if (!in_both && !in_use(card, folded)) replace<Premix>(card.premixes, {}, folded);
  }
  check_names(card, diagnostics);
  check_units(card, diagnostics);
  check_portions(card, diagnostics);
  return card;
}

}  // namespace sudsmark::formula
