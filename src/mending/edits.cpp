#include "mending/edits.h"

#include <algorithm>
#include <cmath>

#include "formula/balance.h"
#include "formula/print.h"
#include "formula/print_figure.h"
#include "wording/words.h"

namespace sudsmark::mending {
namespace {

using formula::AmountKind;
using formula::PartKind;

/// Digits behind the point that a figure needs.
std::size_t decimals(const std::string& figure) {
  const std::size_t point = figure.find('.');
  if (point == std::string::npos) return 0;
  return std::min(figure.find_first_not_of("0123456789", point + 1), figure.size()) - point - 1;
}

formula::Amount amount_of(const Dials& dials, const Dial& dial, double turn) {
  formula::Amount amount = dials.amount(dial, turn);
  amount.value = formula::tidy(amount.value);
  const bool exact = amount.value.exact();
  const bool of_phases = dial.where == PartKind::phase && dial.grams.has_value();
  // an odd share of a real batch is an even mass
  constexpr std::size_t most_decimals = 4;
  const bool odd = amount.kind == AmountKind::share && exact && of_phases &&
                   decimals(formula::printed_amount(amount)) > most_decimals;
  // bags are counted whole
  if ((odd || amount.kind == AmountKind::units) && of_phases) {
    const double each = *dial.grams / dial.worth;
    amount.kind = AmountKind::mass;
    amount.unit.clear();
    amount.value = formula::tidy({amount.value.low * each, amount.value.high * each});
  }
  return amount;
}

}  // namespace

std::string written(const formula::Word& name) {
  const std::string padded = " " + name.text + " ";
  const bool splits =
      padded.find(" to ") != std::string::npos || padded.find(" for ") != std::string::npos;
  return name.quoted || splits ? formula::between_quotes(name.text) : name.text;
}

std::string printed_edit(const formula::Amount& amount) {
  constexpr double fine = 1e4;
  constexpr double slack = 1e-6;
  const double scaled = amount.value.low * 100 * fine;
  const bool plain = amount.kind == AmountKind::share && amount.value.exact() &&
                     std::round(scaled) > 0 && std::abs(scaled - std::round(scaled)) < slack;
  if (!plain) return formula::printed_amount(amount);
  return formula::printed_number(std::round(scaled) / fine) + " %";
}

const Brought* comes_in(const std::vector<Brought>& brought, std::size_t dial) {
  const auto at = std::find_if(brought.begin(), brought.end(),
                               [&](const Brought& one) { return one.dial == dial; });
  return at == brought.end() ? nullptr : &*at;
}

std::vector<std::string> edits_of(const Dials& dials, const Turns& turns,
                                  const std::vector<Brought>& brought) {
  const std::vector<Dial>& all = dials.all();
  std::vector<std::string> removed;
  std::vector<std::string> set;
  const auto moved = [&](std::size_t at) {
    return turns[at] != 0 || std::any_of(brought.begin(), brought.end(),
                                         [&](const Brought& one) { return one.gave == at; });
  };
  // the greatest line that moves takes the rest, so that no other line is scaled
  std::size_t taker = all.size();
  bool filled = false;
  for (std::size_t at = 0; at < all.size(); ++at) {
    const Dial& dial = all[at];
    if (dial.balance != std::size_t{0} || comes_in(brought, at) != nullptr) continue;
    filled = filled || dial.fills;
    const bool moves = moved(at) && dial.share + turns[at] > next_to_nothing;
    const bool plain = dial.amount.kind == AmountKind::share ||
                       dial.amount.kind == AmountKind::mass ||
                       dial.amount.kind == AmountKind::parts;
    if (!moves || !plain || dial.lines.size() > 1) continue;
    if (taker == all.size() || all[taker].share < dial.share) taker = at;
  }
  if (filled || dials.ranges()) taker = all.size();
  for (std::size_t at = 0; at < all.size(); ++at) {
    const Dial& dial = all[at];
    if (const Brought* one = comes_in(brought, at)) {
      const std::string amount = printed_edit(amount_of(dials, dial, turns[at]));
      if (one->out_of.empty()) {
        removed.push_back("add " + amount + " " + written(dial.name) + " to " +
                          formula::between_quotes(one->phase));
      } else {
        removed.push_back("swap " + formula::between_quotes(one->out_of) + " for " +
                          written(dial.name));
        set.push_back("set " + written(dial.name) + " to " + amount);
      }
      continue;
    }
    if (!moved(at) || at == taker) continue;
    if (dial.share + turns[at] < next_to_nothing) {
      removed.push_back("remove " + written(dial.name));
    } else if (!dial.fills) {
      set.push_back("set " + written(dial.name) + " to " +
                    printed_edit(amount_of(dials, dial, turns[at])));
    }
  }
  removed.insert(removed.end(), set.begin(), set.end());
  if (taker != all.size()) removed.push_back("fill with " + written(all[taker].name));
  return removed;
}

std::string tweak_of(const std::string& name, const std::string& base_path,
                     std::optional<double> batch, const std::vector<std::string>& edits) {
  std::string out =
      "tweak " + formula::between_quotes(name) + " of " + formula::between_quotes(base_path) + "\n";
  if (batch) {
    out += "  scale batch to " + formula::printed_figure(*batch, formula::measure::mass) + "\n";
  }
  for (const std::string& edit : edits) out += "  " + edit + "\n";
  return out;
}

}  // namespace sudsmark::mending
