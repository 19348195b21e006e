#include "wording/page.h"

#include <algorithm>
#include <vector>

#include "text/utf8.h"
#include "wording/words.h"

namespace sudsmark::wording {
namespace {

constexpr std::size_t width = page_width;
constexpr std::size_t label_width = 16;
constexpr std::size_t name_width = 36;
constexpr std::size_t mass_width = 12;

std::string padded(std::string words, std::size_t room, bool right) {
  const std::size_t used = text::count_code_points(words);
  if (used >= room) return words;
  const std::string blanks(room - used, ' ');
  return right ? blanks + words : words + blanks;
}

std::vector<std::string> folded(std::string_view words, std::size_t room) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t at = 0;
  while (at < words.size()) {
    while (at < words.size() && (words[at] == ' ' || words[at] == '\n')) ++at;
    std::size_t end = at;
    while (end < words.size() && words[end] != ' ' && words[end] != '\n') ++end;
    if (end == at) break;
    const std::string word = harmless(words.substr(at, end - at));
    const std::size_t used = text::count_code_points(line);
    if (!line.empty() && used + 1 + text::count_code_points(word) > room) {
      lines.push_back(std::move(line));
      line.clear();
    }
    if (!line.empty()) line += ' ';
    line += word;
    at = end;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace

void Page::note(SheetItem::Kind kind, std::string_view label, std::string_view words,
                std::string_view note) {
  items_.push_back({kind, std::string(label), std::string(words), std::string(note)});
}

void Page::heading(std::string_view words) {
  gap();
  note(SheetItem::Kind::heading, {}, words);
  text_ += harmless(words) + "\n";
}

void Page::new_page(std::string_view words) {
  gap();
  note(SheetItem::Kind::heading, "page", words);
  text_ += std::string(width, '-') + "\n" + harmless(words) + "\n";
}

void Page::frame(std::string_view words, const std::vector<std::string>& reasons) {
  const std::string bar(width, '=');
  text_ += bar + "\n";
  heading(words);
  for (const std::string& reason : reasons) paragraph(reason, 2);
  text_ += bar + "\n";
}

void Page::paragraph(std::string_view words, std::size_t indent) {
  note(SheetItem::Kind::paragraph, {}, words);
  for (const std::string& line : folded(words, width - indent)) {
    text_.append(indent, ' ');
    text_ += line + "\n";
  }
}

void Page::entry(std::string_view label, std::string_view words) {
  note(SheetItem::Kind::entry, label, words);
  const std::size_t start = std::max(label_width, label.size() + 4);
  bool first = true;
  for (const std::string& line : folded(words, width - start)) {
    if (first) {
      text_ += "  " + std::string(label);
      text_.append(start - 2 - label.size(), ' ');
    } else {
      text_.append(start, ' ');
    }
    text_ += line + "\n";
    first = false;
  }
}

void Page::weighing(std::string_view name, std::string_view mass, std::string_view remark) {
  note(SheetItem::Kind::weighing, name, mass, remark);
  std::string line = "  [ ] " + padded(harmless(name), name_width, false) +
                     padded(harmless(mass), mass_width, true);
  if (!remark.empty()) line += "  " + harmless(remark);
  // where there is room: the sheet is the record of the batch
  constexpr std::string_view to_write = "  ________  lot ________";
  const std::size_t used = text::count_code_points(line);
  if (used + to_write.size() <= width) {
    line = padded(std::move(line), width - to_write.size(), false) + std::string(to_write);
    text_ += line + "\n";
  } else {
    text_ += line + "\n" + std::string(width - to_write.size(), ' ') + std::string(to_write) + "\n";
  }
}

void Page::total(std::string_view mass) {
  note(SheetItem::Kind::total, {}, mass);
  text_ += "      " + padded("together", name_width, false) +
           padded(harmless(mass), mass_width, true) + "\n";
}

void Page::gap() {
  if (!items_.empty() && items_.back().kind != SheetItem::Kind::gap) {
    note(SheetItem::Kind::gap, {}, {});
  }
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += "\n";
}

}  // namespace sudsmark::wording
