#include "report/leeway/leeway_words.h"

#include <cmath>

#include "quantity/number.h"
#include "report/subject_words.h"

namespace sudsmark::report {
namespace {

constexpr int digits = 4;

/// To so many digits that count, down or up.
double cut(double value, bool up) {
  if (!(value > 0)) return 0;
  const double unit = std::pow(10.0, std::floor(std::log10(value)) + 1 - digits);
  constexpr double bits = 1e-6;  // of a unit: what binary fractions make of a whole one
  const double units = value / unit;
  return (up ? std::ceil(units - bits) : std::floor(units + bits)) * unit;
}

std::string number(double value) {
  constexpr double fine = 1e10;
  return quantity::machine_number(std::round(value * fine) / fine);
}

}  // namespace

std::string printed_end(const LeewayEnd& end, bool least) {
  return number(cut(end.share, least)) + " %";
}

std::string printed_share(const Figure& share) {
  const std::string low = number(cut(share.low.value_or(0), false));
  const std::string high = number(cut(share.high.value_or(0), false));
  return (low == high ? low : low + " to " + high) + " %";
}

std::string line_name(const LeewayLine& line) {
  return line.container.empty() ? line.material : line.material + " in " + line.container;
}

std::string stop_words(const LeewayEnd& end, bool least) {
  const std::string share = printed_end(end, least);
  if (end.stopped_by) {
    return (least ? "below " : "above ") + share + ": " +
           subject_prefix(end.stopped_by->subject_kind, end.stopped_by->subject) +
           end.stopped_by->message;
  }
  if (least) return end.share > 0 ? "nothing stops it down to " + share : "nothing stops it";
  return "nothing stops it up to " + share + ", where there is no room for more";
}

}  // namespace sudsmark::report
