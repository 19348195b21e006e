#include "blend/recipe.h"

#include <algorithm>
#include <cmath>

#include "blend/messages.h"
#include "quantity/number.h"

namespace sudsmark::blend {
namespace {

using formula::AmountKind;
using quantity::Range;

constexpr double share_tolerance = 0.0005;  // 0.05 %
constexpr double mass_tolerance = 0.005;    // 0.5 % of the total
constexpr double nominal = 100.0;           // g, where no mass is given

/// Whether `wanted` lies in the range widened by a tolerance.
bool meets(const Range& sum, double wanted, double tolerance) {
  const double slack = tolerance * (1 + 1e-9);
  return sum.low - slack <= wanted && wanted <= sum.high + slack;
}

double distance(const Range& sum, double wanted) {
  return sum.low > wanted ? sum.low - wanted : wanted - sum.high;
}

class Recipe {
 public:
  Recipe(const std::vector<RecipeLine>& lines, const Target& target, text::Span place,
         text::Diagnostics& diagnostics)
      : lines_(lines), target_(target), place_(place), diagnostics_(diagnostics) {
    out_.masses.resize(lines.size());
    out_.on_top.resize(lines.size());
  }

  std::optional<Weighed> solve() {
    if (!sort_kinds() || !(parts_ ? weigh_parts() : weigh_sum()) || !add_doses()) {
      return std::nullopt;
    }
    return std::move(out_);
  }

 private:
  const formula::Amount& amount(std::size_t at) const { return lines_[at].line->amount; }

  bool sort_kinds() {
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      switch (amount(at).kind) {
        case AmountKind::mass:
          mass_ = true;
          break;
        case AmountKind::volume: {
          if (!lines_[at].density) {
            diagnostics_.add(messages::volume_without_density, amount(at).place,
                             {lines_[at].line->name.text});
            return false;
          }
          mass_ = true;
          break;
        }
        case AmountKind::units:
          mass_ = true;
          break;
        case AmountKind::share:
          share_ = true;
          break;
        case AmountKind::parts:
          parts_ = true;
          break;
        case AmountKind::dose:
          out_.on_top[at] = true;
          break;
        case AmountKind::fill:
          if (fill_) {
            diagnostics_.add(messages::fill_twice, {amount(at).place, amount(*fill_).place});
            return false;
          }
          fill_ = at;
          break;
      }
    }
    return true;
  }

  text::Span first_of(AmountKind kind) const {
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      if (amount(at).kind == kind) return amount(at).place;
    }
    return place_;
  }

  bool weigh_parts() {
    if (mass_ || share_ || fill_) {
      diagnostics_.add(messages::mixed_amounts, first_of(AmountKind::parts));
      return false;
    }
    Range sum = 0.0;
    bool exact = true;
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      if (out_.on_top[at]) continue;
      sum += amount(at).value;
      exact = exact && amount(at).value.exact();
    }
    if (!(sum.high > 0)) return true;
    // Parts only say how the ingredients stand to each other. Where they are ranges, what one gains
    // the others lose in share, which free masses around a nominal total express.
    out_.real = target_.mass && exact;
    const double total = target_.mass.value_or(nominal);
    const double middle = sum.low + (sum.high - sum.low) / 2;
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      if (!out_.on_top[at]) {
        out_.masses[at] =
            exact ? amount(at).value * total / sum : amount(at).value * total / middle;
      }
    }
    return true;
  }

  bool weigh_sum() {
    if (share_ && mass_ && !target_.mass) {
      diagnostics_.add(messages::batch_needed, first_of(AmountKind::share));
      return false;
    }
    const bool only_shares = !mass_;
    if (fill_ && mass_ && !target_.mass) {
      diagnostics_.add(messages::fill_needs_total, amount(*fill_).place);
      return false;
    }
    const double whole = target_.mass.value_or(nominal);
    Range sum = 0.0;
    Range shares = 0.0;
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      const formula::Amount& given = amount(at);
      switch (given.kind) {
        case AmountKind::mass:
          out_.masses[at] = given.value;
          break;
        case AmountKind::volume:
          out_.masses[at] = given.value * *lines_[at].density;
          break;
        case AmountKind::units:
          out_.masses[at] = given.value * *lines_[at].unit_mass;
          break;
        case AmountKind::share:
          shares += given.value;
          out_.masses[at] = given.value * whole;
          break;
        default:
          continue;
      }
      sum += out_.masses[at];
    }
    out_.real = target_.mass.has_value() || (mass_ && !share_);
    if (fill_) return fill(sum, whole, only_shares);
    if (only_shares) {
      if (share_ && !meets(shares, 1.0, share_tolerance)) return off_shares(shares);
      settle(sum, whole);
      return true;
    }
    if (target_.mass) {
      if (!meets(sum, whole, mass_tolerance * whole)) return off_masses(sum, whole);
      settle(sum, whole);
    }
    return true;
  }

  bool fill(const Range& sum, double whole, bool only_shares) {
    const Range left = Range(whole) - sum;
    if (left.high < 0) {
      const std::string figure = quantity::printed(only_shares ? sum.low / whole * 100 : sum.low);
      diagnostics_.add(messages::nothing_left, amount(*fill_).place,
                       {figure, std::string(only_shares ? "%" : "g")});
      return false;
    }
    out_.masses[*fill_] = {std::max(0.0, left.low), left.high};
    if (!sum.exact()) out_.fixed_total = whole;
    return true;
  }

  /// Ranges that must sum to a whole lean on each other.
  void settle(const Range& sum, double whole) {
    if (!sum.exact() && sum.low <= whole && whole <= sum.high) out_.fixed_total = whole;
  }

  bool off_shares(const Range& shares) {
    const quantity::Range percent = shares * 100.0;
    const bool less = percent.high < 100;
    diagnostics_.add(messages::share_sum, place_,
                     {less ? percent.high : percent.low, distance(percent, 100),
                      std::string(less ? "is missing" : "too much")});
    return false;
  }

  bool off_masses(const Range& sum, double whole) {
    const bool less = sum.high < whole;
    diagnostics_.add(
        messages::mass_sum, place_,
        {less ? sum.high : sum.low, whole, std::string(target_.called), distance(sum, whole),
         std::string(less ? "is missing" : "too much"), target_.hint});
    return false;
  }

  bool add_doses() {
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      if (!out_.on_top[at]) continue;
      Range before = 0.0;
      for (std::size_t other = 0; other < at; ++other) {
        if (lines_[other].phase == lines_[at].phase && !out_.on_top[other]) {
          before += out_.masses[other];
        }
      }
      if (!(before.high > 0)) {
        diagnostics_.add(messages::dose_on_nothing, amount(at).place);
        return false;
      }
      out_.masses[at] = before * amount(at).value;
    }
    return true;
  }

  const std::vector<RecipeLine>& lines_;
  const Target& target_;
  text::Span place_;
  text::Diagnostics& diagnostics_;
  Weighed out_;
  std::optional<std::size_t> fill_;
  bool mass_ = false;
  bool share_ = false;
  bool parts_ = false;
};

}  // namespace

std::optional<Weighed> weigh(const std::vector<RecipeLine>& lines, const Target& target,
                             text::Span place, text::Diagnostics& diagnostics) {
  return Recipe(lines, target, place, diagnostics).solve();
}

}  // namespace sudsmark::blend
