// Both room models against their closed forms, against a plain numerical integration, and against
// laws that any such model obeys.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "science/decay_integrals.h"
#include "science/near_field.h"
#include "science/well_mixed_room.h"

using namespace sudsmark::science;

namespace {

/// Fourth-order Runge-Kutta over both zones, with the dose on the way.
struct Integrated {
  ZonePair air;
  ZonePair dose;  ///< mg h/m3
};

Integrated integrate(const TwoZones& zones, double rate, double hours, ZonePair air, int steps) {
  const auto change = [&](const ZonePair& c) {
    return ZonePair{(rate + zones.exchange * (c.far - c.near)) / zones.near_volume,
                    (zones.exchange * (c.near - c.far) - zones.flow * c.far) / zones.far_volume};
  };
  const auto along = [](const ZonePair& c, const ZonePair& d, double h) {
    return ZonePair{c.near + h * d.near, c.far + h * d.far};
  };
  const double h = hours / steps;
  ZonePair dose;
  for (int i = 0; i < steps; ++i) {
    const ZonePair a = change(air);
    const ZonePair second = along(air, a, h / 2);
    const ZonePair b = change(second);
    const ZonePair third = along(air, b, h / 2);
    const ZonePair c = change(third);
    const ZonePair fourth = along(air, c, h);
    const ZonePair d = change(fourth);
    dose.near += h / 6 * (air.near + 2 * second.near + 2 * third.near + fourth.near);
    dose.far += h / 6 * (air.far + 2 * second.far + 2 * third.far + fourth.far);
    air = {air.near + h / 6 * (a.near + 2 * b.near + 2 * c.near + d.near),
           air.far + h / 6 * (a.far + 2 * b.far + 2 * c.far + d.far)};
  }
  return {air, dose};
}

class Random {
 public:
  double between(double low, double high) {
    const double unit = static_cast<double>(engine_() >> 11) * 0x1.0p-53;
    return low * std::pow(high / low, unit);
  }

 private:
  std::mt19937_64 engine_{1872};
};

}  // namespace

TEST_CASE("decay integrals: limits, and no step where the series takes over") {
  CHECK(mean_decay(0) == 1);
  CHECK(mean_rise(0) == 0.5);
  CHECK(mean_decay(1) == doctest::Approx(1 - std::exp(-1)).epsilon(1e-14));
  CHECK(mean_rise(1) == doctest::Approx(std::exp(-1)).epsilon(1e-14));
  CHECK(mean_rise(0.01 * (1 - 1e-12)) == doctest::Approx(mean_rise(0.01)).epsilon(1e-12));
}

TEST_CASE("well-mixed room: rise, steady state, decay") {
  const Room room = room_with_air_changes(28, 1.5);
  const double steady = 420 / room.flow;
  CHECK(steady == doctest::Approx(10));
  CHECK(room_bound(room, 420, 0) == 0);
  CHECK(room_bound(room, 420, 1) == doctest::Approx(10 * (1 - std::exp(-1.5))).epsilon(1e-12));
  CHECK(room_bound(room, 420, 50) == doctest::Approx(steady).epsilon(1e-12));
  CHECK(room_bound(room, 0, 2, 8) == doctest::Approx(8 * std::exp(-3.0)).epsilon(1e-12));
  CHECK(mean_room_bound(room, 420, 1) ==
        doctest::Approx(10 * (1 - (1 - std::exp(-1.5)) / 1.5)).epsilon(1e-12));
}

TEST_CASE("well-mixed room without ventilation: everything stays") {
  const Room room{20, 0};
  CHECK(room_bound(room, 100, 3) == doctest::Approx(15).epsilon(1e-12));
  CHECK(mean_room_bound(room, 100, 3) == doctest::Approx(7.5).epsilon(1e-12));
  CHECK(mean_bound_any_pattern(room, 300, 8) == doctest::Approx(15).epsilon(1e-12));
  const WorstWindow worst = worst_room_window(room, {100, 3}, 0.25);
  CHECK(worst.mean == doctest::Approx(15).epsilon(1e-12));
}

TEST_CASE("all dust that ventilation carries off has been in the air: dose = mass / flow") {
  const Room room{25, 50};
  const Release release{600, 0.5};
  const double dose = 200 * mean_room_bound_between(room, release, 0, 200);
  CHECK(dose == doctest::Approx(300.0 / 50).epsilon(1e-9));
  CHECK(8 * mean_bound_any_pattern(room, 300, 8) < dose * (1 + 1e-12));
}

TEST_CASE("two zones: dose = mass (1/flow + 1/exchange) in the near field") {
  const TwoZones zones{0.25, 24.75, 300, 50};
  const Release release{600, 0.5};
  const ZonePair mean = mean_zone_bounds_between(zones, release, 0, 200);
  CHECK(200 * mean.near == doctest::Approx(300 * (1.0 / 50 + 1.0 / 300)).epsilon(1e-9));
  CHECK(200 * mean.far == doctest::Approx(300.0 / 50).epsilon(1e-9));
}

TEST_CASE("hemisphere: volume, exchange, and a near field that does not fit (from memory)") {
  const Room room{28, 42};
  const TwoZones zones = hemisphere_zones(room, 0.5, 360).value();
  CHECK(zones.near_volume == doctest::Approx(0.261799).epsilon(1e-5));
  CHECK(zones.near_volume + zones.far_volume == doctest::Approx(28).epsilon(1e-12));
  CHECK(zones.exchange == doctest::Approx(0.5 * 1.570796 * 360).epsilon(1e-5));
  CHECK_FALSE(hemisphere_zones({0.2, 1}, 0.5, 360));
}

