#include <sudsmark/notebook.h>

#include <algorithm>
#include <charconv>
#include <sstream>

#include "rules/ruleset.h"

namespace sudsmark {
namespace {

/// What is found in the last box is known, and leaves the notebook.
constexpr unsigned last_box = 6;

std::chrono::days wait_in(unsigned box) {
  return std::chrono::days(1U << (box - 1));
}

template <class Number>
bool read_whole(std::string_view text, Number& into) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), into);
  return error == std::errc() && end == text.data() + text.size();
}

std::optional<std::chrono::year_month_day> read_day(std::string_view text) {
  int year = 0;
  unsigned month = 0;
  unsigned day = 0;
  constexpr std::size_t length = 10;
  const bool shaped = text.size() == length && text[4] == '-' && text[7] == '-' &&
                      read_whole(text.substr(0, 4), year) && read_whole(text.substr(5, 2), month) &&
                      read_whole(text.substr(8, 2), day);
  const std::chrono::year_month_day out{std::chrono::year(year), std::chrono::month(month),
                                        std::chrono::day(day)};
  if (!shaped || !out.ok()) return std::nullopt;
  return out;
}

}  // namespace

Result<Notebook> Notebook::read(std::string_view path, std::string_view text) {
  Result<Notebook> out;
  Notebook notebook;
  std::istringstream lines{std::string(text)};
  std::string line;
  for (std::uint32_t number = 1; std::getline(lines, line); ++number) {
    std::istringstream words(line);
    std::vector<std::string> parts;
    for (std::string word; words >> word;) parts.push_back(word);
    if (parts.empty() || parts.front().starts_with('#')) continue;
    Entry entry;
    constexpr std::size_t size = 5;
    const bool shaped = parts.size() == size && parts[1] == "box" && parts[3] == "due";
    const auto due = shaped ? read_day(parts[4]) : std::nullopt;
    if (!due || !read_whole(parts[2], entry.box) || entry.box == 0 || entry.box > last_box) {
      Problem& problem = out.problems.emplace_back();
      problem.file = path;
      problem.line = number;
      problem.column = 1;
      problem.message = "this is no line of a notebook: expected 'RULE box 1 due 2026-12-01'";
      continue;
    }
    entry.rule = parts.front();
    entry.due = *due;
    notebook.entries_.push_back(std::move(entry));
  }
  if (out.problems.empty()) out.value = std::move(notebook);
  return out;
}

std::vector<std::string> Notebook::due(std::chrono::year_month_day on) const {
  std::vector<Entry> list;
  std::copy_if(entries_.begin(), entries_.end(), std::back_inserter(list),
               [&](const Entry& entry) { return entry.due <= on; });
  std::stable_sort(list.begin(), list.end(),
                   [](const Entry& a, const Entry& b) { return a.due < b.due; });
  std::vector<std::string> out;
  for (const Entry& entry : list) out.push_back(entry.rule);
  return out;
}

void Notebook::note(const std::string& rule, bool found, std::chrono::year_month_day on) {
  auto at = std::find_if(entries_.begin(), entries_.end(),
                         [&](const Entry& entry) { return entry.rule == rule; });
  if (at == entries_.end()) {
    if (found) return;
    at = entries_.insert(entries_.end(), Entry{rule, 1, on});
  } else if (!found) {
    at->box = 1;
  } else if (at->box == last_box) {
    entries_.erase(at);
    return;
  } else {
    ++at->box;
  }
  at->due = std::chrono::sys_days(on) + wait_in(at->box);
}

std::string Notebook::text() const {
  std::string out = "# What to see again: one line a rule. Written by sudsmark drill.\n";
  for (const Entry& entry : entries_) {
    out += entry.rule + "  box " + std::to_string(entry.box) + "  due " +
           rules::day_words(entry.due) + "\n";
  }
  return out;
}

}  // namespace sudsmark
