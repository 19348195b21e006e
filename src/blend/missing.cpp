#include "blend/missing.h"

#include <algorithm>

namespace sudsmark::blend {

MissingSet MissingSet::of(std::size_t index) {
  MissingSet out;
  const std::uint64_t bit = std::uint64_t{1} << (index % bits);
  if (index < bits) {
    out.first_ = bit;
  } else {
    out.rest_ = std::make_unique<std::vector<std::uint64_t>>(index / bits);
    out.rest_->back() = bit;
  }
  return out;
}

void MissingSet::copy_rest(const MissingSet& other) {
  if (this == &other) return;
  rest_ = other.rest_ ? std::make_unique<std::vector<std::uint64_t>>(*other.rest_) : nullptr;
}

bool MissingSet::shares(const MissingSet& other) const {
  if ((first_ & other.first_) != 0) return true;
  if (!rest_ || !other.rest_) return false;
  const std::size_t size = std::min(rest_->size(), other.rest_->size());
  for (std::size_t word = 0; word < size; ++word) {
    if (((*rest_)[word] & (*other.rest_)[word]) != 0) return true;
  }
  return false;
}

void MissingSet::add_rest(const MissingSet& other) {
  if (!rest_) rest_ = std::make_unique<std::vector<std::uint64_t>>();
  if (rest_->size() < other.rest_->size()) rest_->resize(other.rest_->size());
  for (std::size_t word = 0; word < other.rest_->size(); ++word) {
    (*rest_)[word] |= (*other.rest_)[word];
  }
}

MissingSet& MissingSet::operator-=(const MissingSet& other) {
  if (rest_ && other.rest_) {
    const std::size_t size = std::min(rest_->size(), other.rest_->size());
    for (std::size_t word = 0; word < size; ++word) {
      (*rest_)[word] &= ~(*other.rest_)[word];
    }
    while (!rest_->empty() && rest_->back() == 0) rest_->pop_back();
    if (rest_->empty()) rest_.reset();
  }
  first_ &= ~other.first_;
  return *this;
}

bool MissingSet::same_rest(const MissingSet& a, const MissingSet& b) {
  return a.rest_ != nullptr && b.rest_ != nullptr && *a.rest_ == *b.rest_;
}

MissingSet MissingTable::add(std::string_view what, text::Span place) {
  std::string words(what);
  const auto known = known_.find(words);  // most reasons are met again and again
  if (known != known_.end()) return MissingSet::of(known->second);
  const std::size_t index = items_.size();
  items_.push_back({words, place});
  known_.emplace(std::move(words), index);
  return MissingSet::of(index);
}

MissingSet MissingTable::find(const std::string& what) const {
  const auto known = known_.find(what);
  return known == known_.end() ? MissingSet() : MissingSet::of(known->second);
}

std::vector<std::string> MissingTable::words(const MissingSet& set) const {
  std::vector<std::string> out;
  set.each([&](std::size_t index) { out.push_back(items_[index].what); });
  return out;
}

}  // namespace sudsmark::blend
