#include "text/shortened.h"

namespace sudsmark::text {

std::string shortened(std::string_view name) {
  constexpr std::size_t most = 60;
  if (name.size() <= most) return std::string(name);
  std::size_t end = most;
  // a character is not cut in two
  while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0U) == 0x80U) --end;
  return std::string(name.substr(0, end)) + "…";
}

}  // namespace sudsmark::text
