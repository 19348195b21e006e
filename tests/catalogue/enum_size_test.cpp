#include "catalogue/enum_size.h"

#include <doctest/doctest.h>

#include <cstdint>

#include "catalogue/material.h"
#include "quantity/unit.h"

using sudsmark::catalogue::enum_size;

namespace {

enum class One : std::uint8_t { only };
enum class Three : std::int16_t { first, second_2, THIRD };

}  // namespace

TEST_CASE("an enumeration's size is counted from its names") {
  CHECK(enum_size<One> == 1);
  CHECK(enum_size<Three> == 3);
  CHECK(enum_size<sudsmark::catalogue::SourceKind> ==
        static_cast<std::size_t>(sudsmark::catalogue::SourceKind::from_memory) + 1);
  CHECK(enum_size<sudsmark::quantity::Flavour> == 3);
}
