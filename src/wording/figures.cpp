#include "wording/figures.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "measures/registry.h"
#include "rules/machine.h"
#include "wording/words.h"

namespace sudsmark::wording {
namespace {

std::string told(const measures::Trace& trace) {
  std::string out;
  for (auto clause = trace.begin(); clause != trace.end(); ++clause) {
    // a figure that went in twice is told once
    if (std::find(trace.begin(), clause, *clause) != clause) continue;
    out += (out.empty() ? "" : "; ") + *clause;
  }
  return out;
}

}  // namespace

Figure figure(const quantity::Range& base, std::string_view unit) {
  const auto known = quantity::find_unit(unit);
  Figure out;
  out.unit = std::string(unit);
  const auto end = [&](double value) {
    std::optional<double> shown;
    if (std::isfinite(value)) shown = known ? known->from_base(value) : value;
    return shown;
  };
  out.low = end(base.low);
  out.high = end(base.high);
  return out;
}

Figure figure(const rules::Quantity& quantity) {
  return figure(quantity.value, quantity.unit);
}

void add_figures(const rules::Ruleset& ruleset, const std::vector<quantity::Range>& values,
                 std::vector<MeasureResult>& out) {
  const auto coded = measures::all();
  out.reserve(values.size());
  for (std::size_t at = 0; at < values.size(); ++at) {
    if (at < coded.size()) {
      out.push_back({std::string(coded[at].name), figure(values[at], coded[at].unit), {}, {}});
    } else {
      const rules::NamedMeasure& named = ruleset.measures[at - coded.size()];
      out.push_back({named.name, figure(values[at], named.unit), {}, {}});
    }
  }
}

void add_measures(const blend::Blend& blend, const rules::Ruleset& ruleset,
                  std::vector<MeasureResult>& out) {
  blend::MissingTable missing;
  for (const measures::Measure& measure : measures::all()) {
    measures::Trace trace;
    const measures::View view{&blend, &blend.whole, nullptr, &missing, &trace};
    const measures::Measured measured = measures::computed(measure, view);
    out.push_back({std::string(measure.name), figure(measured.value, measure.unit), told(trace),
                   missing.words(measured.missing)});
  }
  const std::vector<std::string> own_markets;
  rules::Machine machine(ruleset, blend, missing, own_markets);
  for (const rules::NamedMeasure& measure : ruleset.measures) {
    const rules::Value value = machine.run(measure.program, rules::Subject{});
    out.push_back({measure.name, figure(value.range, measure.unit), measure.text,
                   missing.words(value.missing)});
  }
}

}  // namespace sudsmark::wording
