// The interner: puts things into a Pool, each thing once.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "rules/program.h"

namespace sudsmark::rules {

class Interner {
 public:
  /// Knows what the pool holds already (of built-in rulesets).
  explicit Interner(Pool& pool);

  [[nodiscard]] std::uint32_t figure(const quantity::Range& value);
  [[nodiscard]] std::uint32_t text(std::string_view words);
  [[nodiscard]] std::uint32_t trait(std::string_view word);
  [[nodiscard]] std::uint32_t list(const std::vector<std::uint16_t>& products);
  [[nodiscard]] std::uint32_t named(const Named& things);
  [[nodiscard]] std::uint32_t selection(const std::vector<Pick>& picks, bool aroma);
  [[nodiscard]] std::uint32_t sum(SumKind kind, std::uint32_t selection);

 private:
  /// Index of what the key stands for; `next` and remembered if it is new.
  std::uint32_t place(std::string key, std::size_t next, bool& fresh);

  Pool& pool_;
  std::unordered_map<std::string, std::uint32_t> known_;
};

}  // namespace sudsmark::rules
