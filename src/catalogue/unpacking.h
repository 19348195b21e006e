// How a Later gets its value out of its bytes. For the files alone that make a Later of their
// structs once for all others, since every field's `visit` has to be known here.
#pragma once

#include <memory>
#include <stdexcept>

#include "catalogue/archive.h"
#include "catalogue/later.h"
#include "catalogue/shelf.h"

namespace sudsmark::catalogue {

template <class T>
T& Later<T>::unpacked() const {
  auto fresh = std::make_unique<T>();
  if (bytes_.data() != nullptr) {
    Reader reader(bytes_);
    reader(*fresh);
    if (!reader.done()) throw std::runtime_error("packed rulesets are damaged");
  }
  T* there = nullptr;  // unless another thread was first
  return *(value_.compare_exchange_strong(there, fresh.get()) ? fresh.release() : there);
}

template <class T>
bool Later<T>::sound() const {
  if (bytes_.data() == nullptr) return true;
  T trial;
  Reader reader(bytes_);
  reader(trial);
  return reader.done();
}

template <class T>
[[nodiscard]] bool sound(const Shelf<T>& shelf) {
  for (const Later<T>& one : shelf.held()) {
    if (!one.sound()) return false;
  }
  return true;
}

}  // namespace sudsmark::catalogue
