// A value that stays packed until somebody asks for it, so that a start unpacks what it needs and
// nothing more.
//
//     Later<Material> of = Later<Material>::packed(bytes);   // the bytes outlive it
//     of->name;                                              // unpacked now, and kept
//
// Any number of threads may ask at once. Whoever is asked for a value to change keeps it from then
// on, and a copy of what nobody changed is as cheap as the place of its bytes.
#pragma once

#include <atomic>
#include <string_view>
#include <utility>

namespace sudsmark::catalogue {

template <class T>
class Later {
 public:
  Later() = default;
  explicit Later(T value) : value_(new T(std::move(value))) {}
  [[nodiscard]] static Later packed(std::string_view bytes) {
    Later out;
    out.bytes_ = bytes;
    return out;
  }

  Later(const Later& other) : bytes_(other.bytes_) {
    if (bytes_.data() == nullptr && other.value() != nullptr) value_ = new T(*other.value());
  }
  Later(Later&& other) noexcept
      : bytes_(std::exchange(other.bytes_, {})), value_(other.value_.exchange(nullptr)) {}
  Later& operator=(Later other) noexcept {
    std::swap(bytes_, other.bytes_);
    value_ = other.value_.exchange(value());
    return *this;
  }
  Later& operator=(T value) { return *this = Later(std::move(value)); }
  ~Later() { delete value(); }

  [[nodiscard]] const T& operator*() const {
    const T* there = value();
    return there != nullptr ? *there : unpacked();
  }
  [[nodiscard]] const T* operator->() const { return &**this; }
  /// The value to be changed, by one thread alone: its bytes count no longer.
  [[nodiscard]] T& operator*() {
    T& there = value() != nullptr ? *value() : unpacked();
    bytes_ = {};
    return there;
  }
  [[nodiscard]] T* operator->() { return &**this; }

  /// Whether it can be unpacked; asked of bytes that somebody else may have made.
  [[nodiscard]] bool sound() const;

 private:
  [[nodiscard]] T* value() const { return value_.load(std::memory_order_acquire); }
  /// Unpacks the bytes and keeps what they hold; the defaults of T without bytes. Throws
  /// std::runtime_error if they are damaged. Both stand in unpacking.h.
  [[nodiscard]] T& unpacked() const;

  std::string_view bytes_;
  mutable std::atomic<T*> value_{nullptr};
};

template <class T>
[[nodiscard]] bool operator==(const Later<T>& a, const Later<T>& b) {
  return *a == *b;
}

}  // namespace sudsmark::catalogue
