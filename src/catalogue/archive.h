// Archives: structs to bytes and back, so that built-in rulesets need no parsing at a start.
//
// A struct that is to be packed has one function in its own namespace,
//
//     template <class Archive>
//     void visit(Archive& archive, typename Archive::template Of<Rule>& rule) {
//       auto& [id, title, sources] = rule;   // a field that is forgotten does not compile
//       archive(id, title, sources);
//     }
//
// which Writer and Reader both call (`Of<T>` is const for the one, not for the other), so writing
// and reading cannot disagree on what comes in which order. A value that an enumeration does not
// have is refused on reading. `to_bytes` and `from_bytes` add a word of format in front.
//
// A `Later` keeps the place of its bytes, which must outlive it, and is unpacked when it is asked
// for. `sound` tells of what is still packed whether it can be.
//
// Bytes are little-endian and the same on every machine. An unsigned integer below 128 is a byte;
// of any other a byte says how many follow, so that reading one takes no loop.
#pragma once

#include <array>
#include <bit>
#include <chrono>
#include <concepts>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "catalogue/bytes.h"
#include "catalogue/enum_size.h"
#include "catalogue/later.h"
#include "catalogue/shelf.h"
#include "quantity/range.h"
#include "quantity/unit.h"

namespace sudsmark::catalogue {

/// Turns values into bytes.
class Writer {
 public:
  template <class T>
  using Of = const T;

  template <class... T>
  void operator()(const T&... parts) {
    (put(parts), ...);
  }
  /// Integers in as many bytes as they have: longer, and quicker to read.
  template <std::unsigned_integral... T>
  void plain(const T&... parts) {
    (put_fixed<T>(parts), ...);
  }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }

 private:
  template <std::unsigned_integral T>
  void put(const T& value) {
    std::uint64_t rest = value;
    if (rest < long_integer) {
      bytes_ += static_cast<char>(static_cast<unsigned char>(rest));
      return;
    }
    const auto size = (static_cast<unsigned>(std::bit_width(rest)) + 7U) / 8U;
    bytes_ += static_cast<char>(static_cast<unsigned char>(long_integer + size));
    for (; rest != 0; rest >>= 8U) bytes_ += static_cast<char>(static_cast<unsigned char>(rest));
  }
  void put(const std::int8_t& value) { bytes_ += static_cast<char>(value); }
  void put(const bool& value) { bytes_ += value ? '\1' : '\0'; }
  void put(const float& value) { put_fixed<std::uint32_t>(value); }
  void put(const double& value) { put_fixed<std::uint64_t>(value); }
  template <class T>
  requires std::is_enum_v<T>
  void put(const T& value) { put(static_cast<std::uint64_t>(value)); }
  void put(const std::string& text) {
    put(std::uint64_t{text.size()});
    bytes_ += text;
  }
  template <class T>
  void put(const std::vector<T>& list) {
    put(std::uint64_t{list.size()});
    for (const T& item : list) put(item);
  }
  void put(const Bytes& bytes) {
    put(std::uint64_t{bytes.view().size()});
    bytes_ += bytes.view();
  }
  template <class T>
  void put(const Later<T>& later) {
    Writer inner;
    inner(*later);
    put(inner.bytes_);
  }
  template <class T>
  void put(const Shelf<T>& shelf) {
    put(shelf.held());
  }
  template <class T, std::size_t size>
  void put(const std::array<T, size>& list) {
    for (const T& item : list) put(item);
  }
  template <class T>
  void put(const std::optional<T>& value) {
    put(value.has_value());
    if (value) put(*value);
  }
  template <class... T>
  void put(const std::variant<T...>& value) {
    put(std::uint64_t{value.index()});
    std::visit([this](const auto& held) { this->put(held); }, value);
  }
  void put(const std::monostate& /*nothing*/) {}
  void put(const std::chrono::year_month_day& date) {
    put(static_cast<std::uint64_t>(std::chrono::sys_days(date).time_since_epoch().count() +
                                   days_before_epoch));
  }
  void put(const quantity::Range& range) { (*this)(range.low, range.high); }
  template <class T>
  requires std::is_class_v<T>
  void put(const T& object) { visit(*this, object); }

