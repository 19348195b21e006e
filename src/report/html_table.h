// Tables of a page.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "report/markup.h"

namespace sudsmark::report {

/// A table that becomes a list of labelled lines on a narrow screen; the roles keep it a table for
/// those who listen to it. It is written while it lives.
class Table {
 public:
  Table(Markup& page, std::string_view caption, std::vector<std::string> columns,
        std::string_view of = "stack");
  Table(const Table&) = delete;
  Table& operator=(const Table&) = delete;
  ~Table();

  void row();
  void end_row() { page_.close(); }

  /// Opens the next cell; the first of a row is its heading.
  void open_cell(std::string_view of = "");
  void close_cell() { page_.close(); }
  /// A cell of words, which may be a name out of a file.
  void cell(std::string_view words, std::string_view of = "");

 private:
  Markup& page_;
  std::vector<std::string> columns_;
  std::size_t at_ = 0;
};

}  // namespace sudsmark::report
