#include "report/paint.h"

#include "wording/words.h"

namespace sudsmark::report {

std::string painted(Level level, std::string_view words, bool color) {
  if (!color) return std::string(words);
  const std::string_view paint = level == Level::error     ? "\x1b[1;31m"
                                 : level == Level::warning ? "\x1b[1;33m"
                                                           : "\x1b[36m";
  return std::string(paint) + std::string(words) + "\x1b[0m";
}

std::string painted(Level level, bool color) {
  return painted(level, wording::level_word(level), color);
}

}  // namespace sudsmark::report