  template <class Bits, class T>
  void put_fixed(const T& value) {
    static_assert(sizeof(Bits) == sizeof(T));
    Bits bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    for (std::size_t byte = 0; byte < sizeof bits; ++byte) {
      bytes_ += static_cast<char>(static_cast<unsigned char>(bits >> (8U * byte)));
    }
  }

 public:
  /// What the first byte of an integer says from here on: how many follow.
  static constexpr unsigned long_integer = 0x80U;
  /// Dates are counted from here, so that none is negative.
  static constexpr std::int64_t days_before_epoch = std::int64_t{40'000} * 366;

 private:
  std::string bytes_;
};

/// Turns bytes into values. Bytes that end too soon or hold what cannot be leave zeros and empty
/// values and make `ok` false; nothing is read past their end.
class Reader {
 public:
  template <class T>
  using Of = T;

  explicit Reader(std::string_view bytes) : next_(bytes.data()), end_(next_ + bytes.size()) {}

  template <class... T>
  void operator()(T&... parts) {
    (get(parts), ...);
  }
  template <std::unsigned_integral... T>
  void plain(T&... parts) {
    if (left() < (sizeof(T) + ...)) return refuse();
    (get_fixed<T>(parts), ...);
  }
  [[nodiscard]] bool ok() const { return ok_; }
  /// The bytes of a string or of what was packed by itself, where they lie.
  [[nodiscard]] std::string_view stretch() {
    const std::size_t size = get_size();
    const std::string_view out(next_, size);
    next_ += size;
    return out;
  }
  /// Whether all went well and no byte is left.
  [[nodiscard]] bool done() const { return ok_ && next_ == end_; }
  void refuse() {
    ok_ = false;
    next_ = end_;
  }

 private:
  [[nodiscard]] std::size_t left() const { return static_cast<std::size_t>(end_ - next_); }

  template <std::unsigned_integral T>
  void get(T& value) {
    const unsigned first = byte();
    if (first < Writer::long_integer) {
      value = static_cast<T>(first);
      return;
    }
    const std::size_t size = first - Writer::long_integer;
    std::uint64_t whole = 0;
    if (size > sizeof whole || size > left()) {
      refuse();
    } else if (std::endian::native == std::endian::little && left() >= sizeof whole && size > 0) {
      std::memcpy(&whole, next_, sizeof whole);
      whole &= ~std::uint64_t{0} >> (8U * (sizeof whole - size));
      next_ += size;
    } else {
      for (std::size_t at = 0; at < size; ++at) whole |= std::uint64_t{byte()} << (8U * at);
    }
    value = static_cast<T>(whole);
    if (value == whole) return;
    value = 0;
    refuse();
  }
  void get(std::int8_t& value) { value = static_cast<std::int8_t>(byte()); }
  void get(bool& value) {
    const unsigned char got = byte();
    if (got > 1) refuse();
    value = got == 1;
  }
  void get(float& value) { get_fixed<std::uint32_t>(value); }
  void get(double& value) { get_fixed<std::uint64_t>(value); }
  template <class T>
  requires std::is_enum_v<T>
  void get(T& value) {
    std::uint64_t number = 0;
    get(number);
    if (number >= enum_size<T>) {
      refuse();
      number = 0;
    }
    value = static_cast<T>(number);
  }
  void get(std::string& text) { text = stretch(); }
  template <class T>
  void get(std::vector<T>& list) {
    const std::size_t size = get_size();
    list.clear();
    list.reserve(size < most_reserved ? size : most_reserved);
    for (std::size_t at = 0; at < size && ok_; ++at) get(list.emplace_back());
  }
  void get(Bytes& bytes) {
    bytes.own.clear();
    bytes.packed = stretch();
  }
  template <class T>
  void get(Later<T>& later) {
    later = Later<T>::packed(stretch());
  }
  template <class T>
  void get(Shelf<T>& shelf) {
    get(shelf.held());
  }
  template <class T, std::size_t size>
  void get(std::array<T, size>& list) {
    for (T& item : list) get(item);
  }
  template <class T>
  void get(std::optional<T>& value) {
    bool there = false;
    get(there);
    if (there) {
      get(value.emplace());
    } else {
      value.reset();
    }
  }
  template <class... T>
  void get(std::variant<T...>& value) {
    std::uint64_t index = 0;
    get(index);
    if (index >= sizeof...(T)) {
      refuse();
      index = 0;
    }
    get_alternative<0>(value, index);
  }
  void get(std::monostate& /*nothing*/) {}
  void get(std::chrono::year_month_day& date) {
    std::uint64_t days = 0;
    get(days);
    constexpr auto before = static_cast<std::uint64_t>(Writer::days_before_epoch);
    if (days > 2 * before) {
      refuse();
      days = before;
    }
    const auto since = static_cast<std::int64_t>(days) - Writer::days_before_epoch;
    date = std::chrono::sys_days(std::chrono::days(since));
  }
  void get(quantity::Range& range) { (*this)(range.low, range.high); }
  template <class T>
  requires std::is_class_v<T>
  void get(T& object) { visit(*this, object); }

