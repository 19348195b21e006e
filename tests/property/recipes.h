// Recipes made up at random, as text: of all kinds of product, in shares or masses, with ranges, a
// premix, portions and scents. The same seed makes the same recipe everywhere.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/check.h>

namespace sudsmark::testing {

/// Numbers that are the same on every machine (splitmix64).
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 1) {}
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31U);
  }
  std::size_t below(std::size_t many) { return static_cast<std::size_t>(next() % many); }
  bool one_in(std::size_t many) { return below(many) == 0; }
  template <typename Item>
  const Item& of(const std::vector<Item>& items) {
    return items[below(items.size())];
  }
  template <typename Item>
  void shuffle(std::vector<Item>& items) {
    for (std::size_t at = items.size(); at > 1; --at) std::swap(items[at - 1], items[below(at)]);
  }

 private:
  std::uint64_t state_;
};

/// "12.5": a figure of at most three places, with no exponent.
inline std::string figure(double value) {
  std::string out = std::to_string(value);
  while (out.ends_with('0')) out.pop_back();
  if (out.ends_with('.')) out.pop_back();
  return out;
}

struct Section {
  std::string head;
  std::vector<std::string> lines;
};

struct Recipe {
  std::string name = "Made up";
  std::vector<std::string> statements;
  std::vector<Section> parts;   ///< premixes, phases, portions
  std::vector<Section> others;  ///< scents, the workshop, a task
  bool exact = true;            ///< no amount is a range
  double batch = 0;             ///< g

  [[nodiscard]] std::string text() const {
    const auto add = [](std::string& out, const Section& section) {
      out += section.head + "\n";
      for (const std::string& line : section.lines) out += "  " + line + "\n";
    };
    std::string out = "formula \"" + name + "\"\n";
    for (const std::string& statement : statements) out += "  " + statement + "\n";
    for (const Section& section : parts) add(out, section);
    for (const Section& section : others) add(out, section);
    return out;
  }

  /// The same recipe with its lines, its sections and its statements in another order.
  [[nodiscard]] Recipe shuffled(Dice& dice) const {
    Recipe out = *this;
    dice.shuffle(out.statements);
    for (Section& section : out.parts) dice.shuffle(section.lines);
    for (Section& section : out.others) dice.shuffle(section.lines);
    dice.shuffle(out.parts);
    dice.shuffle(out.others);
    return out;
  }
};

