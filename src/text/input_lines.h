// Standard input line by line, for what never ends.
#pragma once

#include <cstddef>
#include <string>

namespace sudsmark::text {

class InputLines {
 public:
  /// `most`: bytes of a line that are kept.
  explicit InputLines(std::size_t most) : most_(most) {}

  enum class Got {
    line,
    too_long,  ///< a line of more bytes; it was passed over
    end,
    failed  ///< nothing can be read any more; errno says why
  };

  /// The next line without its end. Waits for whoever writes; what stands after the last line end
  /// is a line too.
  [[nodiscard]] Got next(std::string& line);

 private:
  /// Reads more; false at the end and where nothing can be read.
  bool fill();

  std::size_t most_;
  std::string held_;  ///< read and not answered yet, from `from_` on
  std::size_t from_ = 0;
  bool ended_ = false;
  int error_ = 0;
};

}  // namespace sudsmark::text
