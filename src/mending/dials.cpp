#include "mending/dials.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>
#include <tuple>
#include <utility>

#include "formula/balance.h"
#include "formula/print.h"
#include "formula/print_figure.h"
#include "mending/guards.h"
#include "text/name.h"

namespace sudsmark::mending {
namespace {

using formula::AmountKind;
using formula::DraftPart;
using formula::PartKind;

double middle(const formula::Range& range) {
  return range.low + (range.high - range.low) / 2;
}

/// Masses of the lines of a section, in their order [g]; negative where not known.
std::vector<double> weighed(const blend::Blend& blend, blend::SectionKind kind, std::size_t index) {
  std::vector<double> out;
  for (const blend::Weighing& one : blend.weighings) {
    if (one.section != kind || one.section_index != index) continue;
    out.push_back(one.mass.known() ? middle(one.mass) : -1);
  }
  return out;
}

bool turnable(AmountKind kind) {
  return kind != AmountKind::volume;
}

}  // namespace

Dials::Dials(const formula::Card& card, const blend::Blend& blend,
             const formula::SameName& same_name)
    : card_(card),
      blend_(blend),
      same_name_(same_name),
      draft_(formula::draft_of(card)),
      usage_(card.premixes.size(), 0.0),
      real_(blend.real_masses) {
  gather_phases(blend);
  gather_portions(blend);
  gather_premixes(blend);
  std::erase_if(dials_, [](const Dial& dial) { return !(dial.share > next_to_nothing); });
  drop_least();
  find_materials();
  add_keeps();
  choose_fillers({});
}

/// Each dial is turned on its own at every step: too many of them would take too long.
void Dials::drop_least() {
  constexpr std::size_t most = 120;
  if (dials_.size() <= most) return;
  std::vector<double> shares;
  for (const Dial& dial : dials_) shares.push_back(dial.fills ? 1.0 : dial.share);
  std::nth_element(shares.begin(), shares.begin() + most - 1, shares.end(), std::greater<>());
  const double least = shares[most - 1];
  std::erase_if(dials_, [&](const Dial& dial) { return !dial.fills && dial.share < least; });
}

std::string Dials::key(const std::string& name) const {
  std::string folded = text::fold(name);
  const auto own = [&](const auto& sections) {
    return std::any_of(sections.begin(), sections.end(),
                       [&](const auto& one) { return text::fold(one.name.text) == folded; });
  };
  const bool of_the_maker = own(card_.premixes) || own(card_.fragrances) || own(card_.materials);
  return of_the_maker || !same_name_ ? folded : same_name_(name);
}

/// Fractions of the mixed batch, line by line over all phases.
std::vector<double> Dials::shares_of_phases(const blend::Blend& blend) {
  std::vector<const formula::Amount*> amounts;
  std::vector<std::size_t> phases;
  std::vector<double> grams;
  for (std::size_t at = 0; at < card_.phases.size(); ++at) {
    const auto masses = weighed(blend, blend::SectionKind::phase, at);
    grams.insert(grams.end(), masses.begin(), masses.end());
    for (const formula::Line& line : card_.phases[at].lines) {
      amounts.push_back(&line.amount);
      phases.push_back(at);
    }
  }
  std::vector<double> out(amounts.size(), 0.0);
  if (grams.size() != amounts.size()) return out;
  double sum = 0;
  for (std::size_t at = 0; at < amounts.size(); ++at) {
    const AmountKind kind = amounts[at]->kind;
    if (kind == AmountKind::dose) continue;
    out[at] = real_ ? grams[at] : kind == AmountKind::fill ? 0.0 : middle(amounts[at]->value);
    sum += out[at];
    ranges_ = ranges_ || !amounts[at]->value.exact();
  }
  const bool parts = std::any_of(amounts.begin(), amounts.end(),
                                 [](const auto* one) { return one->kind == AmountKind::parts; });
  whole_ = real_ || parts ? sum : 1.0;
  for (std::size_t at = 0; at < amounts.size(); ++at) {
    if (!real_ && amounts[at]->kind == AmountKind::fill) out[at] = std::max(0.0, whole_ - sum);
    out[at] /= whole_;
  }
  for (std::size_t at = 0; at < amounts.size(); ++at) {
    if (amounts[at]->kind != AmountKind::dose) continue;
    double before = 0;
    for (std::size_t other = 0; other < at; ++other) {
      const bool counted = amounts[other]->kind != AmountKind::dose && phases[other] == phases[at];
      if (counted) before += out[other];
    }
    out[at] = before * middle(amounts[at]->value);
  }
  return out;
}

void Dials::gather_phases(const blend::Blend& blend) {
  const std::vector<double> shares = shares_of_phases(blend);
  std::size_t line_number = 0;
  std::set<std::string> unlike;
  for (std::size_t part = 0; part < draft_.size(); ++part) {
    if (draft_[part].kind != PartKind::phase) continue;
    for (std::size_t at = 0; at < draft_[part].lines.size(); ++at) {
      const formula::Line& line = draft_[part].lines[at].line;
      const double share = shares[line_number++];
      const std::string name = key(line.name.text);
      for (std::size_t premix = 0; premix < card_.premixes.size(); ++premix) {
        if (text::fold(card_.premixes[premix].name.text) == name) usage_[premix] += share;
      }
      const AmountKind kind = line.amount.kind;
      auto dial = std::find_if(dials_.begin(), dials_.end(),
                               [&](const Dial& one) { return one.key == name; });
      const bool divides =
          kind == AmountKind::share || kind == AmountKind::mass || kind == AmountKind::parts;
      if (dial == dials_.end()) {
        dials_.emplace_back();
        dial = std::prev(dials_.end());
        dial->name = line.name;
        dial->key = name;
        dial->amount = line.amount;
        dial->fills = kind == AmountKind::fill;
        if (kind != AmountKind::dose) dial->balance = 0;
        if (!turnable(kind)) unlike.insert(name);
      } else {
        if (!divides || dial->amount.kind != kind) unlike.insert(name);
        dial->amount.value = formula::tidy({dial->amount.value.low + line.amount.value.low,
                                            dial->amount.value.high + line.amount.value.high});
      }
      dial->parts.push_back(part);
      dial->lines.push_back(at);
      dial->share += share;
    }
  }
  std::erase_if(dials_, [&](const Dial& dial) { return unlike.contains(dial.key); });
  for (Dial& dial : dials_) {
    dial.worth = dial.share > 0 ? middle(dial.amount.value) / dial.share : 0;
    if (real_) dial.grams = whole_;
  }
}

void Dials::gather_portions(const blend::Blend& blend) {
  std::size_t portion = 0;
  std::vector<Dial> found;
  std::set<std::string> several;
  for (std::size_t part = 0; part < draft_.size(); ++part) {
    if (draft_[part].kind != PartKind::portion) continue;
    const auto grams = weighed(blend, blend::SectionKind::portion, portion);
    const double of_batch = middle(card_.portions[portion].share.value);
    ++portion;
    for (std::size_t at = 0; at < draft_[part].lines.size(); ++at) {
      const formula::Line& line = draft_[part].lines[at].line;
      const AmountKind kind = line.amount.kind;
      const bool relative = kind == AmountKind::dose || kind == AmountKind::share;
      Dial dial;
      dial.name = line.name;
      dial.key = key(line.name.text);
      dial.where = PartKind::portion;
      dial.part = part;
      dial.parts = {part};
      dial.lines = {at};
      dial.container = "portion '" + draft_[part].name.text + "'";
      dial.amount = line.amount;
      const double mass = at < grams.size() ? grams[at] : -1;
      dial.share = relative ? middle(line.amount.value) * of_batch : mass > 0 ? mass / whole_ : 0.0;
      if (!turnable(kind)) dial.share = 0;
      dial.worth = dial.share > 0 ? middle(dial.amount.value) / dial.share : 0;
      if (real_) dial.grams = whole_;
      for (std::size_t premix = 0; premix < card_.premixes.size(); ++premix) {
        if (text::fold(card_.premixes[premix].name.text) == dial.key) usage_[premix] += dial.share;
      }
      found.push_back(std::move(dial));
    }
  }
  dials_.insert(dials_.end(), std::make_move_iterator(found.begin()),
                std::make_move_iterator(found.end()));
}

void Dials::gather_premixes(const blend::Blend& blend) {
  // what a premix is used in may stand in another: as often as they can nest
  constexpr int deepest = 16;
  const std::vector<double> outside = usage_;
  std::vector<std::vector<double>> fractions;
  for (std::size_t premix = 0; premix < card_.premixes.size(); ++premix) {
    std::vector<double> grams = weighed(blend, blend::SectionKind::premix, premix);
    const auto& lines = card_.premixes[premix].lines;
    grams.resize(lines.size(), 0.0);
    double sum = 0;
    for (std::size_t at = 0; at < lines.size(); ++at) {
      if (lines[at].amount.kind != AmountKind::dose) sum += grams[at];
    }
    for (double& one : grams) one = sum > 0 ? one / sum : 0;
    fractions.push_back(std::move(grams));
  }
  for (int round = 0; round < deepest; ++round) {
    std::vector<double> used = outside;
    for (std::size_t premix = 0; premix < card_.premixes.size(); ++premix) {
      for (std::size_t at = 0; at < card_.premixes[premix].lines.size(); ++at) {
        const std::string name = text::fold(card_.premixes[premix].lines[at].name.text);
        for (std::size_t inner = 0; inner < card_.premixes.size(); ++inner) {
          if (text::fold(card_.premixes[inner].name.text) != name) continue;
          used[inner] += usage_[premix] * fractions[premix][at];
        }
      }
    }
    if (used == usage_) break;
    usage_ = used;
  }
  std::size_t premix = 0;
  for (std::size_t part = 0; part < draft_.size(); ++part) {
    if (draft_[part].kind != PartKind::premix) continue;
    const formula::Premix& said = card_.premixes[premix];
    for (std::size_t at = 0; at < draft_[part].lines.size(); ++at) {
      const formula::Line& line = draft_[part].lines[at].line;
      Dial dial;
      dial.name = line.name;
      dial.key = key(line.name.text);
      dial.where = PartKind::premix;
      dial.part = part;
      dial.parts = {part};
      dial.lines = {at};
      dial.container = "premix '" + said.name.text + "'";
      dial.amount = line.amount;
      dial.fills = line.amount.kind == AmountKind::fill;
      dial.share = turnable(line.amount.kind) ? fractions[premix][at] * usage_[premix] : 0.0;
      dial.worth = dial.share > 0 ? middle(dial.amount.value) / dial.share : 0;
      if (usage_[premix] > 0) dial.grams = middle(said.makes.value) / usage_[premix];
      if (line.amount.kind != AmountKind::dose) dial.balance = 1 + premix;
      ranges_ = ranges_ || !line.amount.value.exact();
      dials_.push_back(std::move(dial));
    }
    ++premix;
  }
  // the language sets a name in phases alone where it stands in them, else in one place
  std::set<std::string> taken;
  std::set<std::string> several;
  for (const Dial& dial : dials_) {
    if (!taken.insert(dial.key).second) several.insert(dial.key);
  }
  std::erase_if(dials_, [&](const Dial& dial) {
    return dial.where != PartKind::phase && several.contains(dial.key);
  });
}

bool Dials::holds(const std::string& premix, const std::string& wanted, int depth) const {
  constexpr int deepest = 16;
  if (depth > deepest) return false;
  return std::any_of(card_.premixes.begin(), card_.premixes.end(), [&](const formula::Premix& one) {
    return text::fold(one.name.text) == premix &&
           std::any_of(one.lines.begin(), one.lines.end(), [&](const formula::Line& line) {
             const std::string name = key(line.name.text);
             return name == wanted || holds(name, wanted, depth + 1);
           });
  });
}

void Dials::add_keeps() {
  for (const formula::Keep& keep : card_.statements.keeps) {
    const std::string wanted = key(keep.name.text);
    std::string words = "keep " + keep.name.text;
    if (keep.bounds) {
      words += " " + formula::printed_figure(keep.bounds->value, formula::measure::share);
    }
    for (Dial& dial : dials_) {
      if (dial.key == wanted) {
        dial.kept = keep.bounds ? keep.bounds->value : formula::Range(dial.share);
      } else if (!dial.kept && holds(dial.key, wanted, 0)) {
        dial.kept = dial.share;  // a premix would take it along
      } else {
        continue;
      }
      dial.keep = words;
    }
  }
}

void Dials::find_materials() {
  for (Dial& dial : dials_) {
    for (const blend::Weighing& one : blend_.weighings) {
      if (!one.material || key(one.name) != dial.key) continue;
      dial.material_id = *one.material;
      dial.material = &blend_.material(*one.material);
      dial.contents = blend_.contents(*one.material);
      break;
    }
  }
}

void Dials::spare(const std::set<std::size_t>& blamed) {
  choose_fillers(blamed);
}

void Dials::choose_fillers(const std::set<std::size_t>& blamed) {
  fillers_.assign(1 + card_.premixes.size(), dials_.size());
  for (std::size_t at = 0; at < dials_.size(); ++at) {
    const Dial& dial = dials_[at];
    if (!dial.balance) continue;
    std::size_t& filler = fillers_[*dial.balance];
    if (filler == dials_.size()) {
      filler = at;
      continue;
    }
    const auto rank = [&](std::size_t one) {
      const Dial& of = dials_[one];
      const bool free = !of.kept && !blamed.contains(one);
      return std::tuple(of.fills, free, fill_of(of, *blend_.product), of.share);
    };
    if (rank(at) > rank(filler)) filler = at;
  }
}

formula::Amount Dials::amount(const Dial& dial, double turn) const {
  formula::Amount out = dial.amount;
  const double by = turn * dial.worth;
  out.value = {std::max(0.0, out.value.low + by), std::max(0.0, out.value.high + by)};
  return out;
}

formula::Card Dials::turned(const Turns& turns) const {
  formula::Draft draft = draft_;
  std::vector<std::set<std::size_t>> gone(draft.size());
  for (std::size_t at = 0; at < dials_.size(); ++at) {
    const Dial& dial = dials_[at];
    if (turns[at] == 0) continue;
    const bool empty = dial.share + turns[at] < next_to_nothing;
    const double all = middle(dial.amount.value);
    for (std::size_t line = 0; line < dial.lines.size(); ++line) {
      if (empty) {
        gone[dial.parts[line]].insert(dial.lines[line]);
        continue;
      }
      if (dial.fills) continue;
      formula::Range& value = draft[dial.parts[line]].lines[dial.lines[line]].line.amount.value;
      const double by = turns[at] * dial.worth * (all > 0 ? middle(value) / all : 1);
      value = {std::max(0.0, value.low + by), std::max(0.0, value.high + by)};
    }
  }
  for (std::size_t part = 0; part < draft.size(); ++part) {
    for (auto at = gone[part].rbegin(); at != gone[part].rend(); ++at) {
      draft[part].lines.erase(draft[part].lines.begin() + static_cast<std::ptrdiff_t>(*at));
    }
  }
  formula::Card card = card_;
  formula::write_back(std::move(draft), card);
  return card;
}

}  // namespace sudsmark::mending
