// Source files: their bytes, and how a byte offset becomes a line and a column.
//
// Inside the program a place is a Span: a file's index and two byte offsets. Only a sink (a report,
// an error line) turns it into a line and a column, by asking Sources. Every other room keeps Spans
// and never copies text to remember where it came from.
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::text {

/// Which file of a Sources a span points into.
using FileIndex = std::uint32_t;

/// No file at all: a place that is nowhere in the input.
inline constexpr FileIndex no_file = 0xFFFFFFFFU;

/// A stretch of bytes [begin, end) of one file.
struct Span {
  FileIndex file = no_file;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  [[nodiscard]] constexpr bool somewhere() const { return file != no_file; }
  friend constexpr bool operator==(const Span&, const Span&) = default;
};

/// A place as people count it: lines from 1, columns from 1 in code points.
struct Position {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  friend constexpr bool operator==(const Position&, const Position&) = default;
};

/// One file's text. A byte order mark is kept in the text and takes no column.
class Source {
 public:
  Source(std::string path, std::string text);

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string_view text() const { return text_; }
  /// Line and column of a byte offset; an offset past the end is the end.
  [[nodiscard]] Position position(std::size_t offset) const;
  /// The bytes of a line (from 1) without its line end; empty past the last.
  [[nodiscard]] std::string_view line(std::uint32_t number) const;

 private:
  std::string path_;
  std::string text_;
  std::vector<std::uint32_t> starts_;
};

/// All files of one run, at addresses that stay.
class Sources {
 public:
  FileIndex add(std::string path, std::string text);
  [[nodiscard]] const Source& operator[](FileIndex file) const { return files_[file]; }
  [[nodiscard]] std::size_t size() const { return files_.size(); }
  /// Position of a span's first byte; 1:1 for a span that is nowhere.
  [[nodiscard]] Position position(const Span& span) const;
  /// Path of a span's file; empty for a span that is nowhere.
  [[nodiscard]] std::string_view path(const Span& span) const;

 private:
  std::deque<Source> files_;
};

}  // namespace sudsmark::text
