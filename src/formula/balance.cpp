#include "formula/balance.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "formula/messages.h"
#include "formula/reading.h"
#include "text/digits.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

// The same as share_tolerance, of a batch.
constexpr double mass_tolerance = 0.005;

double middle(const Range& range) {
  return range.low + (range.high - range.low) / 2;
}

double tidy(double value) {
  constexpr int digits = 12;
  return text::rounded_to_digits(value, digits);
}

/// Added without directed rounding: the sums are only compared, and exact ones stay exact.
void add(Range& sum, const Range& value) {
  sum = {sum.low + value.low, sum.high + value.high};
}

Range weighed(const Range& value, double each) {
  return {value.low * each, value.high * each};
}

bool near(const Range& sum, double whole, double tolerance) {
  return sum.low - tolerance * whole <= whole && whole <= sum.high + tolerance * whole;
}

}  // namespace

Range tidy(const Range& range) {
  return {tidy(range.low), tidy(range.high)};
}

Balance::Balance(std::vector<DraftPart*> parts, std::optional<double> mass,
                 const std::vector<Premix>& premixes)
    : parts_(std::move(parts)), mass_(mass), premixes_(premixes) {
  before_ = sums([](const DraftLine&) { return true; });
}

Range Balance::makes_of(const Word& name) const {
  const std::string folded = text::fold(name.text);
  for (const Premix& premix : premixes_) {
    if (text::fold(premix.name.text) == folded) return premix.makes.value;
  }
  return 0.0;
}

std::optional<double> Balance::weight(const Line& line) const {
  const double value = middle(line.amount.value);
  switch (line.amount.kind) {
    case AmountKind::mass:
      return value;
    case AmountKind::units:
      return value * middle(makes_of(line.name));
    case AmountKind::share:
      if (mass_) return value * *mass_;
      return std::nullopt;
    default:
      return std::nullopt;
  }
}

template <typename Wanted>
Balance::Sums Balance::sums(const Wanted& wanted) const {
  Sums sums;
  for (const DraftPart* part : parts_) {
    for (const DraftLine& line : part->lines) {
      if (!wanted(line)) continue;
      const Amount& amount = line.line.amount;
      switch (amount.kind) {
        case AmountKind::share:
          add(sums.share, amount.value);
          sums.has_share = true;
          break;
        case AmountKind::mass:
          add(sums.mass, amount.value);
          sums.has_mass = true;
          break;
        case AmountKind::units:
          add(sums.mass, weighed(amount.value, middle(makes_of(line.line.name))));
          sums.has_mass = true;
          break;
        case AmountKind::parts:
          add(sums.parts, amount.value);
          sums.has_parts = true;
          break;
        case AmountKind::volume:
          ++sums.volumes;
          break;
        case AmountKind::fill:
          sums.has_fill = true;
          break;
        case AmountKind::dose:
          break;
      }
    }
  }
  return sums;
}

Range Balance::in_common(const Sums& sums, const Common& common) const {
  if (common.unit == "parts") return sums.parts;
  if (common.unit == "%") return sums.share;
  if (!common.shares_weigh) return sums.mass;
  Range mass = sums.mass;
  add(mass, weighed(sums.share, *mass_));
  return mass;
}

std::optional<Balance::Common> Balance::common(const Word* name, Span place,
                                               text::Diagnostics& diagnostics) const {
  const Sums now = sums([](const DraftLine&) { return true; });
  const bool share = before_.has_share || now.has_share;
  const bool mass = before_.has_mass || now.has_mass || before_.volumes > 0 || now.volumes > 0;
  const bool parts = before_.has_parts || now.has_parts;
  if (now.volumes != before_.volumes) {
    diagnostics.add(messages::volume_in_tweak, place);
    return std::nullopt;
  }
  if ((parts && (share || mass)) || (share && mass && !mass_)) {
    diagnostics.add(parts ? messages::parts_beside : messages::batch_unknown, place);
    return std::nullopt;
  }
  Common common;
  common.unit = parts ? "parts" : mass ? "g" : "%";
  common.shares_weigh = share && mass;
  if (!parts) common.whole = mass ? mass_ : 1.0;
  common.total = in_common(before_, common);
  const double tolerance = mass ? mass_tolerance : share_tolerance;
  // what has no mass here stays as it is, and the others come to what they came to before
  const bool all_weigh = before_.volumes == 0;
  if (all_weigh && common.whole &&
      (before_.has_fill || near(common.total, *common.whole, tolerance))) {
    common.total = *common.whole;
  } else {
    common.whole.reset();
  }
  if (before_.has_fill && !common.whole && name != nullptr) {
    diagnostics.add(messages::batch_unknown, place);
    return std::nullopt;
  }
  return common;
}

