// Heading 2: what is worked out of pH, water and gas.
#include <array>
#include <cmath>

#include "dossier/gathering.h"
#include "measures/registry.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

struct Shown {
  std::string_view measure;
  const char* what;
  bool of_a_bath;
};

constexpr std::array shown{
    Shown{"solution.ph", "pH of a 1 % solution", false},
    Shown{"bath.ph", "pH of one bath", true},
    Shown{"water", "free water", false},
    Shown{"oils", "oils and butters", false},
    Shown{"surfactant", "active surfactant", false},
    Shown{"surfactant.in_bath", "active surfactant in one bath", true},
    Shown{"carbon_dioxide", "gas of one bath", true},
};

}  // namespace

void add_physics(const Gathering& to) {
  for (const Shown& one : shown) {
    const MeasureResult* found = to.measure(one.measure);
    if (found == nullptr) continue;
    const auto index = measures::find(one.measure);
    const std::string source = index ? std::string(measures::all()[*index].source) : std::string();
    if (one.of_a_bath && !to.blend.bath_volume) continue;
    std::string words = wording::printed(found->figure);
    if (!found->missing.empty()) words += "; needs " + wording::joined(found->missing);
    to.entry(2, one.what, words + (source.empty() ? "." : " (worked out: " + source + ")."));
  }
  to.entry(2, "stability", "nothing here measures or predicts it: see the questions.");
}

}  // namespace sudsmark::dossier
