#include "cli/progress.h"

#include <unistd.h>

#include <algorithm>
#include <iostream>

namespace sudsmark::cli {
namespace {

using namespace std::chrono_literals;

/// Before this nobody wonders.
constexpr auto patience = 1s;
constexpr auto between = 200ms;

}  // namespace

Progress::Progress(std::size_t total)
    : total_(total),
      terminal_(isatty(STDERR_FILENO) == 1 && isatty(STDOUT_FILENO) == 0),
      next_(Clock::now() + patience) {}

Progress::~Progress() {
  // back to the start, and clear to the end of the line
  if (shown_) std::cerr << "\r\x1b[K" << std::flush;
}

void Progress::show(std::size_t done) {
  if (!terminal_ || Clock::now() < next_) return;
  next_ = Clock::now() + between;
  shown_ = true;
  std::cerr << "\rchecked " << std::min(done, total_) << " of " << total_ << " formulas"
            << std::flush;
}

}  // namespace sudsmark::cli