  template <std::size_t at, class... T>
  void get_alternative(std::variant<T...>& value, std::uint64_t index) {
    if constexpr (at < sizeof...(T)) {
      if (at == index) {
        get(value.template emplace<at>());
      } else {
        get_alternative<at + 1>(value, index);
      }
    }
  }

  unsigned char byte() {
    if (next_ == end_) {
      refuse();
      return 0;
    }
    return static_cast<unsigned char>(*next_++);
  }

  /// A count of things that take a byte each or more.
  std::size_t get_size() {
    std::uint64_t size = 0;
    get(size);
    if (size > left()) {
      refuse();
      return 0;
    }
    return static_cast<std::size_t>(size);
  }

  template <class Bits, class T>
  void get_fixed(T& value) {
    static_assert(sizeof(Bits) == sizeof(T));
    if (left() < sizeof(Bits)) {
      refuse();
      value = T{};
      return;
    }
    Bits bits = 0;
    if constexpr (std::endian::native == std::endian::little) {
      std::memcpy(&bits, next_, sizeof bits);
    } else {
      for (std::size_t at = 0; at < sizeof(Bits); ++at) {
        bits |= Bits{static_cast<unsigned char>(next_[at])} << (8U * at);
      }
    }
    next_ += sizeof(Bits);
    std::memcpy(&value, &bits, sizeof bits);
  }

  static constexpr std::size_t most_reserved = 4096;

  const char* next_;
  const char* end_;
  bool ok_ = true;
};

/// In front of all bytes: who wrote them, and in which order of fields. The number goes up whenever
/// a packed struct changes.
inline constexpr std::string_view format_word = "sudsmark pack 5\n";

template <class... T>
[[nodiscard]] std::string to_bytes(const T&... objects) {
  Writer writer;
  writer(objects...);
  return std::string(format_word) + writer.bytes();
}

/// False if the bytes are of another format, end too soon, go on too long, or hold what cannot be.
template <class... T>
[[nodiscard]] bool from_bytes(std::string_view bytes, T&... objects) {
  if (!bytes.starts_with(format_word)) return false;
  Reader reader(bytes.substr(format_word.size()));
  reader(objects...);
  return reader.done();
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<quantity::Dimension>& dimension) {
  auto& [mass, volume, amount, temperature, time, flavour] = dimension;
  archive(mass, volume, amount, temperature, time, flavour);
}

}  // namespace sudsmark::catalogue
