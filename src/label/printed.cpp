#include "label/printed.h"

#include <algorithm>
#include <cctype>

#include "text/name.h"

namespace sudsmark::label {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

void add_meaning(std::string_view words, std::vector<std::string>& meanings) {
  std::string folded = text::fold(words);
  while (!folded.empty() && (folded.back() == '*' || folded.back() == '.')) folded.pop_back();
  folded = text::fold(folded);
  if (!folded.empty() && std::find(meanings.begin(), meanings.end(), folded) == meanings.end()) {
    meanings.push_back(std::move(folded));
  }
}

void erase_all(std::string& text, std::string_view what) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at)) {
    text.erase(at, what.size());
  }
}

/// "Zea Mays (Corn) Starch", as the United States print it, without the English name.
std::string without_brackets(std::string_view item) {
  std::string out;
  int depth = 0;
  for (const char c : item) {
    if (c == '(' || c == '[') ++depth;
    if (depth == 0) out += c;
    if ((c == ')' || c == ']') && depth > 0) --depth;
  }
  return out;
}

/// The name as a whole, without what is bracketed, what stands before, in and after brackets or
/// between strokes, and a colour by its short name.
std::vector<std::string> meanings_of(std::string_view item) {
  std::vector<std::string> out;
  add_meaning(item, out);
  add_meaning(without_brackets(item), out);
  add_meaning(short_colour(text::fold(item)), out);
  std::size_t begin = 0;
  for (std::size_t at = 0; at <= item.size(); ++at) {
    constexpr std::string_view parting = "()[]/";
    if (at < item.size() && parting.find(item[at]) == std::string_view::npos) continue;
    add_meaning(item.substr(begin, at - begin), out);
    begin = at + 1;
  }
  return out;
}

void add_item(std::string_view list, std::size_t begin, std::size_t end,
              std::vector<PrintedItem>& out) {
  const auto space = [](char c) { return c == ' ' || c == '\t'; };
  while (begin < end && space(list[begin])) ++begin;
  while (end > begin && (space(list[end - 1]) || list[end - 1] == '.')) --end;
  if (begin == end) return;
  const std::string_view item = list.substr(begin, end - begin);
  out.push_back({std::string(item), begin, meanings_of(item)});
}

}  // namespace

std::vector<PrintedItem> printed_items(std::string_view list) {
  std::vector<PrintedItem> out;
  std::size_t begin = 0;
  const std::size_t colon = list.find(':');
  if (colon != std::string_view::npos && text::fold(list.substr(0, colon)) == "ingredients") {
    begin = colon + 1;
  }
  int depth = 0;
  for (std::size_t at = begin; at < list.size(); ++at) {
    const char c = list[at];
    if (c == '(' || c == '[') ++depth;
    if ((c == ')' || c == ']') && depth > 0) --depth;
    if ((c != ',' && c != ';') || depth > 0) continue;
    if (at > 0 && at + 1 < list.size() && is_digit(list[at - 1]) && is_digit(list[at + 1])) {
      continue;
    }
    add_item(list, begin, at, out);
    begin = at + 1;
  }
  add_item(list, begin, list.size(), out);
  return out;
}

std::string short_colour(std::string folded) {
  for (const std::string_view word : {"fd&c ", "d&c ", "no. ", "aluminum "}) {
    erase_all(folded, word);
  }
  return folded;
}

std::string plain_words(std::string_view text) {
  std::string out;
  bool gap = false;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80 && (std::isalnum(byte) != 0 || c == '%')) {
      if (gap && !out.empty()) out += ' ';
      gap = false;
      out += static_cast<char>(std::tolower(byte));
    } else if (c != '\'') {
      gap = true;
    }
  }
  return out;
}

}  // namespace sudsmark::label
