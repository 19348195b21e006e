#include "borders/outward.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sudsmark::borders {
namespace {

bool sound(const std::optional<std::vector<Worse>>& worse) {
  return worse && worse->empty();
}

/// Halves between a sound place and one that is not, asking the rules that count there.
void halve(const Look& look, const Chosen& chosen, double fine, Border& border) {
  // a double has no more bits to halve
  constexpr int most = 60;
  for (int round = 0; round < most; ++round) {
    if (std::abs(border.outside - border.inside) <= fine) return;
    const double middle = border.inside + (border.outside - border.inside) / 2;
    if (middle == border.inside || middle == border.outside) return;
    (sound(look(middle, chosen)) ? border.inside : border.outside) = middle;
  }
}

}  // namespace

Border outward(const Outward& how, double from, const std::vector<double>& places, double fine) {
  Border border{from, from, {}};
  std::optional<std::vector<Worse>> found;
  for (const double place : places) {
    found = how.look(place, how.all);
    border.outside = place;
    if (!sound(found)) break;
    border.inside = place;
  }
  // what is sound at the far end may be worse nearer: then that is halved, and at last all is asked
  constexpr int rounds = 3;
  for (int round = 1; border.inside != border.outside; ++round) {
    const double sound_before = border.inside;
    Chosen chosen = how.all;
    if (round < rounds) {
      chosen.assign(how.all.size(), false);
      if (found) {
        for (const Worse& one : *found) chosen[one.rule] = true;
      }
    }
    halve(how.look, chosen, fine, border);
    auto inside = border.inside == sound_before || round == rounds
                      ? std::optional(std::vector<Worse>{})
                      : how.look(border.inside, how.all);
    if (sound(inside)) {
      auto outside = how.look(border.outside, how.all);
      if (outside) border.worse = std::move(*outside);
      break;
    }
    border.outside = border.inside;
    border.inside = sound_before;
    found = std::move(inside);
  }
  return border;
}

std::vector<double> places_down(double from, double step) {
  std::vector<double> out;
  for (const double of : {0.98, 0.93, 0.85, 0.75, 0.62, 0.5, 0.36, 0.22, 0.1}) {
    out.push_back(from * of);
  }
  // what is next to nothing can be worse than nothing: no scale shows it
  constexpr double narrowing = 0.25;
  while (out.back() * narrowing > step) out.push_back(out.back() * narrowing);
  if (step < out.back()) out.push_back(step);
  out.push_back(0);
  return out;
}

std::vector<double> places_up(double from, double most, double step) {
  std::vector<double> out;
  constexpr double growth = 1.25;
  constexpr double parts = 8;
  double at = from;
  for (const double of : {1.02, 1.07, 1.15}) {
    if (from * of < most) out.push_back(at = from * of);
  }
  while (at < most) {
    at = std::min({at * growth, at + (most - from) / parts, most});
    if (most - at < (most - from) / (parts * parts)) at = most;
    // alone it is sound where beside traces of all others it is not
    if (at == most && from < most - step) out.push_back(most - step);
    out.push_back(at);
  }
  return out;
}

}  // namespace sudsmark::borders