/// A recipe of a seed. `batch` [g] is what is made; amounts by mass come to it.
inline Recipe recipe(std::uint64_t seed, double batch = 2000) {
  Dice dice(seed);
  Recipe out;
  out.batch = batch;
  const std::string product =
      dice.of<std::string>({"bubble bar", "bath fizzy", "shampoo bar", "bath salts", "bath melt"});
  out.statements = {"product " + product, "batch " + figure(batch) + " g"};
  const auto maybe = [&](const std::string& statement) {
    if (!dice.one_in(3)) out.statements.push_back(statement);
  };
  maybe("forming " + dice.of<std::string>({"pressed", "hand moulded", "scooped", "poured"}));
  maybe("market " + dice.of<std::string>({"GB", "EU", "US", "GB, EU", "CA"}));
  maybe("piece " + figure(static_cast<double>(40 + 10 * dice.below(12))) + " g");
  maybe("bath " + figure(static_cast<double>(20 + 10 * dice.below(10))) + " g in 150 l at 38 C");
  maybe("water " + dice.of<std::string>({"soft", "medium", "hard"}));
  maybe("users " + dice.of<std::string>({"adults", "children over 3"}));
  maybe("made in \"shed\"");

  struct Choice {
    std::string name;
    int least;  // tenths of a per cent
    int most;
  };
  std::vector<Choice> pool{{"citric acid", 5, 250},
                           {"cream of tartar", 20, 150},
                           {"tartaric acid", 5, 80},
                           {"SLSA", 20, 280},
                           {"sodium coco-sulfate", 10, 100},
                           {"cocamidopropyl betaine", 5, 80},
                           {"decyl glucoside", 5, 40},
                           {"BTMS-50", 5, 30},
                           {"corn starch", 10, 120},
                           {"kaolin", 5, 60},
                           {"sea salt", 10, 100},
                           {"epsom salt", 10, 80},
                           {"glycerin", 5, 60},
                           {"polysorbate 80", 2, 40},
                           {"rice bran oil", 2, 40},
                           {"castor oil", 2, 20},
                           {"shea butter", 5, 40},
                           {"stearic acid", 5, 50},
                           {"mica", 1, 8},
                           {"titanium dioxide", 1, 5},
                           {"blue 1 lake", 1, 4},
                           {"red 40 dye", 1, 2},
                           {"tocopherol", 1, 3},
                           {"whole milk powder", 5, 30},
                           {"lavender oil", 1, 15},
                           {"Sea Fig", 2, 25},
                           {"Tide Line", 2, 25}};
  dice.shuffle(pool);
  const std::size_t many = 4 + dice.below(8);
  std::vector<std::pair<std::string, int>> chosen;
  int sum = 0;
  for (std::size_t at = 0; at < many; ++at) {
    const Choice& one = pool[at];
    const int tenths =
        one.least +
        static_cast<int>(dice.below(static_cast<std::size_t>(one.most - one.least + 1)));
    if (sum + tenths > 850) continue;
    sum += tenths;
    chosen.emplace_back(one.name, tenths);
  }

  const bool by_mass = dice.one_in(3);
  const auto amount = [&](int tenths) {
    if (by_mass) return figure(batch * tenths / 1000) + " g ";
    const int around = tenths / 10;
    if (around > 0 && dice.one_in(6)) {
      out.exact = false;
      return figure((tenths - around) / 10.0) + " - " + figure((tenths + around) / 10.0) + " % ";
    }
    return figure(tenths / 10.0) + " % ";
  };
  Section dry{"phase \"dry\"", {}};
  Section wet{"phase \"wet\"", {}};
  for (const auto& [name, tenths] : chosen) {
    (dice.one_in(3) ? wet : dry).lines.push_back(amount(tenths) + name);
  }
  if (dice.one_in(4)) {
    out.parts.push_back({"premix \"dry bag\" makes 1 kg as bag",
                         {"700 g sodium bicarbonate", "200 g corn starch", "100 g kaolin"}});
    dry.lines.push_back(by_mass ? figure(batch * (1000 - sum) / 1000) + " g \"dry bag\""
                                : "q.s. \"dry bag\"");
  } else {
    dry.lines.push_back(by_mass ? figure(batch * (1000 - sum) / 1000) + " g sodium bicarbonate"
                                : "q.s. sodium bicarbonate");
  }
  out.parts.push_back(dry);
  if (!wet.lines.empty()) out.parts.push_back(wet);
  if (dice.one_in(4)) {
    out.parts.push_back({"portion \"one\", 60 %", {"1 g per kg blue 1 lake"}});
    out.parts.push_back(
        {"portion \"two\", 40 %", {"2 g per kg titanium dioxide", "1 g per kg mica"}});
  }
  out.others = {
      {"fragrance \"Sea Fig\"", {"limit 2.4 %", "category 9", "6 - 8 % linalool"}},
      {"fragrance \"Tide Line\"",
       {"limit 7.4 %", "category 9", "5 - 7 % linalool", "2 - 3 % limonene", "undeclared none"}},
      {"workshop \"shed\"",
       {"room 30 m3", "air changes 1.5 per hour", "humidity 40 - 50 %", "temperature 18 - 22 C",
        "scale 0.01 g to 500 g", "scale 1 g to 15 kg", "mask FFP2"}}};
  return out;
}

inline CheckOptions on_a_day() {
  CheckOptions options;
  options.on = std::chrono::year(2026) / 11 / 25;
  options.measures = true;
  options.particulars = true;
  return options;
}

/// What a check says of a text that must be sound.
inline FormulaResult result_of(const std::string& text, const Rulesets& rulesets,
                               const CheckOptions& options = on_a_day()) {
  RunResult run = check({"made-up.formula", text, false}, rulesets, options);
  for (const Problem& problem : run.problems) FAIL(problem.message << "\n" << text);
  REQUIRE(run.formulas.size() == 1);
  return std::move(run.formulas.front());
}

/// Equal but for the last bits, which another order of summing leaves.
inline bool near(double a, double b, double within = 1e-9) {
  return a == b || std::abs(a - b) <= within * std::max({std::abs(a), std::abs(b), 1e-9});
}
inline bool near(const std::optional<double>& a, const std::optional<double>& b,
                 double within = 1e-9) {
  return a.has_value() == b.has_value() && (!a || near(*a, *b, within));
}

}  // namespace sudsmark::testing
