// Draws: numbers that look drawn and are the same on every machine, so that a seed gives everybody
// the same exercises. The standard library's distributions differ from one to another.
//
// Source: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (the
// mixing function of SplitMix64).
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace sudsmark::drill {

class Draws {
 public:
  explicit Draws(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30U)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27U)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31U);
  }
  /// From 0 to below `end`, which is not 0. The bias is below one in 10^9 for any list of ours.
  std::size_t below(std::size_t end) { return static_cast<std::size_t>(next() % end); }
  /// From 0 to below 1.
  double share() { return static_cast<double>(next() >> 11U) * 0x1.0p-53; }
  double between(double low, double high) { return low + (high - low) * share(); }
  bool once_in(std::size_t times) { return below(times) == 0; }

  template <class Item>
  void shuffle(std::vector<Item>& items) {
    for (std::size_t left = items.size(); left > 1; --left) {
      std::swap(items[left - 1], items[below(left)]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace sudsmark::drill