void Balance::scale_rest(Span place, text::Diagnostics& diagnostics) const {
  const auto all = sums([](const DraftLine&) { return true; });
  if (before_.has_fill || all.has_fill) return;
  const auto common = this->common(nullptr, place, diagnostics);
  if (!common) return;
  const auto is_rest = [](const DraftLine& line) {
    return !line.touched && line.line.amount.kind != AmountKind::volume &&
           line.line.amount.kind != AmountKind::dose;
  };
  const double rest = middle(in_common(sums(is_rest), *common));
  const double kept =
      middle(in_common(sums([](const DraftLine& line) { return line.touched; }), *common));
  const double left = middle(common->total) - kept;
  if (left < 0) {
    const double percent = common->unit == "%" ? 100 : 1;
    diagnostics.add(messages::nothing_left, place,
                    {std::string("the rest"), tidy(kept * percent), std::string(common->unit),
                     tidy(middle(common->total) * percent)});
    return;
  }
  if (!(rest > 0) || std::abs(left / rest - 1) < 1e-12) return;
  for (DraftPart* part : parts_) {
    for (DraftLine& line : part->lines) {
      if (!is_rest(line)) continue;
      Range& value = line.line.amount.value;
      value = tidy(Range{value.low * (left / rest), value.high * (left / rest)});
    }
  }
}

void Balance::share_out(const Range& value, const Common& common,
                        const std::vector<DraftLine*>& lines) const {
  const std::vector<double> fractions = proportions(lines);
  for (std::size_t at = 0; at < lines.size(); ++at) {
    Amount& amount = lines[at]->line.amount;
    Range part{value.low * fractions[at], value.high * fractions[at]};
    if (common.unit != "g") {
      amount.kind = common.unit == "%" ? AmountKind::share : AmountKind::parts;
    } else if (amount.kind == AmountKind::share) {
      part = {part.low / *mass_, part.high / *mass_};
    } else {
      amount.kind = AmountKind::mass;
    }
    amount.value = tidy(part);
  }
}

std::vector<double> Balance::proportions(const std::vector<DraftLine*>& lines) const {
  const AmountKind kind = lines.front()->line.amount.kind;
  const bool one_kind = std::all_of(lines.begin(), lines.end(), [&](const DraftLine* line) {
    return line->line.amount.kind == kind;
  });
  const bool adds_up = one_kind && (kind == AmountKind::share || kind == AmountKind::mass ||
                                    kind == AmountKind::parts);
  std::vector<double> proportions;
  double sum = 0;
  for (const DraftLine* line : lines) {
    const auto own = adds_up ? std::optional(middle(line->line.amount.value)) : weight(line->line);
    if (!own) return {};
    proportions.push_back(*own);
    sum += *own;
  }
  for (double& one : proportions) {
    one = sum > 0 ? one / sum : 1.0 / static_cast<double>(lines.size());
  }
  return proportions;
}

bool Balance::settle_fill(const std::vector<DraftLine*>& filled, const Common& common) const {
  for (DraftPart* part : parts_) {
    for (DraftLine& line : part->lines) {
      const bool other = std::find(filled.begin(), filled.end(), &line) == filled.end();
      if (line.line.amount.kind != AmountKind::fill || !other) continue;
      const Range others = in_common(before_, common);
      const Range left{common.total.low - others.high, common.total.high - others.low};
      if (!before_.has_fill || !common.whole || !left.exact() || left.low < 0) return false;
      line.line.amount.kind = common.unit == "%" ? AmountKind::share : AmountKind::mass;
      line.line.amount.value = tidy(left);
    }
  }
  return true;
}

void Balance::fill(const std::vector<DraftLine*>& filled, const Word& name, Span place,
                   text::Diagnostics& diagnostics) const {
  const auto is_filled = [&](const DraftLine& line) {
    return std::find(filled.begin(), filled.end(), &line) != filled.end();
  };
  const bool fills_already = std::any_of(filled.begin(), filled.end(), [](const DraftLine* line) {
    return line->line.amount.kind == AmountKind::fill;
  });
  if (fills_already) return;
  const auto common = this->common(&name, place, diagnostics);
  if (!common) return;
  if (!settle_fill(filled, *common)) {
    diagnostics.add(messages::filled_already, place, {shown(name.text)});
    return;
  }
  const Sums others = sums([&](const DraftLine& line) { return !is_filled(line); });
  const Range sum = in_common(others, *common);
  const Range left{common->total.low - sum.high, common->total.high - sum.low};
  if (left.high < -1e-12 * sum.high) {
    const double percent = common->unit == "%" ? 100 : 1;
    diagnostics.add(messages::nothing_left, place,
                    {shown(name.text), tidy(sum.high * percent), std::string(common->unit),
                     tidy(common->total.low * percent)});
    return;
  }
  // Where others are ranges, only q.s. says that they and this one lean on each other.
  if (!left.exact() && common->whole && filled.size() == 1) {
    filled.front()->line.amount.kind = AmountKind::fill;
    filled.front()->line.amount.value = 0.0;
  } else {
    share_out({std::max(0.0, left.low), left.high}, *common, filled);
  }
  for (DraftLine* line : filled) {
    line->line.place = place;
    line->line.amount.place = place;
    line->touched = true;
  }
}

}  // namespace sudsmark::formula
