#include "rules/value.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace sudsmark::rules {
namespace {

/// Whether a text that names several, as in "9, 10A and 7A", names one.
bool names(std::string_view several, std::string_view one) {
  while (!several.empty()) {
    const std::size_t end = std::min({several.find(", "), several.find(" and "), several.size()});
    if (several.substr(0, end) == one) return true;
    several.remove_prefix(end);
    if (!several.empty()) several.remove_prefix(several.front() == ',' ? 2 : 5);
  }
  return false;
}

}  // namespace

Value figure(const Range& range, const MissingSet& missing) {
  Value value;
  value.range = Value::sane(range);
  if (!value.range.exact()) value.missing = missing;
  return value;
}

Value figure(const Measured& measured) {
  return figure(measured.value, measured.missing);
}

Value truth(Certainty certainty, const MissingSet& missing) {
  Value value;
  value.truth = certainty;
  if (certainty == Certainty::depends) value.missing = missing;
  return value;
}

Value truth(bool is) {
  return truth(is ? Certainty::yes : Certainty::no);
}

Value end_of(const Value& value, double end) {
  if (!std::isfinite(end)) return figure(Range::unknown(), value.missing);
  return figure(Range(end), {});
}

Value text_value(std::string_view text) {
  Value value;
  value.text = text;
  return value;
}

Value unknown_value(MissingSet missing) {
  Value value;
  value.range = Range::unknown();
  value.truth = Certainty::depends;
  value.known = false;
  value.missing = std::move(missing);
  return value;
}

Certainty denied(Certainty truth) {
  if (truth == Certainty::depends) return truth;
  return truth == Certainty::yes ? Certainty::no : Certainty::yes;
}

Value both(const Value& a, const Value& b) {
  if (a.truth == Certainty::no || b.truth == Certainty::no) return truth(Certainty::no);
  if (a.truth == Certainty::yes) return b;
  if (b.truth == Certainty::yes) return a;
  return truth(Certainty::depends, a.missing | b.missing);
}

Value one_of(const Value& a, const Value& b, const MissingSet& missing) {
  Value value;
  value.range = quantity::hull(a.range, b.range);
  value.truth = a.truth == b.truth ? a.truth : Certainty::depends;
  value.text = a.text;
  value.known = a.known && b.known && a.text == b.text;
  const bool settled = value.range.exact() && value.truth != Certainty::depends && value.known;
  if (!settled) value.missing = missing | a.missing | b.missing;
  return value;
}

Value smaller(const Value& a, const Value& b) {
  if (a.range.high <= b.range.low) return a;
  if (b.range.high <= a.range.low) return b;
  return figure(quantity::min(a.range, b.range), a.missing | b.missing);
}

Value greater(const Value& a, const Value& b) {
  if (a.range.low >= b.range.high) return a;
  if (b.range.low >= a.range.high) return b;
  return figure(quantity::max(a.range, b.range), a.missing | b.missing);
}

Certainty related(Relation relation, const Range& a, const Range& b) {
  switch (relation) {
    case Relation::equal:
      return quantity::equal(a, b);
    case Relation::unequal:
      return denied(quantity::equal(a, b));
    case Relation::less:
      return quantity::less(a, b);
    case Relation::less_equal:
      return quantity::less_or_equal(a, b);
    case Relation::greater:
      return quantity::less(b, a);
    case Relation::greater_equal:
      break;
  }
  return quantity::less_or_equal(b, a);
}

Value related(Relation relation, const Value& a, const Value& b) {
  return truth(related(relation, a.range, b.range), a.missing | b.missing);
}

Value within(const Value& figure, const Value& low, const Value& high) {
  return both(related(Relation::less_equal, low, figure),
              related(Relation::less_equal, figure, high));
}

Value same_text(const Value& a, const Value& b) {
  if (!a.known || !b.known) return truth(Certainty::depends, a.missing | b.missing);
  return truth(a.text == b.text || (a.several && names(a.text, b.text)) ||
               (b.several && names(b.text, a.text)));
}

}  // namespace sudsmark::rules
