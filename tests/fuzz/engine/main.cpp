// sudsmark_fuzz: one target under libFuzzer. The target's name stands in SUDSMARK_TARGET:
//
//     SUDSMARK_TARGET=formula sudsmark_fuzz -dict=tests/fuzz/formula.dict found/ fixtures/formulas
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "fuzz/targets.h"

namespace {

const sudsmark::fuzz::Target& chosen() {
  static const sudsmark::fuzz::Target& target = []() -> const sudsmark::fuzz::Target& {
    const char* name = std::getenv("SUDSMARK_TARGET");
    for (const auto& one : sudsmark::fuzz::targets()) {
      if (name != nullptr && one.name == name) return one;
    }
    std::fprintf(stderr, "SUDSMARK_TARGET is one of:\n");
    for (const auto& one : sudsmark::fuzz::targets()) {
      std::fprintf(stderr, "  %.*s\n", static_cast<int>(one.name.size()), one.name.data());
    }
    std::exit(2);
  }();
  return target;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  chosen().run({reinterpret_cast<const char*>(data), size});
  return 0;
}
