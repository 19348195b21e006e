// A trainee at standard input: what was typed, until somebody has had enough.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace sudsmark::cli {

/// Says something on standard output, folded to the terminal.
class Speech {
 public:
  explicit Speech(bool ascii);
  void say(const std::string& text) const;

 private:
  bool ascii_;
  std::size_t columns_;
};

/// Lets Ctrl-C end the reading in place of the program, as long as it lives.
class Interruptible {
 public:
  Interruptible();
  ~Interruptible();
  Interruptible(const Interruptible&) = delete;
  Interruptible& operator=(const Interruptible&) = delete;
};

/// Longer than anything that would be understood.
inline constexpr std::size_t longest_line = 1000;

struct Typed {
  std::optional<std::string> line;  ///< none at the end of input, or after Ctrl-C
  bool too_long = false;            ///< so it is no person who types
};
/// A line of standard input without its end.
[[nodiscard]] Typed typed_line();

}  // namespace sudsmark::cli
