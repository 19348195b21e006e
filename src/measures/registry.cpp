#include "measures/registry.h"

#include <algorithm>
#include <cassert>

#include "measures/bath_measures.h"
#include "measures/chemistry_measures.h"
#include "measures/composition_measures.h"
#include "measures/element_measures.h"
#include "measures/exposure_measures.h"
#include "measures/fragrance_measures.h"
#include "measures/hlb_measures.h"
#include "measures/humidity_measures.h"
#include "measures/room_air_measures.h"
#include "measures/trace_sums.h"
#include "measures/weighing_measures.h"
#include "measures/workshop_measures.h"

namespace sudsmark::measures {
namespace {

std::vector<Measure> gather() {
  std::vector<Measure> out;
  for (const std::span<const Measure> some :
       {composition_measures(), hlb_measures(), chemistry_measures(), bath_measures(),
        humidity_measures(), fragrance_measures(), weighing_measures(), workshop_measures(),
        exposure_measures(), element_measures(), trace_measures(), room_air_measures()}) {
    out.insert(out.end(), some.begin(), some.end());
  }
  return out;
}

}  // namespace

Measured computed(const Measure& measure, const View& view) {
  const Measured out = measure.compute(view);
  assert(out.value.low <= out.value.high);
  return out;
}

std::span<const Measure> all() {
  static const std::vector<Measure> table = gather();
  return table;
}

std::optional<MeasureIndex> find(std::string_view name) {
  const auto table = all();
  const auto found = std::find_if(table.begin(), table.end(),
                                  [&](const Measure& measure) { return measure.name == name; });
  if (found == table.end()) return std::nullopt;
  return static_cast<MeasureIndex>(found - table.begin());
}

quantity::Dimension dimension(const Measure& measure) {
  return quantity::find_unit(measure.unit)->dimension;
}

}  // namespace sudsmark::measures
