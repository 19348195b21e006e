// Truths of a postfix program of which some may be open, the last one in the lowest bit.
#pragma once

#include <cstdint>
#include <optional>

namespace sudsmark::rules {

/// What each truth may be: yes, no, or both.
class OpenTruths {
 public:
  [[nodiscard]] bool is(bool which) const { return ((which ? no_ : yes_) & 1U) == 0; }
  [[nodiscard]] bool full() const { return size_ == most; }
  void push(std::optional<bool> is) {
    yes_ = (yes_ << 1U) | (is != false ? 1U : 0U);
    no_ = (no_ << 1U) | (is != true ? 1U : 0U);
    ++size_;
  }
  void deny() {
    const std::uint64_t differ = (yes_ ^ no_) & 1U;
    yes_ ^= differ;
    no_ ^= differ;
  }
  void both() {
    yes_ = all(yes_);
    no_ = any(no_);
    --size_;
  }
  void either() {
    yes_ = any(yes_);
    no_ = all(no_);
    --size_;
  }

 private:
  static constexpr int most = 64;
  static std::uint64_t all(std::uint64_t bits) { return (bits >> 1U) & (bits | ~std::uint64_t{1}); }
  static std::uint64_t any(std::uint64_t bits) { return (bits >> 1U) | (bits & 1U); }

  std::uint64_t yes_ = 0;
  std::uint64_t no_ = 0;
  int size_ = 0;
};

}  // namespace sudsmark::rules
