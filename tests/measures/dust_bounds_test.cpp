// Bounds of dust in a workshop, worked out by hand beside each check. Dustiness classes are those
// of EN 15051 (from memory); the room is well mixed, with everything in the air from the start,
// which makes the mean over eight hours M / V x (1 - exp(-8 n)) / (8 n) for n air changes an hour.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "measures/dust_bounds.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

std::string puck(const std::string& task,
                 const std::string& workshop = "  room 40 m3\n  air changes 2 per hour\n") {
  return "formula \"Puck\"\n  product bubble bar\n  market GB\n"
         "workshop \"loft\"\n" +
         workshop +
         "phase \"all\"\n  70 % sodium bicarbonate\n  30 % SLSA\n"
         "task \"tip\"\n" +
         task;
}

double mean_share(double changes) {
  return (1 - std::exp(-8 * changes)) / (8 * changes);
}

TEST_CASE("a stated dustiness gives a bound with two ends") {
  // 2 kg x 800 mg/kg x 3 a day = 4800 mg into 40 m3
  const WorkshopFormula formula(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n"
           "  raises 800 mg/kg\n"));
  const double bound = 4800.0 / 40 * mean_share(2);
  const Range found = formula("dust.bound");
  CHECK(found.low == doctest::Approx(bound));
  CHECK(found.high == doctest::Approx(bound));
  CHECK(bound == doctest::Approx(7.5).epsilon(0.001));
  // the part that goes deep into the lung is some part of it
  CHECK(formula("dust.bound_respirable").low == 0);
  CHECK(formula("dust.bound_respirable").high == doctest::Approx(bound));
}

/// Highest mean over a quarter of an hour while a room of n changes fills at G/Q = steady for so
/// many hours and then clears, by adding up small steps.
double worst_quarter(double steady, double changes, double hours) {
  constexpr int steps = 2000;  // of a quarter of an hour
  constexpr double step = 0.25 / steps;
  std::vector<double> air{0.0};
  for (int at = 1; at * step < hours + 0.5; ++at) {
    const bool filling = at * step <= hours;
    air.push_back(air.back() + step * changes * ((filling ? steady : 0.0) - air.back()));
  }
  double sum = 0;
  double most = 0;
  for (std::size_t at = 0; at < air.size(); ++at) {
    sum += air[at] - (at >= steps ? air[at - steps] : 0.0);
    most = std::max(most, sum / steps);
  }
  return most;
}

TEST_CASE("the worst 15 minutes: one task after the other without a pause") {
  // once: 1600 mg in 10 minutes, three times in a row make 30 minutes at 9600 mg/h, 80 m3/h of air
  const WorkshopFormula formula(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n"
           "  raises 800 mg/kg\n"));
  CHECK(formula("dust.bound_short").high ==
        doctest::Approx(worst_quarter(9600.0 / 80, 2, 0.5)).epsilon(0.001));
  // what the long mean hides
  CHECK(formula("dust.bound_short").high > 7 * formula("dust.bound").high);
}

/// Mean over 8 hours of the nearer of two zones (hemisphere of 0.8 m, air at so many m/s) that
/// starts with so many mg in it, by adding up small steps.
double near_mean(double mass, double volume, double changes, double air_speed) {
  const double near = 2.0 / 3 * std::numbers::pi * 0.8 * 0.8 * 0.8;
  const double exchange = std::numbers::pi * 0.8 * 0.8 * air_speed * 3600;
  const double far = volume - near;
  constexpr int steps = 4'000'000;
  constexpr double step = 8.0 / steps;
  double in_near = mass / near;
  double in_far = 0;
  double sum = 0;
  for (int at = 0; at < steps; ++at) {
    sum += in_near;
    const double over = exchange * (in_near - in_far) * step;
    in_near -= over / near;
    in_far += (over - volume * changes * in_far * step) / far;
  }
  return sum / steps;
}

TEST_CASE("at the bowl: the nearer of two zones, in the air of a quiet room") {
  const WorkshopFormula formula(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n"
           "  raises 800 mg/kg\n"));
  const Range found = formula("dust.bound_near");
  CHECK(found.low == doctest::Approx(near_mean(4800, 40, 2, 0.3)).epsilon(0.001));
  CHECK(found.high == doctest::Approx(near_mean(4800, 40, 2, 0.05)).epsilon(0.001));
  CHECK(found.low > formula("dust.bound").high);
  CHECK(formula("dust.bound_near_short").low > formula("dust.bound_short").high);
  // a cupboard that the near field fills is no two zones
  const WorkshopFormula cupboard(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n"
           "  raises 800 mg/kg\n",
           "  room 1 m3\n  air changes 2 per hour\n"));
  CHECK(cupboard("dust.bound_near").high == cupboard("dust.bound").high);
}