TEST_CASE("two zones without ventilation: nothing leaves") {
  const TwoZones zones{0.25, 19.75, 300, 0};
  CHECK(zone_rates(zones).slow == 0);
  const ZonePair air = zone_bounds(zones, 100, 3);
  CHECK(air.near * 0.25 + air.far * 19.75 == doctest::Approx(300).epsilon(1e-12));
}

TEST_CASE("property: closed forms agree with a numerical integration") {
  Random random;
  double worst = 0;
  const auto differ = [&worst](double a, double b) {
    worst = std::max(worst, std::abs(a - b) / std::max(std::abs(b), 1e-9));
  };
  for (int round = 0; round < 60; ++round) {
    const TwoZones zones{random.between(0.05, 2), random.between(5, 80), random.between(20, 400),
                         round % 5 == 0 ? 0.0 : random.between(2, 300)};
    const double rate = random.between(1, 1e4);
    const double hours = random.between(0.05, 2);
    const ZonePair start{random.between(0.1, 50), random.between(0.1, 50)};
    const double stiffest = zone_rates(zones).fast * hours;
    const int steps = 200 + static_cast<int>(stiffest * 20);
    const Integrated by_steps = integrate(zones, rate, hours, start, steps);
    const ZonePair air = zone_bounds(zones, rate, hours, start);
    const ZonePair mean = mean_zone_bounds(zones, rate, hours, start);
    differ(air.near, by_steps.air.near);
    differ(air.far, by_steps.air.far);
    differ(mean.near, by_steps.dose.near / hours);
    differ(mean.far, by_steps.dose.far / hours);
    // A well-mixed room is the far field of a release that goes there at once: integrate it as the
    // near zone that nothing flows back into.
    const Room room{zones.far_volume, zones.flow};
    const TwoZones alone{room.volume, 1e12, std::max(room.flow, 1e-12), 0};
    const Integrated mixed = integrate(alone, rate, hours, {start.near, 0}, 2000);
    differ(room_bound(room, rate, hours, start.near), mixed.air.near);
    differ(mean_room_bound(room, rate, hours, start.near), mixed.dose.near / hours);
  }
  CAPTURE(worst);
  CHECK(worst < 1e-6);
}

TEST_CASE("property: no concentration is negative, more dust is never less, decoupling is above") {
  Random random;
  for (int round = 0; round < 2000; ++round) {
    const Room room{random.between(0.5, 500), round % 7 == 0 ? 0.0 : random.between(1e-3, 2e3)};
    const double share = random.between(1e-4, 0.5);
    const TwoZones zones{room.volume * share, room.volume * (1 - share), random.between(0.1, 3000),
                         room.flow};
    const Release release{random.between(1e-3, 1e6), random.between(1e-3, 4)};
    const Release more{release.rate * 1.5, release.hours};
    const double t = random.between(1e-4, 12);
    const double in_room = room_bound_at(room, release, t);
    const ZonePair air = zone_bounds_at(zones, release, t);
    CHECK(in_room >= 0);
    CHECK(air.near >= 0);
    CHECK(air.far >= 0);
    CHECK(air.near >= air.far * (1 - 1e-9));
    CHECK(room_bound_at(room, more, t) >= in_room);
    CHECK(zone_bounds_at(zones, more, t).near >= air.near);
    CHECK(zone_bounds_at(zones, more, t).far >= air.far);
  }
}

TEST_CASE("property: the worst window is no better than any other") {
  Random random;
  for (int round = 0; round < 300; ++round) {
    const Room room{random.between(1, 100), round % 7 == 0 ? 0.0 : random.between(0.1, 1000)};
    const TwoZones zones{room.volume * 0.05, room.volume * 0.95, random.between(1, 500), room.flow};
    const Release release{random.between(1, 1e4), random.between(0.01, 3)};
    const double window = random.between(0.02, 1);
    const double in_room = worst_room_window(room, release, window).mean;
    const double at_face = worst_near_window(zones, release, window).mean;
    for (int i = 0; i < 60; ++i) {
      const double from = 4.0 * i / 60;
      CHECK(mean_room_bound_between(room, release, from, from + window) <= in_room * (1 + 1e-9));
      CHECK(mean_zone_bounds_between(zones, release, from, from + window).near <=
            at_face * (1 + 1e-9));
    }
  }
}

TEST_CASE("property: all at once at the start is above any other pattern") {
  Random random;
  for (int round = 0; round < 500; ++round) {
    const Room room{random.between(1, 100), random.between(0.1, 1000)};
    const TwoZones zones{room.volume * 0.05, room.volume * 0.95, random.between(1, 500), room.flow};
    double mass = 0;
    double dose = 0;
    double near_dose = 0;
    for (int task = 0; task < 4; ++task) {
      const double begins = random.between(0.01, 6);
      const Release release{random.between(1, 1e4), random.between(0.01, 2)};
      mass += release.rate * release.hours;
      dose += mean_room_bound_between(room, release, 0, 8 - begins) * (8 - begins);
      near_dose += mean_zone_bounds_between(zones, release, 0, 8 - begins).near * (8 - begins);
    }
    CHECK(dose / 8 <= mean_bound_any_pattern(room, mass, 8) * (1 + 1e-9));
    CHECK(near_dose / 8 <= mean_zone_bounds_any_pattern(zones, mass, 8).near * (1 + 1e-9));
  }
}
