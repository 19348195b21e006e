// Dust that burns, in the volumes it could fill.
#include <cmath>

#include "measures/combustible_dust.h"
#include "measures/workshop_formula.h"
#include "science/dust_cloud.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

std::string with_task(const std::string& task, const std::string& more = "") {
  return "formula \"Puck\"\n  product bubble bar\nphase \"all\"\n  100 % sodium bicarbonate\n"
         "task \"tip\"\n" +
         task + more;
}

TEST_CASE("1.2 g of starch bring a bucket of 20 l to 60 g/m3 (NFPA, from memory; computed)") {
  const WorkshopFormula formula(with_task("  handles 1.2 g corn starch\n  in 20 l\n"));
  CHECK(formula("dust.cloud").low == doctest::Approx(60));
  CHECK(formula("dust.cloud").high == doctest::Approx(60));
  CHECK(science::mass_to_limit(science::typical_explosion_limit, 0.02) == doctest::Approx(1.2));
}

TEST_CASE("bicarbonate quenches from 80 % of the mix on, and not before") {
  const auto mix = [](int base) {
    return with_task("  handles 1 kg \"bag\"\n  in 20 l\n",
                     "premix \"bag\" makes 1 kg\n  " + std::to_string(base) +
                         " g sodium bicarbonate\n  " + std::to_string(1000 - base) +
                         " g corn starch\n");
  };
  CHECK(WorkshopFormula(mix(800))("dust.cloud") == Range(0.0));
  // 201 g of starch in 20 l
  CHECK(WorkshopFormula(mix(799))("dust.cloud").high == doctest::Approx(201 / 0.02));
}

TEST_CASE("a vessel that nobody states leaves the cloud open, the room is its floor") {
  const WorkshopFormula formula(
      with_task("  handles 1 kg corn starch\n", "workshop \"loft\"\n  room 40 m3\n"));
  const Range cloud = formula("dust.cloud");
  CHECK(cloud.low == doctest::Approx(1000.0 / 40));
  CHECK(std::isinf(cloud.high));
  CHECK(formula.lacks().find("the bowl or bucket of task 'tip' (`in`)") != std::string::npos);
}

TEST_CASE("salt does not burn, and a powder that nobody knows may") {
  CHECK(WorkshopFormula(with_task("  handles 5 kg sea salt\n"))("dust.cloud") == Range(0.0));
  const WorkshopFormula unknown(
      with_task("  handles 1 kg \"mystery\"\n  in 20 l\n",
                "material \"mystery\"\n  role filler\n  form fine powder\n"));
  CHECK(unknown("dust.cloud").low == 0);
  CHECK(unknown("dust.cloud").high == doctest::Approx(1000 / 0.02));
  CHECK(unknown.lacks().find("whether 'mystery' burns as a dust") != std::string::npos);
}

TEST_CASE("the class goes with the figure that is known: corn starch, 202 bar m/s, is St2") {
  const WorkshopFormula formula(with_task("  handles 1 kg corn starch\n  in 20 l\n"));
  const auto dust = measures::combustible_dust(formula.view_of_task(0), formula.blend->tasks[0]);
  CHECK(dust.classes == std::vector<std::string>{"Corn starch St2"});
}

}  // namespace
