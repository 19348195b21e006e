#include "science/time_weighted.h"

#include <cassert>

#include "science/workshop_sources.h"

namespace sudsmark::science {

double time_weighted_mean(std::span<const TimeAt> times, double over) {
  assert(over > 0);
  double dose = 0.0;
  for (const TimeAt& time : times) dose += time.concentration * time.hours;
  return dose / over;
}

MixtureIndex mixture_index(std::span<const AgainstLimit> substances) {
  MixtureIndex index;
  index.source = sources::osha_computation;
  for (const AgainstLimit& substance : substances) {
    if (substance.limit) {
      assert(*substance.limit > 0);
      index.sum += substance.concentration / *substance.limit;
    } else {
      ++index.without_limit;
    }
  }
  return index;
}

DustLimit short_term_guide(double long_term_limit) {
  constexpr double times_long_term = 3.0;  // EH40 (from memory)
  return {times_long_term * long_term_limit, sources::eh40_short_term};
}

DustLimit respirable_limit_by_density(double density) {
  constexpr double per_density = 0.5;  // mg/m3 per g/cm3, TRGS 900 no. 2.4 (quoted)
  return {per_density * density, sources::trgs_900};
}

}  // namespace sudsmark::science
