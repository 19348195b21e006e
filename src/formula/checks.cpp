#include "formula/checks.h"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <vector>

#include "formula/balance.h"
#include "formula/messages.h"
#include "formula/reading.h"
#include "formula/words.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

constexpr std::size_t most_lines = 2000;

/// Names of one kind, each with the place where it was given first.
class Names {
 public:
  explicit Names(text::Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

  template <typename Sections>
  Names& add(std::string_view kind, const Sections& sections) {
    for (const auto& section : sections) {
      const auto [known, is_new] =
          first_.emplace(text::fold(section.name.text), section.name.place);
      if (!is_new) {
        diagnostics_.add(messages::name_twice, {section.name.place, known->second},
                         {std::string(kind), shown(section.name.text)});
      }
    }
    return *this;
  }

 private:
  text::Diagnostics& diagnostics_;
  std::unordered_map<std::string, Span> first_;
};

class Units {
 public:
  Units(const std::vector<Premix>& premixes, text::Diagnostics& diagnostics)
      : diagnostics_(diagnostics) {
    for (const Premix& premix : premixes) {
      if (premix.unit) known_.push_back(premix.unit->text);
    }
  }

  void check(Amount& amount) const {
    if (amount.kind != AmountKind::units || knows(amount.unit)) return;
    std::string& unit = amount.unit;
    if (unit.ends_with('e') && knows(unit.substr(0, unit.size() - 1))) {
      unit.pop_back();
      return;
    }
    const std::string_view meant = meant_unit(unit);
    std::string hint = meant.empty() ? hint_for(unit) : "; write '" + std::string(meant) + "'";
    diagnostics_.add(messages::unknown_unit, amount.unit_place,
                     {shown(unit), std::move(hint), std::string(meant)});
  }
  void check(std::vector<Line>& lines) const {
    for (Line& line : lines) check(line.amount);
  }

 private:
  [[nodiscard]] bool knows(const std::string& unit) const {
    return std::find(known_.begin(), known_.end(), unit) != known_.end();
  }
  /// What a unit that nobody knows may have been meant for.
  [[nodiscard]] std::string hint_for(const std::string& unit) const {
    std::vector<std::string> candidates = known_;
    for (const std::string_view word : {"mg", "g", "kg", "oz", "lb", "ppm", "parts", "ml", "l"}) {
      candidates.emplace_back(word);
    }
    const std::string near = nearest_hint(unit, candidates);
    return near.empty() ? ": give mg, g, kg, oz, lb, %, ppm, parts, ml, l or a premix's own unit"
                        : near;
  }

  std::vector<std::string> known_;
  text::Diagnostics& diagnostics_;
};

}  // namespace

void check_names(const Card& card, text::Diagnostics& diagnostics) {
  Names(diagnostics).add("phase", card.phases);
  Names(diagnostics).add("portion", card.portions);
  Names(diagnostics).add("workshop", card.workshops);
  Names(diagnostics).add("task", card.tasks);
  Names(diagnostics)
      .add("premix", card.premixes)
      .add("fragrance", card.fragrances)
      .add("material", card.materials);
}

void check_units(Card& card, text::Diagnostics& diagnostics) {
  const Units units(card.premixes, diagnostics);
  for (Phase& phase : card.phases) units.check(phase.lines);
  for (Premix& premix : card.premixes) units.check(premix.lines);
  for (Portion& portion : card.portions) units.check(portion.lines);
  for (Task& task : card.tasks) {
    if (task.handles && task.handles->amount) units.check(*task.handles->amount);
  }
}

void check_portions(const Card& card, text::Diagnostics& diagnostics) {
  if (card.portions.empty()) return;
  Range sum = 0.0;
  for (const Portion& portion : card.portions) sum += portion.share.value;
  // a billionth more, so that 99.95 % is within 0.05 whatever binary fractions make of it
  constexpr double slack = share_tolerance + 1e-9;
  if (sum.high >= 1 - slack && sum.low <= 1 + slack) return;
  const bool less = sum.high < 1;
  const double off = less ? sum.high : sum.low;
  diagnostics.add(
      messages::portion_sum, card.portions.front().share.place,
      {off * 100, (less ? 1 - off : off - 1) * 100, std::string(less ? "is missing" : "too much")});
}

void check_line_count(const Card& card, text::Diagnostics& diagnostics) {
  std::size_t count = 0;
  const auto add = [&](const auto& sections) {
    for (const auto& section : sections) {
      const std::size_t before = count;
      count += section.lines.size();
      if (before <= most_lines && count > most_lines) {
        diagnostics.add(messages::too_many_lines, section.lines[most_lines - before].place);
      }
    }
  };
  add(card.phases);
  add(card.premixes);
  add(card.portions);
}

}  // namespace sudsmark::formula
