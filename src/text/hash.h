// FNV-1a with 64 bits: well mixed, the same on every machine, and no guard against anybody.
#pragma once

#include <cstdint>
#include <string_view>

namespace sudsmark::text {

inline constexpr std::uint64_t hash_start = 0xCBF29CE484222325U;

/// The hash of some bytes, or of what stood before with these behind it.
[[nodiscard]] constexpr std::uint64_t hash_of(std::string_view bytes,
                                              std::uint64_t before = hash_start) {
  std::uint64_t hash = before;
  for (const char byte : bytes) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 0x100000001B3U;
  }
  return hash;
}

}  // namespace sudsmark::text
