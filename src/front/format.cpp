// A card in tidy columns: each line is cut where the parser saw an amount or the words of a
// statement end, and set anew. What the parser makes of the outcome is held against what it made of
// the text, so that no card ever changes its meaning.
#include <sudsmark/format.h>

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/lines.h"
#include "formula/parse.h"
#include "formula/print.h"
#include "formula/scan.h"
#include "formula/words.h"
#include "front/problems.h"
#include "text/utf8.h"

namespace sudsmark {
namespace {

constexpr std::size_t indent = 2;
constexpr std::size_t head_width = 10;  ///< a longer head is followed by one blank
constexpr std::size_t farthest = 60;    ///< the last column to which a remark is moved

/// A line in its parts; all are empty in a line between paragraphs.
struct CardLine {
  bool opens = false;  ///< a section, or an include: it stands at the margin
  std::string head;    ///< an amount, or the words of a statement
  std::string rest;
  std::string remark;  ///< with its '#'
};

/// Where amounts end, by where their line begins.
using Ends = std::map<std::uint32_t, std::uint32_t>;

Ends ends_of_amounts(const formula::Document& document) {
  Ends ends;
  const auto add = [&](const auto& sections) {
    for (const auto& section : sections) {
      for (const formula::Line& line : section.lines)
        ends[line.place.begin] = line.amount.place.end;
    }
  };
  add(document.phases);
  add(document.premixes);
  add(document.portions);
  for (const formula::Fragrance& fragrance : document.fragrances) {
    for (const formula::Constituent& one : fragrance.constituents) {
      ends[one.place.begin] = one.name.place.begin;
    }
  }
  return ends;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && formula::is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && formula::is_blank(text.back())) text.remove_suffix(1);
  return text;
}

/// "20  -  22 %" as "20 - 22 %".
std::string single_spaced(std::string_view text) {
  std::string out;
  for (const char c : trimmed(text)) {
    if (!formula::is_blank(c)) {
      out += c;
    } else if (out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

void pad(std::string& text, std::size_t to) {
  const std::size_t is = text::count_code_points(text);
  text.append(is < to ? to - is : 1, ' ');
}

class Card {
 public:
  Card(std::string_view text, const formula::Document& document)
      : ends_(ends_of_amounts(document)), reading_(document.file, text), begin_(text.data()) {
    formula::Iterator at = text.data();
    const formula::Iterator last = at + text.size();
    if (text::starts_with_mark(text)) at += text::mark_size;
    while (at != last) read(formula::next_line(at, last));
    while (!lines_.empty() && blank(lines_.back())) lines_.pop_back();
  }

  [[nodiscard]] std::string text() const {
    std::string out;
    for (std::size_t first = 0; first < lines_.size();) {
      std::size_t last = first + 1;
      while (last < lines_.size() && !lines_[last].opens) ++last;
      write(first, last, out);
      first = last;
    }
    return out;
  }

 private:
  static bool blank(const CardLine& line) {
    return line.head.empty() && line.rest.empty() && line.remark.empty();
  }

  void read(formula::Rest whole) {
    formula::Rest said = whole;
    if (!trim_line(said, reading_)) return;  // a text without errors has no such line
    CardLine line;
    line.remark = trimmed({said.last, static_cast<std::size_t>(whole.last - said.last)});
    const std::string_view word = formula::first_word(said);
    const auto section = formula::section_of(word);
    line.opens = section || word == "include";
    if (section) section_ = *section;
    cut(said, word, line);
    if (!blank(line) || (!lines_.empty() && !blank(lines_.back()))) lines_.push_back(line);
  }

  void cut(formula::Rest said, std::string_view word, CardLine& line) const {
    formula::Iterator end = said.first;
    const auto amount = ends_.find(static_cast<std::uint32_t>(said.first - begin_));
    if (amount != ends_.end()) {
      end = begin_ + amount->second;
    } else if (!line.opens && !word.empty()) {
      end = end_of_statement(said, word);
    }
    line.head = single_spaced({said.first, static_cast<std::size_t>(end - said.first)});
    line.rest = trimmed({end, static_cast<std::size_t>(said.last - end)});
  }

  [[nodiscard]] formula::Iterator end_of_statement(formula::Rest said,
                                                   std::string_view word) const {
    const formula::Iterator behind = said.first + word.size();
    const formula::Iterator next = formula::skip_blanks(behind, said.last);
    const std::string_view second = formula::first_word({next, said.last});
    const auto* statement = formula::find_statement(section_, word, second);
    if (statement == nullptr) return said.first;
    formula::Iterator end = behind;
    for (std::size_t at = word.size(); at < statement->full.size();) {
      const std::size_t begin = at + 1;
      at = std::min(statement->full.find(' ', begin), statement->full.size());
      end = formula::skip_blanks(end, said.last) + (at - begin);
    }
    return end;
  }

  static std::string set(const CardLine& line) {
    std::string out(line.opens ? 0 : indent, ' ');
    out += line.head;
    if (!line.head.empty() && !line.rest.empty()) pad(out, indent + head_width);
    return out + line.rest;
  }

  /// The lines of one section. What stands before the next heading and is remarks alone is about
  /// that, and stands at the margin.
  void write(std::size_t first, std::size_t last, std::string& out) const {
    std::size_t column = 0;
    std::size_t said = first;  // just past the last line that says something
    for (std::size_t at = first; at < last; ++at) {
      const CardLine& line = lines_[at];
      if (line.head.empty() && line.rest.empty()) continue;
      said = at + 1;
      if (line.remark.empty() || line.opens) continue;
      if (const std::size_t is = text::count_code_points(set(line)); is <= farthest)
        column = std::max(column, is);
    }
    for (std::size_t at = first; at < last; ++at) {
      const CardLine& line = lines_[at];
      std::string row;
      if (!line.head.empty() || !line.rest.empty()) {
        row = set(line);
        if (!line.remark.empty()) {
          pad(row, line.opens ? 0 : column + 1);
          row += ' ';
        }
      } else if (!line.remark.empty() && at < said) {
        row = std::string(indent, ' ');
      }
      out += row + line.remark + "\n";
    }
  }

  Ends ends_;
  formula::Reading reading_;
  formula::Iterator begin_;
  formula::Section section_ = formula::Section::none;
  std::vector<CardLine> lines_;
};

}  // namespace

Result<std::string> formatted(const FormulaText& formula) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const text::FileIndex file = sources.add(formula.path, formula.text);
  const formula::Document document = formula::parse(sources, file, diagnostics);
  Result<std::string> out;
  front::add_problems(diagnostics, sources, out.problems);
  if (!out.problems.empty()) return out;
  std::string tidy = Card(sources[file].text(), document).text();
  const formula::Document again =
      formula::parse(sources, sources.add(formula.path, tidy), diagnostics);
  if (diagnostics.empty() && formula::print(again) == formula::print(document)) {
    out.value = std::move(tidy);
  } else {
    Problem changed;
    changed.file = formula.path;
    changed.message = "cannot be set anew without another meaning";
    out.problems.push_back(std::move(changed));
  }
  return out;
}

}  // namespace sudsmark
