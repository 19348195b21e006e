// Several threads at one piece of work.
#pragma once

#include <algorithm>
#include <cstddef>
#include <system_error>
#include <thread>
#include <vector>

namespace sudsmark::cli {

/// Results that each thread may be ahead of what was taken: formulas differ in what they cost.
inline constexpr std::size_t most_ahead = 16;

/// Threads that `--jobs` asks for; 0 is one for each processor.
[[nodiscard]] inline std::size_t threads_for(std::size_t jobs) {
  return jobs > 0 ? jobs : std::max(1U, std::thread::hardware_concurrency());
}

/// Does the work with so many threads, of which the caller's is one, and waits for all. Where the
/// machine gives no more, those that there are do it.
template <class Work>
void run_workers(std::size_t threads, const Work& work) {
  std::vector<std::jthread> others;
  try {
    while (others.size() + 1 < threads) others.emplace_back(work);
  } catch (const std::system_error&) {
    // as many as there are
  }
  work();
}

}  // namespace sudsmark::cli
