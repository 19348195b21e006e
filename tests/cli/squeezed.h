// Text whose columns do not count.
#pragma once

#include <string>

namespace test {

/// Several spaces become one.
inline std::string squeezed(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    if (letter != ' ' || !out.ends_with(' ')) out += letter;
  }
  return out;
}

}  // namespace test
