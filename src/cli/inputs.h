// What a command reads from disk, and a memory of it: no report may be written over it.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/check.h>

#include "text/files.h"

namespace sudsmark::cli {

class Inputs {
 public:
  /// `outside`: links and includes may lead out of the folder of a formula.
  explicit Inputs(bool outside = false) : outside_(outside) {}

  /// A file that is named on the command line, or that another file names.
  [[nodiscard]] text::FileBytes read(const std::string& path, std::size_t most,
                                     text::Pipes pipes = text::Pipes::refused);

  /// A formula's bytes; a problem if they cannot be read. `-` is standard input.
  [[nodiscard]] std::optional<FormulaText> read_formula(const std::string& path, bool in_folder,
                                                        std::vector<Problem>& problems);

  /// For CheckOptions::read: what a formula includes, which a link leads out of its folder only if
  /// that is allowed. What is not read is kept for `tell_unread`. Safe to call from several
  /// threads.
  [[nodiscard]] std::function<std::optional<std::string>(const std::string&)> reader_for(
      const std::vector<std::string>& formulas);

  /// Tells standard error why files that formulas include were not read.
  void tell_unread() const;

  /// Whether a file is one that was read, whatever it is called: words that say so.
  [[nodiscard]] std::optional<std::string> would_lose(const std::string& path) const;

  [[nodiscard]] bool outside() const { return outside_; }

 private:
  using Identity = std::pair<std::uint64_t, std::uint64_t>;  ///< of a device, and of a file on it

  [[nodiscard]] static std::optional<Identity> identity(const std::string& path);
  [[nodiscard]] text::FileBytes read_standard_input();
  void remember(const std::string& path);

  bool outside_;
  mutable std::mutex mutex_;
  std::map<Identity, std::string> read_;       ///< and what it was called
  std::map<std::string, std::string> unread_;  ///< reasons by path
};

}  // namespace sudsmark::cli
