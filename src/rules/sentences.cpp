#include "rules/sentences.h"

#include <cmath>
#include <limits>

#include "quantity/number.h"

namespace sudsmark::rules {
namespace {

using quantity::Range;
using quantity::Unit;

constexpr double infinity = std::numeric_limits<double>::infinity();

Unit unit_called(const std::string& word) {
  return quantity::find_unit(word).value_or(quantity::usual_unit(quantity::dimension::number));
}

std::string with_unit(const std::string& figures, const Unit& unit) {
  if (unit.word == "1") return figures;
  if (unit.word == "pH") return "pH " + figures;
  return figures + " " + std::string(unit.word);
}

bool is_nothing(const Range& range, const Unit& unit) {
  return range == Range(0.0) && unit.offset == 0;
}

/// A limit of 1 ppm or less asks whether something is there at all, and is no figure to show.
bool is_presence(const Test& test, const Range& limit) {
  constexpr double trace = 1e-6;
  const bool share = test.unit == "%" || test.unit == "ppm";
  return share && limit.high > 0 && limit.high <= trace * (1 + quantity::equal_within);
}

/// Whether a hole of a message prints the limit, so that nobody has to be told twice.
bool tells_limit(const Value& value, const Program& program, const Decider& decider) {
  if (!decider.compares() || decider.test->between || program.kind != ValueKind::figure) {
    return false;
  }
  const Range& limit = decider.tried.low;
  return value.range == limit && limit.known() && value.range != decider.tried.measured &&
         unit_called(program.unit).dimension == unit_called(decider.test->unit).dimension;
}

double nearer(double figure, const Range& limit) {
  if (!std::isfinite(limit.low)) return limit.high;
  if (!std::isfinite(limit.high)) return limit.low;
  return std::abs(figure - limit.low) < std::abs(figure - limit.high) ? limit.low : limit.high;
}

std::string said(const Value& value, const Program& program, const Decider& decider) {
  if (program.kind == ValueKind::text) {
    return value.known ? std::string(value.text) : std::string("unknown");
  }
  Unit unit = unit_called(program.unit);
  if (decider.compares() && value.range == decider.tried.measured) {
    // in the unit of its limit, beside which it stands
    const Unit of_limit = unit_called(decider.test->unit);
    if (of_limit.dimension == unit.dimension) unit = of_limit;
    const Range ends = quantity::hull(decider.tried.low, decider.tried.high);
    return printed_beside(value.range, ends, unit);
  }
  return quantity::printed(value.range, unit);
}

}  // namespace

std::string printed_beside(const Range& range, const Range& limit, const Unit& unit) {
  const double size = std::max(std::abs(range.low), std::abs(range.high));
  const bool one_figure = range.high - range.low <= quantity::equal_within * size;
  if (!range.known()) return quantity::printed(range, unit);
  if (one_figure) {
    const double middle = range.low + (range.high - range.low) / 2;
    return quantity::printed_apart(middle, nearer(middle, limit), unit);
  }
  Unit bare = unit;
  bare.word = "1";
  const std::string low = quantity::printed_apart(range.low, nearer(range.low, limit), bare);
  const std::string high = quantity::printed_apart(range.high, nearer(range.high, limit), bare);
  return with_unit(low == high ? low : low + " to " + high, unit);
}

std::string limit_words(const Decider& decider, const Rule& rule) {
  if (!decider.compares()) return {};
  const Test& test = *decider.test;
  const Range& low = decider.tried.low;
  const Range& high = decider.tried.high;
  if (!low.known() || !high.known()) return {};
  const Unit unit = unit_called(test.unit);
  if (test.between) {
    const std::string least = quantity::printed(low, unit);
    const std::string most = quantity::printed(high, unit);
    return test.denied ? "less than " + least + " or more than " + most
                       : "at least " + least + " and at most " + most;
  }
  if (is_presence(test, low)) return {};
  const std::string limit = quantity::printed(low, unit);
  const char* const none =
      rule.words->telling.concern == Concern::law ? "none allowed" : "none wanted";
  switch (test.denied ? opposite(test.relation) : test.relation) {
    case Relation::equal:
      return is_nothing(low, unit) ? none : limit;
    case Relation::unequal:
      return "anything but " + limit;
    case Relation::less:
      return "less than " + limit;
    case Relation::less_equal:
      return is_nothing(low, unit) ? none : "at most " + limit;
    case Relation::greater:
      return "more than " + limit;
    case Relation::greater_equal:
      break;
  }
  return "at least " + limit;
}

std::optional<Range> limit_of(const Decider& decider) {
  if (!decider.compares()) return std::nullopt;
  const Test& test = *decider.test;
  const Range& low = decider.tried.low;
  const Range& high = decider.tried.high;
  if (test.between) {
    if (test.denied) return std::nullopt;
    // What is within keeps to both for certain; there is no such figure where the two depend on
    // what the formula does not say.
    if (low.high > high.low) return std::nullopt;
    return Range(low.high, high.low);
  }
  if (is_presence(test, low)) return std::nullopt;
  switch (test.denied ? opposite(test.relation) : test.relation) {
    case Relation::equal:
      return low;
    case Relation::unequal:
      return std::nullopt;
    case Relation::less:
    case Relation::less_equal:
      return Range(-infinity, low.low);
    case Relation::greater:
    case Relation::greater_equal:
      break;
  }
  return Range(low.high, infinity);
}

std::string filled(const std::vector<MessagePart>& message, const Subject& subject,
                   Machine& machine, const Decider& decider, bool* limit_told) {
  std::string out;
  for (const MessagePart& part : message) {
    out += part.text;
    if (!part.value) continue;
    const Value value = machine.run(*part.value, subject);
    out += said(value, *part.value, decider);
    if (limit_told != nullptr && tells_limit(value, *part.value, decider)) *limit_told = true;
  }
  return out;
}

std::string headline(const Rule& rule, const Subject& subject, const Decider& decider) {
  std::string out = rule.words->title;
  if (subject.each != Each::product) out += ": '" + std::string(subject.name) + "'";
  if (!decider.compares()) return out;
  const Range ends = quantity::hull(decider.tried.low, decider.tried.high);
  const Unit unit = unit_called(decider.test->unit);
  out += " (" + printed_beside(decider.tried.measured, ends, unit);
  const std::string limit = limit_words(decider, rule);
  if (!limit.empty()) out += "; " + limit;
  return out + ")";
}

std::string listed(const blend::MissingSet& missing, const blend::MissingTable& table) {
  constexpr std::size_t most = 3;
  std::size_t count = 0;
  missing.each([&](std::size_t) { ++count; });
  const std::size_t told = count > most + 1 ? most : count;
  std::string out;
  std::size_t at = 0;
  missing.each([&](std::size_t index) {
    if (at < told) {
      if (at > 0) out += at + 1 == count ? " and " : ", ";
      out += table.items()[index].what;
    }
    ++at;
  });
  if (told < count) out += " and " + std::to_string(count - told) + " more";
  return out;
}

}  // namespace sudsmark::rules