TEST_CASE("a dustiness class gives its ends, and the dustiest none above") {
  // sodium bicarbonate is of the dustiest class (common practice): 5000 mg/kg and more
  const WorkshopFormula fine(
      puck("  handles 1 kg sodium bicarbonate\n  takes 10 min\n  times 1 per day\n"));
  CHECK(fine("dust.bound").low == doctest::Approx(5000.0 / 40 * mean_share(2)));
  CHECK(std::isinf(fine("dust.bound").high));
  CHECK(fine.lacks().find("the dustiest class has no upper end") != std::string::npos);
  // cream of tartar is of the middle one: 1000 to 15000 mg/kg over both tests
  const WorkshopFormula coarse(
      puck("  handles 1 kg cream of tartar\n  takes 10 min\n  times 1 per day\n"));
  CHECK(coarse("dust.bound").low == doctest::Approx(1000.0 / 40 * mean_share(2)));
  CHECK(coarse("dust.bound").high == doctest::Approx(15000.0 / 40 * mean_share(2)));
}

TEST_CASE("ranges of the room: the airy end holds least, the close end most") {
  const WorkshopFormula formula(
      puck("  handles 1 kg sodium bicarbonate\n  takes 10 min\n  times 1 - 2 per day\n"
           "  raises 500 mg/kg\n",
           "  room 30 - 40 m3\n  air changes 1 - 2 per hour\n"));
  CHECK(formula("dust.bound").low == doctest::Approx(500.0 / 40 * mean_share(2)));
  CHECK(formula("dust.bound").high == doctest::Approx(1000.0 / 30 * mean_share(1)));
}

TEST_CASE("the tasks of a day add up, and each has its own figure") {
  const WorkshopFormula formula(
      puck("  handles 1 kg sodium bicarbonate\n  takes 10 min\n  times 1 per day\n"
           "  raises 500 mg/kg\n"
           "task \"sieve\"\n  handles 2 kg SLSA\n  takes 20 min\n  times 2 per day\n"
           "  raises 300 mg/kg\n"));
  CHECK(formula("task.count").low == 2);
  CHECK(formula("dust.bound").high == doctest::Approx(1700.0 / 40 * mean_share(2)));
  CHECK(formula.of_task("dust.bound", 1).high == doctest::Approx(1200.0 / 40 * mean_share(2)));
}

TEST_CASE("what is not stated is asked for and never nothing") {
  const WorkshopFormula none(
      "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n"
      "  100 % sodium bicarbonate\n");
  CHECK(none("dust.bound") == Range::unknown());
  CHECK(none.lacks() == "what is handled (`task`)\n");
  const WorkshopFormula bare(
      "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n  100 % sodium bicarbonate\n"
      "task \"tip\"\n  handles 1 kg sodium bicarbonate\n");
  CHECK(bare("dust.bound") == Range::unknown());
  for (const char* asked : {"the size of the room", "the air changes", "how long task 'tip' takes",
                            "how often task 'tip' is done"}) {
    CHECK_MESSAGE(bare.lacks().find(asked) != std::string::npos, asked);
  }
  // one of two tasks is not described: the bound has no upper end
  const WorkshopFormula half(
      puck("  handles 1 kg sodium bicarbonate\n  takes 10 min\n  times 1 per day\n"
           "  raises 500 mg/kg\ntask \"sieve\"\n  handles 2 kg SLSA\n"));
  CHECK(half("dust.bound").low == doctest::Approx(500.0 / 40 * mean_share(2)));
  CHECK(std::isinf(half("dust.bound").high));
  // a phase of a formula whose batch nobody knows
  const WorkshopFormula no_batch(
      puck("  handles phase \"all\"\n  takes 10 min\n  times 1 per day\n"));
  CHECK(no_batch("dust.bound") == Range::unknown());
  CHECK(no_batch.lacks().find("the size of the batch") != std::string::npos);
}

TEST_CASE("liquids raise no dust") {
  const WorkshopFormula formula(
      puck("  handles 5 kg glycerin\n  takes 10 min\n  times 1 per day\n"));
  CHECK(formula("dust.bound") == Range(0.0));
  CHECK(formula("dust.cloud") == Range(0.0));
  CHECK(formula("dust.band") == Range(1.0));
}

TEST_CASE("the dustiness that the trigger leaves room for") {
  const WorkshopFormula formula(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n"));
  constexpr double trigger = 10e-6;  // g/l
  const auto enough = measures::dustiness_for(formula.view(), trigger);
  REQUIRE(enough);
  CHECK(*enough == doctest::Approx(10 / (6.0 / 40 * mean_share(2))));
  // put in, it gives the trigger back
  const WorkshopFormula stated(
      puck("  handles 2 kg sodium bicarbonate\n  takes 10 min\n  times 3 per day\n  raises " +
           std::to_string(*enough) + " mg/kg\n"));
  CHECK(stated("dust.bound").high == doctest::Approx(10));
}

}  // namespace
