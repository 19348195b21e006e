#include "report/html_table.h"

#include <utility>

namespace sudsmark::report {

Table::Table(Markup& page, std::string_view caption, std::vector<std::string> columns,
             std::string_view of)
    : page_(page), columns_(std::move(columns)) {
  page_.open("table", {{"class", std::string(of)}, {"role", "table"}});
  page_.element("caption", caption);
  page_.open("thead", {{"role", "rowgroup"}});
  page_.open("tr", {{"role", "row"}});
  for (const std::string& column : columns_) {
    page_.element("th", {{"scope", "col"}, {"role", "columnheader"}}, column);
  }
  page_.close();
  page_.close();
  page_.open("tbody", {{"role", "rowgroup"}});
}

Table::~Table() {
  page_.close();
  page_.close();
}

void Table::row() {
  page_.open("tr", {{"role", "row"}});
  at_ = 0;
}

void Table::open_cell(std::string_view of) {
  if (at_ == 0) {
    page_.open("th", {{"scope", "row"}, {"role", "rowheader"}});
  } else {
    page_.open("td", {{"role", "cell"}, {"class", std::string(of)}, {"data-label", columns_[at_]}});
  }
  ++at_;
}

void Table::cell(std::string_view words, std::string_view of) {
  open_cell(of);
  if (!words.empty()) page_.name(words);
  close_cell();
}

}  // namespace sudsmark::report
