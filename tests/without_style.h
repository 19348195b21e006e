// A page without its style, which stands in a file of its own and would only hide what changed.
#pragma once

#include <doctest/doctest.h>

#include <string>

namespace sudsmark::testing {

inline std::string without_style(std::string page) {
  const std::size_t from = page.find("<style>") + 7;
  const std::size_t to = page.find("</style>");
  REQUIRE(to != std::string::npos);
  return page.erase(from, to - from);
}

}  // namespace sudsmark::testing
