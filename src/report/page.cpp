#include "report/page.h"

#include <algorithm>
#include <vector>

#include "report/words.h"
#include "text/utf8.h"

namespace sudsmark::report {
namespace {

constexpr std::size_t width = 88;
constexpr std::size_t label_width = 16;

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

void Page::heading(std::string_view words) {
  gap();
  text_ += harmless(words) + "\n";
}

void Page::paragraph(std::string_view words, std::size_t indent) {
  for (const std::string& line : folded(words, width - indent)) {
    text_.append(indent, ' ');
    text_ += line + "\n";
  }
}

void Page::entry(std::string_view label, std::string_view words) {
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

void Page::line(std::string_view words) {
  text_ += harmless(words) + "\n";
}

void Page::gap() {
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += "\n";
}

}  // namespace sudsmark::report
