// Results of several threads, taken one after the other in the order of the work.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <functional>
#include <mutex>
#include <optional>
#include <utility>
#include <vector>

namespace sudsmark::cli {

/// Holds few results at a time: who is too far ahead of what was taken waits.
template <class Result>
class InOrder {
 public:
  /// `most`: results that are held at a time. `take` is called by one thread at a time.
  InOrder(std::size_t most, std::function<void(Result&&)> take)
      : held_(most), take_(std::move(take)) {}

  /// The result of the work of that number; each number from 0 has to come once. Takes, before it
  /// returns, all that is whole up to here unless another thread is at it.
  void put(std::size_t number, Result&& result) {
    std::unique_lock lock(mutex_);
    room_.wait(lock, [&] { return number < next_ + held_.size(); });
    slot(number).emplace(std::move(result));
    if (taking_) return;
    taking_ = true;
    while (slot(next_)) {
      Result one = std::move(*slot(next_));
      slot(next_).reset();
      lock.unlock();
      take_(std::move(one));
      lock.lock();
      ++next_;
      room_.notify_all();
    }
    taking_ = false;
  }

 private:
  std::optional<Result>& slot(std::size_t number) { return held_[number % held_.size()]; }

  std::mutex mutex_;
  std::condition_variable room_;
  std::vector<std::optional<Result>> held_;
  std::size_t next_ = 0;  ///< the first that was not taken
  bool taking_ = false;
  std::function<void(Result&&)> take_;
};

}  // namespace sudsmark::cli
