#include "cli/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdlib>
#include <string_view>

namespace sudsmark::cli {

bool wants_color(const std::string& wish) {
  if (wish == "always") return true;
  if (wish == "never") return false;
  const char* terminal = std::getenv("TERM");
  if (terminal != nullptr && std::string_view(terminal) == "dumb") return false;
  const char* no_color = std::getenv("NO_COLOR");
  if (no_color != nullptr && *no_color != '\0') return false;
  return isatty(STDOUT_FILENO) == 1;
}

std::size_t terminal_columns() {
  if (isatty(STDOUT_FILENO) != 1) return 0;
  if (const char* columns = std::getenv("COLUMNS")) {
    const long typed = std::strtol(columns, nullptr, 10);
    if (typed > 0) return static_cast<std::size_t>(typed);
  }
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return 0;
  return size.ws_col;
}

}  // namespace sudsmark::cli
