#include "text/input_lines.h"

#include <unistd.h>

#include <cerrno>

namespace sudsmark::text {

bool InputLines::fill() {
  constexpr std::size_t at_once = std::size_t{1} << 16U;
  if (ended_) return false;
  held_.erase(0, from_);
  from_ = 0;
  const std::size_t before = held_.size();
  held_.resize(before + at_once);
  ssize_t got = -1;
  do {
    got = ::read(STDIN_FILENO, held_.data() + before, at_once);
  } while (got < 0 && errno == EINTR);
  if (got < 0) error_ = errno;
  held_.resize(before + (got > 0 ? static_cast<std::size_t>(got) : 0));
  ended_ = got <= 0;
  return got > 0;
}

InputLines::Got InputLines::next(std::string& line) {
  bool too_long = false;
  std::size_t looked = 0;  // bytes after from_ that hold no line end
  while (true) {
    const std::size_t end = held_.find('\n', from_ + looked);
    if (end != std::string::npos) {
      too_long = too_long || end - from_ > most_;
      if (!too_long) line.assign(held_, from_, end - from_);
      from_ = end + 1;
      return too_long ? Got::too_long : Got::line;
    }
    looked = held_.size() - from_;
    if (looked > most_) {
      too_long = true;
      from_ = held_.size();
      looked = 0;
    }
    if (fill()) continue;
    if (error_ != 0) {
      errno = error_;
      return Got::failed;
    }
    if (held_.size() == from_ && !too_long) return Got::end;
    if (!too_long) line.assign(held_, from_);
    from_ = held_.size();
    return too_long ? Got::too_long : Got::line;
  }
}

}  // namespace sudsmark::text
