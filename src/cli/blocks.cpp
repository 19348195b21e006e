// Small blocks of memory that were given back are kept by the thread that gave them, and handed out
// again.
//
// A check makes and drops some three thousand small strings and vectors, the same sizes formula
// after formula. The C library keeps seven blocks of a size at hand and joins and splits the rest,
// which takes a tenth of a run over many formulas. Here each thread keeps up to 16 KiB of a size,
// so that what it holds is bounded, whatever it is asked for. Sanitizers bring an operator of their
// own that must not be hidden.
#if defined(__has_feature)
#if __has_feature(address_sanitizer) || __has_feature(memory_sanitizer) || \
    __has_feature(thread_sanitizer)
#define SUDSMARK_SANITIZED 1
#endif
#endif
#if !defined(SUDSMARK_SANITIZED) && !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)

#include <array>
#include <cstddef>
#include <cstdlib>
#include <new>

namespace {

constexpr std::size_t step = 16;  // malloc aligns to it
constexpr std::size_t largest = 512;
constexpr std::size_t most_of_a_size = 16 * 1024;

constexpr std::size_t class_of(std::size_t size) {
  return size == 0 ? 1 : (size + step - 1) / step;
}

struct Block {
  Block* next;
};

struct Kept {
  Block* first = nullptr;
  std::size_t bytes = 0;
};

/// What a thread keeps. Trivial, since blocks are given back after everything else is gone.
struct Store {
  std::array<Kept, largest / step + 1> kept;
  bool open = false;
  bool closed = false;
};
constinit thread_local Store store;

/// Gives everything to the C library when the thread ends.
struct Closing {
  Closing() { store.open = true; }
  Closing(const Closing&) = delete;
  Closing& operator=(const Closing&) = delete;
  ~Closing() {
    store.closed = true;
    for (Kept& kept : store.kept) {
      while (kept.first != nullptr) {
        Block* const block = kept.first;
        kept.first = block->next;
        std::free(block);
      }
    }
  }
};

bool is_open() {
  if (store.closed) return false;
  thread_local const Closing closing;
  return true;
}

void* allocated(std::size_t size) {
  while (true) {
    if (void* const block = std::malloc(size)) return block;
    const std::new_handler handler = std::get_new_handler();
    if (handler == nullptr) throw std::bad_alloc();
    handler();
  }
}

}  // namespace

void* operator new(std::size_t size) {
  if (size > largest) return allocated(size);
  const std::size_t bytes = class_of(size) * step;
  Kept& kept = store.kept[bytes / step];
  Block* const block = kept.first;
  if (block == nullptr) return allocated(bytes);
  kept.first = block->next;
  kept.bytes -= bytes;
  return block;
}

void operator delete(void* memory) noexcept {
  std::free(memory);
}

void operator delete(void* memory, std::size_t size) noexcept {
  if (memory == nullptr) return;
  const std::size_t bytes = class_of(size) * step;
  if (bytes > largest) return std::free(memory);
  Kept& kept = store.kept[bytes / step];
  if (kept.bytes >= most_of_a_size || (!store.open && !is_open()) || store.closed) {
    return std::free(memory);
  }
  kept.first = new (memory) Block{kept.first};
  kept.bytes += bytes;
}

#endif
