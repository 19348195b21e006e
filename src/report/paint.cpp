#include "report/paint.h"

#include "wording/words.h"

namespace sudsmark::report {

std::string painted(Level level, bool color) {
  const std::string word{wording::level_word(level)};
  if (!color) return word;
  const std::string_view paint = level == Level::error     ? "\x1b[1;31m"
                                 : level == Level::warning ? "\x1b[1;33m"
                                                           : "\x1b[36m";
  return std::string(paint) + word + "\x1b[0m";
}

}  // namespace sudsmark::report
