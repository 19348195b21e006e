// A list of things each of which stays packed until it is asked for; else like a vector.
#pragma once

#include <compare>
#include <cstddef>
#include <initializer_list>
#include <iterator>
#include <utility>
#include <vector>

#include "catalogue/later.h"

namespace sudsmark::catalogue {

template <class T>
class Shelf {
  /// Walks over the things themselves. `Place` is an iterator over what holds them.
  template <class Place, class Value>
  class Walk {
   public:
    using iterator_category = std::random_access_iterator_tag;
    using value_type = T;
    using difference_type = std::ptrdiff_t;
    using pointer = Value*;
    using reference = Value&;

    Walk() = default;
    explicit Walk(Place at) : at_(at) {}
    Value& operator*() const { return **at_; }
    Value* operator->() const { return &**at_; }
    Value& operator[](difference_type by) const { return **(at_ + by); }
    Walk& operator+=(difference_type by) {
      at_ += by;
      return *this;
    }
    Walk& operator-=(difference_type by) { return *this += -by; }
    Walk& operator++() { return *this += 1; }
    Walk& operator--() { return *this += -1; }
    Walk operator++(int) { return std::exchange(*this, *this + 1); }
    Walk operator--(int) { return std::exchange(*this, *this - 1); }
    friend Walk operator+(Walk a, difference_type by) { return a += by; }
    friend Walk operator+(difference_type by, Walk a) { return a += by; }
    friend Walk operator-(Walk a, difference_type by) { return a -= by; }
    friend difference_type operator-(const Walk& a, const Walk& b) { return a.at_ - b.at_; }
    friend auto operator<=>(const Walk& a, const Walk& b) = default;

   private:
    Place at_;
  };

  using List = std::vector<Later<T>>;

 public:
  using value_type = T;
  using const_iterator = Walk<typename List::const_iterator, const T>;
  using iterator = Walk<typename List::iterator, T>;

  Shelf() = default;
  Shelf(std::initializer_list<T> things) {
    for (const T& thing : things) push_back(thing);
  }

  [[nodiscard]] std::size_t size() const { return list_.size(); }
  [[nodiscard]] bool empty() const { return list_.empty(); }
  [[nodiscard]] const T& operator[](std::size_t at) const { return *list_[at]; }
  [[nodiscard]] T& operator[](std::size_t at) { return *list_[at]; }
  [[nodiscard]] const T& front() const { return *list_.front(); }
  [[nodiscard]] T& front() { return *list_.front(); }
  [[nodiscard]] const T& back() const { return *list_.back(); }
  [[nodiscard]] T& back() { return *list_.back(); }
  [[nodiscard]] const_iterator begin() const { return const_iterator(list_.begin()); }
  [[nodiscard]] const_iterator end() const { return const_iterator(list_.end()); }
  [[nodiscard]] iterator begin() { return iterator(list_.begin()); }
  [[nodiscard]] iterator end() { return iterator(list_.end()); }

  void push_back(T thing) { list_.emplace_back(std::move(thing)); }
  void pop_back() { list_.pop_back(); }
  void clear() { list_.clear(); }
  void resize(std::size_t size) { list_.resize(size); }

  /// What holds the things, for whoever packs and unpacks them.
  [[nodiscard]] List& held() { return list_; }
  [[nodiscard]] const List& held() const { return list_; }

  friend bool operator==(const Shelf&, const Shelf&) = default;

 private:
  List list_;
};

}  // namespace sudsmark::catalogue
