// Progress on standard error: a line that is written over, on a terminal alone, and only once the
// work has taken long enough for somebody to wonder. Where standard output is the terminal, what
// leaves there formula by formula shows it already.
#pragma once

#include <chrono>
#include <cstddef>

namespace sudsmark::cli {

class Progress {
 public:
  explicit Progress(std::size_t total);
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  /// Called by one thread, as often as it likes.
  void show(std::size_t done);

 private:
  using Clock = std::chrono::steady_clock;
  std::size_t total_;
  bool terminal_;
  bool shown_ = false;
  Clock::time_point next_;
};

}  // namespace sudsmark::cli
