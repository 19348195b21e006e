#include "wording/margin.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "quantity/number.h"
#include "quantity/range.h"
#include "wording/words.h"

namespace sudsmark::wording {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// What one end of a limit leaves: the least and the most that may be to spare.
struct Room {
  double least = infinity;
  double most = infinity;
  double limit = 0;
  bool upper = true;
  [[nodiscard]] double relative() const { return least / std::max(std::abs(limit), 1e-12); }
};

double low_of(const Figure& figure) {
  return figure.low.value_or(-infinity);
}
double high_of(const Figure& figure) {
  return figure.high.value_or(infinity);
}

bool unknown(const Figure& figure) {
  return !std::isfinite(low_of(figure)) && !std::isfinite(high_of(figure));
}

/// What the end of the limit leaves that leaves least; nothing where there is no limit.
std::optional<Room> worst_room(const Figure& measured, const Figure& limit) {
  const double low = low_of(measured);
  const double high = high_of(measured);
  std::optional<Room> worst;
  const auto consider = [&](const Room& room) {
    if (!worst || !(room.relative() >= worst->relative())) worst = room;
  };
  if (limit.high) consider({*limit.high - high, *limit.high - low, *limit.high, true});
  if (limit.low) consider({low - *limit.low, high - *limit.low, *limit.low, false});
  return worst;
}

std::string amount(double value, const std::string& unit) {
  std::string out = quantity::printed(std::abs(value));
  if (unit != "1") out += " " + people_unit(unit);
  return out;
}

/// "at least " where the two ends of what is to spare do not read the same.
std::string at_least(const Room& room, double said) {
  const double other = said == room.least ? room.most : room.least;
  return quantity::printed(std::abs(said)) == quantity::printed(std::abs(other)) ? "" : "at least ";
}

bool nothing(double value, double limit) {
  return std::abs(value) <= quantity::equal_within * std::max(std::abs(limit), 1.0);
}

std::string described(const Room& room, const std::string& unit) {
  const std::string beyond = room.upper ? " over" : " short";
  if (nothing(room.least, room.limit) && nothing(room.most, room.limit)) return "just met";
  if (room.least >= 0 || nothing(room.least, room.limit)) {
    if (nothing(room.least, room.limit)) return "met, with nothing to spare at worst";
    return at_least(room, room.least) + amount(room.least, unit) + " to spare";
  }
  if (room.most < 0) {
    return at_least(room, room.most) + amount(room.most, unit) + beyond;
  }
  const std::string worst =
      std::isfinite(room.least) ? amount(room.least, unit) + beyond : "any amount" + beyond;
  const std::string best = nothing(room.most, room.limit) ? "just met"
                           : std::isfinite(room.most)     ? amount(room.most, unit) + " to spare"
                                                          : "any amount to spare";
  return "at best " + best + ", at worst " + worst;
}

}  // namespace

Margin margin(const Figure& measured, const Figure& limit) {
  Margin out;
  if (unknown(measured)) {
    out.words = "not known";
    return out;
  }
  const std::optional<Room> worst = worst_room(measured, limit);
  if (!worst) {
    out.words = "no limit known";
    out.relative = infinity;
    return out;
  }
  out.relative = worst->relative();
  const bool kept = worst->least >= 0 || nothing(worst->least, worst->limit);
  out.side = kept ? Side::within : worst->most < 0 ? Side::outside : Side::straddles;
  out.words = described(*worst, measured.unit);
  return out;
}

double relative_margin(const Figure& measured, const Figure& limit) {
  if (unknown(measured)) return 0;
  const std::optional<Room> worst = worst_room(measured, limit);
  return worst ? worst->relative() : infinity;
}

std::string people_unit(std::string_view unit) {
  if (unit == "C") return "\u00B0C";
  if (unit == "m3") return "m\u00B3";
  if (unit == "mg/m3") return "mg/m\u00B3";
  if (unit == "g/m3") return "g/m\u00B3";
  return std::string(unit);
}

std::string shown(const Figure& figure) {
  if (figure.unit == "g" && figure.low.value_or(0) >= 1000) {
    // to the gram, which three digits that count would lose
    const auto kilograms = [](double grams) {
      return quantity::machine_number(std::round(grams) / 1000);
    };
    const std::string low = kilograms(*figure.low);
    if (!figure.high) return "at least " + low + " kg";
    const std::string high = kilograms(*figure.high);
    return (low == high ? low : low + " to " + high) + " kg";
  }
  return printed(Figure{figure.low, figure.high, people_unit(figure.unit)});
}

std::string wanted(const Figure& limit) {
  const auto end = [&](double value) {
    const std::string number = quantity::printed(value);
    if (limit.unit == "pH") return "pH " + number;
    return limit.unit == "1" ? number : number + " " + people_unit(limit.unit);
  };
  if (limit.low && limit.high) {
    if (*limit.low == *limit.high) return end(*limit.low);
    const bool ph = limit.unit == "pH";
    return (ph ? "pH " : "") + quantity::printed(*limit.low) + " to " +
           (ph ? quantity::printed(*limit.high) : end(*limit.high));
  }
  if (limit.high) return "at most " + end(*limit.high);
  if (limit.low) return "at least " + end(*limit.low);
  return "no limit known";
}

std::string shown_beside(const Figure& measured, const Figure& limit) {
  const bool none = limit.high == 0.0 && limit.low.value_or(0.0) == 0.0 &&
                    measured.low.value_or(-1.0) >= 0.0 && limit.unit != "C" && limit.unit != "pH";
  return shown(measured) + "; " + (none ? "none" : wanted(limit));
}

bool nothing_to_show(const Finding& finding) {
  if (!finding.measured || !finding.limit) return true;
  if (!finding.measured->low && !finding.measured->high) return true;
  if (!finding.limit->low && !finding.limit->high) return true;
  return finding.kind == Kind::pass && finding.measured->high == 0.0 &&
         finding.limit->low.value_or(0.0) <= 0.0;
}

}  // namespace sudsmark::wording
