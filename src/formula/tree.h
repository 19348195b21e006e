// The tree of files: a formula, all that it includes and the bases of its tweaks, read once each.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "formula/assemble.h"
#include "formula/card.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula {

/// A path beside a file: relative to the file's folder, without detours through `.` and `..`.
[[nodiscard]] std::string path_beside(std::string_view file, std::string_view path);
/// Whether a path leaves a folder; both without detours. An empty folder is the current one.
[[nodiscard]] bool leaves_folder(std::string_view path, std::string_view folder);

/// Opens the files that a formula names, and keeps its bounds: 64 files, 8 MiB, no circle, none
/// outside the folder of the named file unless that is allowed. Each file is given out once.
class Tree {
 public:
  Tree(text::Sources& sources, text::FileIndex named, const AssembleOptions& options,
       text::Diagnostics& diagnostics);

  /// The file that `path` means in `file`, read; none if it was read before, or after an error.
  std::optional<text::FileIndex> open(text::FileIndex file, const Word& path);

  /// Between these a file is being read: what it names may not lead back to it.
  void enter(text::FileIndex file);
  void leave();

 private:
  [[nodiscard]] bool in_circle(const std::string& path, const Word& word);

  text::Sources& sources_;
  const AssembleOptions& options_;
  text::Diagnostics& diagnostics_;
  std::string folder_;
  std::vector<std::string> open_;  ///< files being read, outermost first
  std::set<std::string> known_;
  std::size_t bytes_ = 0;
  bool full_ = false;
};

}  // namespace sudsmark::formula
