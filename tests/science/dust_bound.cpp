#include "science/dust_bound.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <string_view>
#include <vector>

#include "science/dust_release.h"

using namespace sudsmark::science;

namespace {
const Room back_room = room_with_air_changes(28, 1.5);
}

TEST_CASE("a word takes the wider of both tests") {
  const auto medium = dustiness_bound(DustinessWord::medium, DustFraction::inhalable).mg_per_kg;
  CHECK(medium.low == 1000);
  CHECK(medium.high == 15000);
  const auto low = dustiness_bound(DustinessWord::low, DustFraction::respirable).mg_per_kg;
  CHECK(low.low == 0);
  CHECK(low.high == 70);
  const auto high = dustiness_bound(DustinessWord::high, DustFraction::inhalable).mg_per_kg;
  CHECK(high.low == 5000);
  CHECK(std::isinf(high.high));
  CHECK(dustiness_bound(DustinessWord::medium, DustFraction::thoracic).mg_per_kg.high == 1000);
}

TEST_CASE("the shift's bound: ten bags tipped, 1000 mg/kg measured") {
  const std::array tasks{PowderTask{.mass = 1, .mg_per_kg = 1000, .hours = 0.2, .times = 10}};
  const DustBound bound = dust_bound(back_room, tasks);
  CHECK(bound.released == doctest::Approx(10000));
  // 10 g into 28 m3 at 1.5 changes: over 8 h nearly mass / (flow x 8 h).
  CHECK(bound.shift_mean_bound ==
        doctest::Approx(10000.0 / 42 / 8 * (1 - std::exp(-12.0))).epsilon(1e-9));
  CHECK(bound.short_bound_in_turn > bound.short_bound_one_task);
  // One at a time, ten runs of 12 minutes stay below two hours of release without a pause.
  CHECK(bound.short_bound_in_turn <= room_bound(back_room, 5000, 2));
  CHECK_FALSE(bound.near_shift_mean_bound);
  CHECK(bound.assumptions.front().find("bound") != std::string_view::npos);
}

TEST_CASE("a short task: the 8 h mean hides its peak, most of all at the face") {
  const std::array tasks{PowderTask{.mass = 2, .mg_per_kg = 1000, .hours = 0.1, .times = 1}};
  const auto zones = hemisphere_zones(back_room, 0.5, 360);
  const DustBound bound = dust_bound(back_room, tasks, zones);
  CHECK(bound.short_bound_one_task > 5 * bound.shift_mean_bound);
  CHECK(bound.near_short_bound_one_task.value() > bound.short_bound_one_task);
  CHECK(bound.near_shift_mean_bound.value() > bound.shift_mean_bound);
  // 2 g into the near field: its 15 minutes stand an order above its 8 hours.
  CHECK(bound.peak_factor == doctest::Approx(bound.near_short_bound_one_task.value() /
                                             bound.near_shift_mean_bound.value()));
}

TEST_CASE("no dust without powder, and no upper bound without an upper figure") {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const std::array idle{PowderTask{.mass = 0, .mg_per_kg = infinity, .hours = 1}};
  const DustBound none = dust_bound(back_room, idle);
  CHECK(none.shift_mean_bound == 0);
  CHECK(none.released == 0);
  const std::array open{PowderTask{.mass = 1, .mg_per_kg = infinity, .hours = 1}};
  const DustBound bound = dust_bound(back_room, open, hemisphere_zones(back_room, 0.5, 360));
  CHECK(std::isinf(bound.shift_mean_bound));
  CHECK(std::isinf(bound.short_bound_one_task));
  CHECK(std::isinf(bound.near_shift_mean_bound.value()));
  CHECK(bound.peak_factor == 0);
}

TEST_CASE("property: tasks in turn, in any order and with any pauses, stay below the short bound") {
  std::mt19937_64 random(1956);
  const auto between = [&random](double low, double high) {
    const double unit = static_cast<double>(random() >> 11) * 0x1.0p-53;
    return low * std::pow(high / low, unit);
  };
  for (int round = 0; round < 200; ++round) {
    const Room room{between(2, 100), between(0.5, 500)};
    const auto zones = hemisphere_zones(room, 0.3, between(50, 2000));
    std::vector<PowderTask> tasks;
    std::vector<double> begins;
    double clock = 0;
    for (int i = 0; i < 5; ++i) {
      tasks.push_back({.mass = between(0.1, 20), .mg_per_kg = 1000, .hours = between(0.02, 1)});
      clock += between(0.001, 1);
      begins.push_back(clock);
      clock += tasks.back().hours;
    }
    const DustBound bound = dust_bound(room, tasks, zones);
    for (double from = 0; from < clock + 1; from += 0.02) {
      const double to = from + short_term_hours;
      double in_room = 0;
      double at_face = 0;
      for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (to <= begins[i]) continue;
        const Release release{1000 * tasks[i].mass / tasks[i].hours, tasks[i].hours};
        const double start = std::max(0.0, from - begins[i]);
        const double end = to - begins[i];
        const double part = (end - start) / short_term_hours;
        in_room += part * mean_room_bound_between(room, release, start, end);
        at_face += part * mean_zone_bounds_between(*zones, release, start, end).near;
      }
      CHECK(in_room <= bound.short_bound_in_turn * (1 + 1e-9));
      CHECK(at_face <= bound.near_short_bound_in_turn.value() * (1 + 1e-9));
    }
  }
}

TEST_CASE("property: the bound grows with mass, dustiness and times, and falls with fresh air") {
  std::mt19937_64 random(41);
  const auto between = [&random](double low, double high) {
    const double unit = static_cast<double>(random() >> 11) * 0x1.0p-53;
    return low * std::pow(high / low, unit);
  };
  for (int round = 0; round < 1000; ++round) {
    const Room room{between(2, 300), between(0.1, 1000)};
    const auto zones = hemisphere_zones(room, 0.3, between(50, 2000));
    const std::array tasks{PowderTask{.mass = between(0.01, 50),
                                      .mg_per_kg = between(1, 20000),
                                      .hours = between(0.01, 2),
                                      .times = between(1, 10)}};
    const DustBound bound = dust_bound(room, tasks, zones);
    CHECK(bound.shift_mean_bound >= 0);
    CHECK(bound.short_bound_one_task >= bound.shift_mean_bound / tasks[0].times * 0.9999);
    CHECK(bound.short_bound_in_turn >= bound.short_bound_one_task * 0.9999999);
    const auto not_below = [&](const DustBound& other) {
      constexpr double rounding = 1 - 1e-12;
      CHECK(other.shift_mean_bound >= bound.shift_mean_bound);
      CHECK(other.short_bound_in_turn >= bound.short_bound_in_turn * rounding);
      CHECK(other.near_shift_mean_bound.value() >= bound.near_shift_mean_bound.value());
      CHECK(other.near_short_bound_in_turn.value() >=
            bound.near_short_bound_in_turn.value() * rounding);
    };
    auto more = tasks;
    more[0].mass *= 1.3;
    not_below(dust_bound(room, more, zones));
    more = tasks;
    more[0].mg_per_kg *= 1.3;
    not_below(dust_bound(room, more, zones));
    more = tasks;
    more[0].times += 1;
    not_below(dust_bound(room, more, zones));
    const Room stuffier{room.volume, room.flow * 0.7};
    CHECK(dust_bound(stuffier, tasks).shift_mean_bound >= bound.shift_mean_bound);
    CHECK(dust_bound(stuffier, tasks).short_bound_one_task >= bound.short_bound_one_task);
  }
}
