// What is missing: the papers and statements that would decide what cannot be decided yet.
//
// A figure that is not known carries the reasons as a set of small numbers, which costs next to
// nothing to pass along; the table turns them back into words when a report gathers what was left
// open.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "text/source.h"

namespace sudsmark::blend {

/// A set of reasons, by their index in the table. Nearly every formula has fewer than 64 reasons,
/// which stand in one word; a set that holds a later one keeps more words aside.
class MissingSet {
 public:
  MissingSet() = default;
  /// The set of one reason.
  [[nodiscard]] static MissingSet of(std::size_t index);
  MissingSet(const MissingSet& other) : first_(other.first_) {
    if (other.rest_) copy_rest(other);
  }
  MissingSet(MissingSet&& other) noexcept = default;
  MissingSet& operator=(const MissingSet& other) {
    first_ = other.first_;
    if (rest_ || other.rest_) copy_rest(other);
    return *this;
  }
  MissingSet& operator=(MissingSet&& other) noexcept = default;
  ~MissingSet() = default;

  [[nodiscard]] bool empty() const { return first_ == 0 && rest_ == nullptr; }
  /// Whether both have a reason.
  [[nodiscard]] bool shares(const MissingSet& other) const;
  void clear() {
    first_ = 0;
    if (rest_) rest_.reset();
  }
  MissingSet& operator|=(const MissingSet& other) {
    first_ |= other.first_;
    if (other.rest_) add_rest(other);
    return *this;
  }
  /// Takes out what another has.
  MissingSet& operator-=(const MissingSet& other);
  friend MissingSet operator|(MissingSet a, const MissingSet& b) { return std::move(a |= b); }
  friend MissingSet operator-(MissingSet a, const MissingSet& b) { return std::move(a -= b); }
  friend bool operator==(const MissingSet& a, const MissingSet& b) {
    return a.first_ == b.first_ && (a.rest_ == b.rest_ || same_rest(a, b));
  }

  /// Calls with the index of each reason, the least first.
  template <typename Call>
  void each(const Call& call) const {
    each_of(first_, 0, call);
    for (std::size_t word = 0; rest_ != nullptr && word < rest_->size(); ++word) {
      each_of((*rest_)[word], (word + 1) * bits, call);
    }
  }

 private:
  static constexpr std::size_t bits = 64;

  template <typename Call>
  static void each_of(std::uint64_t word, std::size_t before, const Call& call) {
    for (; word != 0; word &= word - 1) {
      call(before + static_cast<std::size_t>(std::countr_zero(word)));
    }
  }

  // what only sets of very many reasons need, and so stays out of line
  void copy_rest(const MissingSet& other);
  void add_rest(const MissingSet& other);
  [[nodiscard]] static bool same_rest(const MissingSet& a, const MissingSet& b);

  std::uint64_t first_ = 0;
  /// The words after the first, the last of them not zero; none if all would be.
  std::unique_ptr<std::vector<std::uint64_t>> rest_;
};

/// One thing that nobody has said: "the certificate of fragrance 'Sea Fig'".
struct Missing {
  std::string what;  ///< a noun phrase that can follow "needs" and stand before "would decide"
  text::Span place;  ///< where a maker would write it
};

/// The reasons of one formula, each once.
class MissingTable {
 public:
  MissingSet add(std::string_view what, text::Span place = {});
  [[nodiscard]] const std::vector<Missing>& items() const { return items_; }
  /// The set of one reason; empty if it was never added.
  [[nodiscard]] MissingSet find(const std::string& what) const;
  /// The reasons of a set, in the order in which they were added.
  [[nodiscard]] std::vector<std::string> words(const MissingSet& set) const;

 private:
  std::vector<Missing> items_;
  std::unordered_map<std::string, std::size_t> known_;
};

}  // namespace sudsmark::blend
