// Ranges never lose the true value: every measure of a formula with ranges holds what the same
// formula gives with figures drawn from within them.
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

/// A figure that may be a range: how it is written as one, and with what was drawn from it.
struct Figure {
  double low = 0;
  double high = 0;
};

std::string written(double value) {
  std::string digits = std::to_string(std::llround(value * 1e4));
  while (digits.size() < 5) digits.insert(digits.begin(), '0');
  return digits.insert(digits.size() - 4, ".");
}

class RandomFormulas {
 public:
  explicit RandomFormulas(std::uint64_t seed) : engine_(seed) {}

  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  bool chance(double probability) { return uniform(0.0, 1.0) < probability; }

  Figure figure(double low, double high) {
    const double from = std::round(uniform(low, high) * 1e3) / 1e3;
    if (chance(0.3)) return {from, from};
    return {from, std::round(uniform(from, high) * 1e3) / 1e3};
  }

  /// A formula's skeleton; `text` writes it.
  void draw() {
    static const std::vector<std::string> names{"SLSA",
                                                "SCI",
                                                "SCS",
                                                "CAPB",
                                                "citric acid",
                                                "soda ash",
                                                "cream of tartar",
                                                "corn starch",
                                                "kaolin",
                                                "stearic acid",
                                                "cetyl alcohol",
                                                "cocoa butter",
                                                "polysorbate 80",
                                                "glycerin",
                                                "blue 1 lake",
                                                "decyl glucoside",
                                                "epsom salt",
                                                "lavender oil",
                                                "soap noodles",
                                                "malic acid"};
    lines_.clear();
    std::vector<std::string> left = names;
    const int count = static_cast<int>(uniform(2.0, 7.99));
    for (int i = 0; i < count; ++i) {
      const auto index = static_cast<std::size_t>(uniform(0.0, static_cast<double>(left.size())));
      lines_.emplace_back(left[index],
                          chance(0.15) ? Figure{0.0, uniform(0.01, 9.0)} : figure(0.02, 13.0));
      left.erase(left.begin() + static_cast<std::ptrdiff_t>(index));
    }
    const char* const kinds[] = {"bubble bar", "bath fizzy", "shampoo bar"};
    kind_ = kinds[static_cast<std::size_t>(uniform(0.0, 2.999))];
    dose_ = figure(5.0, 80.0);
    litres_ = figure(60.0, 180.0);
    batch_.low = batch_.high = std::round(uniform(0.2, 6.0) * 10) / 10;
    // a room's humidity goes up and down, and its measure is meant for the highest
    humidity_.low = humidity_.high = std::round(uniform(30.0, 70.0));
    fine_ = chance(0.5);
  }

  /// With ranges, or with one figure drawn from each.
  std::string text(bool drawn) {
    const auto say = [&](const Figure& figure) {
      if (figure.low == figure.high) return written(figure.low);
      if (drawn) return written(uniform(figure.low, figure.high));
      return written(figure.low) + " - " + written(figure.high);
    };
    std::string out = "formula \"Drawn\"\n  product " + kind_ + "\n  batch " + say(batch_) +
                      " kg\n  bath " + say(dose_) + " g in " + say(litres_) +
                      " l at 38 C\n  water medium\n";
    out += "workshop \"loft\"\n  room 28 m3\n  air changes 1.5 per hour\n  humidity " +
           say(humidity_) + " %\n  scale 0.1 g to 400 g\n";
    out += fine_ ? "  scale 0.01 g to 60 g\n  scale 1 g to 8 kg\n" : "  scale 1 g to 8 kg\n";
    out += "phase \"all\"\n";
    for (const auto& [name, share] : lines_) out += "  " + say(share) + " % " + name + "\n";
    return out + "  q.s. sodium bicarbonate\n";
  }

 private:
  std::mt19937_64 engine_;
  std::vector<std::pair<std::string, Figure>> lines_;
  std::string kind_;
  Figure dose_;
  Figure litres_;
  Figure batch_;
  Figure humidity_;
  bool fine_ = false;
};

TEST_CASE("measures of ranges: low end below high end, and no drawn figure outside") {
  RandomFormulas random(2026);
  for (int round = 0; round < 40; ++round) {
    random.draw();
    const std::string wide = random.text(false);
    CAPTURE(wide);
    const WorkshopFormula ranges(wide);
    std::vector<Range> held;
    for (const measures::Measure& measure : measures::all()) {
      held.push_back(ranges(measure.name));
      CAPTURE(measure.name);
      CHECK(held.back().low <= held.back().high);
    }
    for (int draw = 0; draw < 2; ++draw) {
      const std::string narrow = random.text(true);
      CAPTURE(narrow);
      const WorkshopFormula exact(narrow);
      for (std::size_t index = 0; index < held.size(); ++index) {
        const measures::Measure& measure = measures::all()[index];
        const Range found = exact(measure.name);
        if (!std::isfinite(found.low) || !std::isfinite(found.high)) continue;
        CAPTURE(measure.name);
        CAPTURE(held[index].low);
        CAPTURE(held[index].high);
        // corners of the chemistry's ranges hold its extremes to a few hundredths of a pH
        const double slack = measure.unit == "pH" ? 0.05 : 1e-3 * std::abs(found.high) + 1e-9;
        // the uncertainty is one figure for all baths of the range, the widest
        if (measure.name != "bath.ph_uncertainty") CHECK(found.low >= held[index].low - slack);
        CHECK(found.high <= held[index].high + slack);
      }
    }
  }
}

}  // namespace
