// Memory of a formula that serves the next one.
#pragma once

#if defined(__GLIBC__)
#include <malloc.h>
#endif

namespace sudsmark::cli {

/// Tells the C library to keep what a formula gives back. Otherwise the top of the heap goes to the
/// system after each and is asked for again, page by page, by the next: a third of the
/// time of a stream was the system's. What is kept is bounded by what one formula takes.
inline void keep_memory() {
#if defined(__GLIBC__)
  constexpr int kept = 32 << 20;
  constexpr int asked_at_a_time = 1 << 20;
  ::mallopt(M_TRIM_THRESHOLD, kept);
  ::mallopt(M_MMAP_THRESHOLD, kept);
  ::mallopt(M_TOP_PAD, asked_at_a_time);
#endif
}

}  // namespace sudsmark::cli
