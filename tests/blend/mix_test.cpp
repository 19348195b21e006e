// From a formula's text to what is in the product: numbers worked out by hand beside each check.
#include <doctest/doctest.h>

#include <string>

#include "bench_catalogue.h"
#include "measures/registry.h"

namespace {

using sudsmark::measures::Measured;
using sudsmark::measures::View;
using test::Mixed;

struct Bench {
  sudsmark::catalogue::Catalogue catalogue = test::bench_catalogue();
  Mixed mixed;
  sudsmark::blend::MissingTable missing;

  explicit Bench(const std::string& body, const std::string& head = "") {
    test::mix_text("formula \"Test\"\n  product bubble bar\n" + head + body, catalogue, mixed);
  }
  Measured operator()(const char* measure) { return of(measure, mixed.blend->whole); }
  Measured of(const char* measure, const sudsmark::blend::Part& part) {
    const auto index = sudsmark::measures::find(measure);
    REQUIRE(index);
    const View view{&*mixed.blend, &part, nullptr, &missing, nullptr};
    return sudsmark::measures::all()[*index].compute(view);
  }
};

void check_range(const Measured& measured, double low, double high) {
  CHECK(measured.value.low == doctest::Approx(low).epsilon(1e-9));
  CHECK(measured.value.high == doctest::Approx(high).epsilon(1e-9));
}

TEST_CASE("shares: active matter, water and salt of a simple mix") {
  Bench bench("phase \"all\"\n  30 % foamer powder\n  10 % foamer liquid\n  60 % base\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // 0.30 x 0.6 + 0.10 x 0.3 = 0.21; 0.30 x 0.7 + 0.03 = 0.24
  check_range(bench("surfactant"), 0.21, 0.24);
  check_range(bench("surfactant.anionic"), 0.18, 0.21);
  check_range(bench("surfactant.amphoteric"), 0.03, 0.03);
  check_range(bench("water"), 0.065, 0.065);  // 0.10 x 0.65
  check_range(bench("powders"), 0.9, 0.9);
  check_range(bench("liquids"), 0.1, 0.1);
  check_range(bench("wet_to_dry"), 1.0 / 9, 1.0 / 9);
}

TEST_CASE("masses, and the same material on two lines") {
  Bench bench("phase \"a\"\n  200 g base\n  100 g oil\nphase \"b\"\n  100 g base\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  CHECK(bench.mixed.blend->whole.composition.ingredients.size() == 2);
  check_range(bench("oils"), 0.25, 0.25);
  check_range(bench("batch.mass"), 400, 400);
  CHECK(bench.mixed.blend->whole.composition.ingredients[0].places.size() == 2);
}

TEST_CASE("how many pieces one making comes to, parts of one counted") {
  const std::string lines = "phase \"a\"\n  1700 g base\n  340 g oil\n";
  Bench bench("  piece 80 - 85 g\n" + lines);
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("batch.pieces"), 24, 25.5);
  Bench loose("phase \"a\"\n  80 % base\n  20 % oil\n");
  CHECK(!loose("batch.pieces").missing.empty());
}

TEST_CASE("units of mass: an ounce is 28.349523125 g, a pound 453.59237 g") {
  Bench bench("phase \"a\"\n  1 lb base\n  1 oz oil\n  10 ml oil\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // 10 ml at 0.9 g/ml are 9 g
  check_range(bench("batch.mass"), 453.59237 + 28.349523125 + 9, 453.59237 + 28.349523125 + 9);
}

TEST_CASE("parts are shares of their sum") {
  Bench bench("phase \"a\"\n  3 parts base\n  1 part oil\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("oils"), 0.25, 0.25);
  CHECK(!bench("batch.mass").missing.empty());
}

TEST_CASE("parts as ranges reach the true extremes") {
  Bench bench("phase \"a\"\n  2 - 3 parts base\n  1 part oil\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("oils"), 1.0 / 4, 1.0 / 3);
}

TEST_CASE("a range with q.s.: what one gains the filler loses") {
  Bench bench("phase \"a\"\n  20 - 30 % foamer powder\n  q.s. base\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("surfactant"), 0.12, 0.21);
  check_range(bench("powders"), 1, 1);
  // base 70 to 80 %: 0.7/84 to 0.8/84 mol/g
  check_range(bench("base.equivalents"), 0.7 / 84 * 1000, 0.8 / 84 * 1000);
}

TEST_CASE("shares beside masses where the batch is given") {
  Bench bench("phase \"a\"\n  50 % base\n  100 g oil\n  q.s. starch\n", "  batch 1 kg\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("oils"), 0.1, 0.1);
  // starch takes 400 g: moisture 0.4 x 0.10 to 0.14
  check_range(bench("water.bound"), 0.04, 0.056);
  check_range(bench("water"), 0, 0);
}

TEST_CASE("doses come on top") {
  Bench bench("phase \"a\"\n  100 % base\n  5 g per kg oil\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("oils"), 0.5 / 100.5, 0.5 / 100.5);
}

TEST_CASE("a dose counts what stands before it in its phase") {
  Bench bench("phase \"a\"\n  400 g base\n  10 g per kg oil\n  600 g starch\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("oils"), 4.0 / 1004, 4.0 / 1004);
}

const char* const two_colours = R"(phase "dry"
  90 % "dry bag"
  10 % foamer liquid
premix "dry bag" makes 1 kg as bag
  600 g base
  400 g foamer powder
portion "teal", 60 %
  1 g per kg blue lake
portion "plain", 40 %
)";

TEST_CASE("premix and portions come through exactly") {
  Bench bench(two_colours);
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // 100 g mix; 60 g teal + 0.06 g lake
  check_range(bench("colour"), 0.06 / 100.06, 0.06 / 100.06);
  check_range(bench.of("colour", bench.mixed.blend->portions[0]), 0.001 / 1.001, 0.001 / 1.001);
  check_range(bench.of("colour", bench.mixed.blend->portions[1]), 0, 0);
  // powder foamer 36 g of 100 g of the plain portion: 0.36 x 0.6 + 0.03 to 0.36 x 0.7 + 0.03
  check_range(bench.of("surfactant", bench.mixed.blend->portions[1]), 0.246, 0.282);
  check_range(bench.of("surfactant.anionic", bench.mixed.blend->premixes[0]), 0.24, 0.28);
}

TEST_CASE("a premix by its own unit, nested") {
  Bench bench(R"(phase "a"
  2 bags "dry bag"
  1 pinchpot "scent pot"
premix "scent pot" makes 100 g as pinchpot
  100 g oil
premix "dry bag" makes 500 g as bag
  50 % "core"
  50 % starch
premix "core" makes 2 kg
  2 kg base
)");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("batch.mass"), 1100, 1100);
  check_range(bench("oils"), 100.0 / 1100, 100.0 / 1100);
  check_range(bench("base.equivalents"), 500.0 / 1100 / 84 * 1000, 500.0 / 1100 / 84 * 1000);
}

TEST_CASE("scaling a batch changes no ratio") {
  const std::string body = "phase \"a\"\n  44 % base\n  30 - 32 % foamer powder\n  q.s. starch\n";
  Bench small(body, "  batch 500 g\n");
  Bench large(body, "  batch 20 kg\n");
  REQUIRE(small.mixed.blend);
  REQUIRE(large.mixed.blend);
  for (const auto& measure : sudsmark::measures::all()) {
    if (measure.unit != "%" || measure.name.starts_with("weighing")) continue;
    const Measured a = small(std::string(measure.name).c_str());
    const Measured b = large(std::string(measure.name).c_str());
    if (a.value.known()) check_range(a, b.value.low, b.value.high);
  }
}

TEST_CASE("the order of lines changes nothing") {
  Bench one("phase \"a\"\n  44 % base\n  30 % foamer powder\n  26 % oil\n");
  Bench other("phase \"b\"\n  26 % oil\nphase \"a\"\n  30 % foamer powder\n  44 % base\n");
  REQUIRE(one.mixed.blend);
  REQUIRE(other.mixed.blend);
  for (const auto& measure : sudsmark::measures::all()) {
    const Measured a = one(std::string(measure.name).c_str());
    const Measured b = other(std::string(measure.name).c_str());
    if (a.value.known()) check_range(a, b.value.low, b.value.high);
  }
}

TEST_CASE("a maker's own figures replace the catalogue's") {
  Bench bench(R"(phase "a"
  50 % "our foamer"
  50 % base
material "our foamer" like foamer powder
  active 64 - 65 %
)");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("surfactant"), 0.32, 0.325);
}

TEST_CASE("HLB: weighted by mass; a figure that nobody knows leaves it open") {
  Bench bench("phase \"a\"\n  2 % oil\n  1 % butter\n  2 % solubiliser\n  95 % base\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("hlb.required"), (2 * 7 + 5) / 3.0, (2 * 7 + 6) / 3.0);
  check_range(bench("hlb.supplied"), 15, 15);
  Bench silent("phase \"a\"\n  2 % oil\n  1 % solubiliser\n  1 % silent emulsifier\n  96 % base\n");
  REQUIRE(silent.mixed.blend);
  const Measured open = silent("hlb.supplied");
  CHECK(!open.missing.empty());
  CHECK_FALSE(open.value.known());
  CHECK(silent.missing.items().front().what == "the HLB of 'Silent emulsifier'");
}

TEST_CASE("acid and base by equivalents") {
  Bench bench("phase \"a\"\n  64 % base\n  36 % acid\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // 0.36 x 3 / 192 over 0.64 / 84
  check_range(bench("acid.equivalents"), 0.36 * 3 / 192 * 1000, 0.36 * 3 / 192 * 1000);
  check_range(bench("acid.to_base"), (0.36 * 3 / 192) / (0.64 / 84),
              (0.36 * 3 / 192) / (0.64 / 84));
}

TEST_CASE("a dose in the bath") {
  Bench bench("phase \"a\"\n  50 % foamer liquid\n  50 % base\n", "  bath 40 g in 150 l at 38 C\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // 40 g x 0.5 x 0.3 in 150 l
  check_range(bench("surfactant.in_bath"), 6.0 / 150, 6.0 / 150);
  Bench pieces("phase \"a\"\n  100 % base\n", "  piece 90 g\n  bath 1/3 piece in 150 l\n");
  REQUIRE_MESSAGE(pieces.mixed.blend, pieces.mixed.errors);
  check_range(pieces("dose.mass"), 30, 30);
}

TEST_CASE("weighings: the smallest, and the scale's step as a share of it") {
  const std::string workshop =
      "workshop \"back room\"\n  scale 0.1 g to 500 g\n  scale 1 g to 10 kg\n";
  Bench bench("phase \"a\"\n  99 % base\n  0.5 % oil\n  0.5 % solubiliser\n" + workshop,
              "  batch 2 kg\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  check_range(bench("weighing.smallest"), 10, 10);
  // 10 g on the fine scale: 1 %; 1980 g on the coarse one: 0.05 %
  check_range(bench("weighing.error"), 0.01, 0.01);
}

TEST_CASE("a certificate's limit for a part of the blend of scents") {
  Bench bench(R"(phase "a"
  97 % base
  1 % "Sea Fig"
  2 % "Marsh"
fragrance "Sea Fig"
  limit 1 %
  undeclared none
fragrance "Marsh"
  limit 6 %
  undeclared none
)");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  // Sea Fig is a third of the blend: 1 % / (1/3) = 3 %; Marsh two thirds: 9 %
  check_range(bench("fragrance.limit"), 0.03, 0.03);
}

TEST_CASE("what does not add up is an error that gives the sum and the difference") {
  const auto errors = [](const std::string& body, const std::string& head = "") {
    Bench bench(body, head);
    CHECK_FALSE(bench.mixed.blend);
    return bench.mixed.errors;
  };
  CHECK(errors("phase \"a\"\n  50 % base\n  49 % oil\n") ==
        "1:1: the shares make 99 %, not 100 %: 1 % is missing\n");
  CHECK(errors("phase \"a\"\n  60 % base\n  41 % oil\n") ==
        "1:1: the shares make 101 %, not 100 %: 1 % too much\n");
  CHECK(errors("phase \"a\"\n  500 g base\n  480 g oil\n", "  batch 1 kg\n") ==
        "1:1: the amounts make 980 g, not the 1000 g of batch: 20 g is missing\n");
  CHECK(errors("phase \"a\"\n  50 % base\n  10 g oil\n") ==
        "4:3: shares beside masses need to know what one making weighs: add batch, or use one "
        "kind\n");
  CHECK(errors("phase \"a\"\n  100 g base\n  q.s. oil\n") ==
        "5:3: q.s. fills up to 100 % or to the batch, and neither is given: add batch\n");
  CHECK(errors("phase \"a\"\n  101 g base\n  q.s. oil\n", "  batch 100 g\n") ==
        "6:3: nothing is left for q.s.: the others already make 101 g\n");
  CHECK(errors("phase \"a\"\n  1 % oil\n  q.s. oil\n") ==
        "5:3: 'oil' is filled up with q.s. and has an amount too: drop one of the two\n");
  CHECK(errors("phase \"a\"\n  1 part base\n  50 % oil\n") ==
        "4:3: parts cannot stand beside masses or shares: give all amounts in parts, or none\n");
  CHECK(errors("phase \"a\"\n  5 g per kg oil\n  100 % base\n") ==
        "4:3: a dose is counted on what stands before it, and nothing does\n");
  CHECK(errors("phase \"a\"\n  10 ml base\n  90 g oil\n") ==
        "4:3: no density is known for 'base': weigh it and give grams\n");
  CHECK(errors("phase \"a\"\n  100 % bas\n") ==
        "4:9: 'bas' is not a material, premix or fragrance that is known; perhaps 'Base'; a "
        "material of your own is told of in two lines: 'material \"bas\"' and, below it, 'inci "
        "\"the INCI name on its bag\"'\n");
  CHECK(errors("phase \"a\"\n  100 % twin\n") ==
        "4:9: 'twin' can mean 'First twin' or 'Second twin': write the one you have\n");
  CHECK(errors("phase \"a\"\n  1 bag \"x\"\npremix \"x\" makes 1 kg as bag\n  100 % \"x\"\n") ==
        "5:8: premix 'x' holds itself: 'x' holds 'x'\n");
}

TEST_CASE("tolerances: shares within 0.05 %, masses within 0.5 %") {
  CHECK(Bench("phase \"a\"\n  50 % base\n  49.95 % oil\n").mixed.blend);
  CHECK_FALSE(Bench("phase \"a\"\n  50 % base\n  49.94 % oil\n").mixed.blend);
  CHECK(Bench("phase \"a\"\n  500 g base\n  495 g oil\n", "  batch 1 kg\n").mixed.blend);
  CHECK_FALSE(Bench("phase \"a\"\n  500 g base\n  494 g oil\n", "  batch 1 kg\n").mixed.blend);
}

TEST_CASE("an amount of nothing is noted") {
  Bench bench("phase \"a\"\n  100 % base\n  0 % oil\n");
  REQUIRE_MESSAGE(bench.mixed.blend, bench.mixed.errors);
  CHECK(bench.mixed.blend->notes.size() == 1);
}

}  // namespace
