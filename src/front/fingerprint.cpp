#include "front/fingerprint.h"

#include <cstdint>
#include <map>

#include "text/hash.h"
#include "text/utf8.h"

namespace sudsmark::front {
namespace {

std::string hex(std::uint64_t value) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out(16, '0');
  for (std::size_t at = out.size(); at-- > 0; value >>= 4U) out[at] = digits[value & 15U];
  return out;
}

}  // namespace

std::string bare_line(std::string_view line) {
  if (text::starts_with_mark(line)) line.remove_prefix(text::mark_size);
  std::string out;
  bool quoted = false;
  bool escaped = false;
  bool gap = false;
  for (const char c : line) {
    if (c == '#' && !quoted) break;
    if (c == '"' && !escaped) quoted = !quoted;
    escaped = quoted && c == '\\' && !escaped;
    if (c == ' ' || c == '\t' || c == '\r') {
      gap = !out.empty();
      continue;
    }
    if (gap) out += ' ';
    gap = false;
    out += c;
  }
  return out;
}

std::string line_without_figures(std::string_view line) {
  std::string out;
  bool figure = false;
  for (const char c : bare_line(line)) {
    const bool digit = c >= '0' && c <= '9';
    // a point or a comma belongs to the figure that it stands in
    if (digit || (figure && (c == '.' || c == ','))) {
      if (!figure) out += '#';
      figure = true;
      continue;
    }
    figure = false;
    out += c;
  }
  return out;
}

std::string fingerprint_of(std::string key, int before) {
  if (before > 0) key += "\n" + std::to_string(before);
  return hex(text::hash_of(key));
}

void add_fingerprints(std::vector<Finding>& findings) {
  std::map<std::string, int> seen;
  for (Finding& finding : findings) {
    if (finding.kind == Kind::pass || finding.kind == Kind::not_applicable) continue;
    // a line feed is in none of the parts
    std::string key = finding.rule + "\n" + finding.subject_kind + "\n" + finding.subject + "\n" +
                      line_without_figures(finding.line_text);
    const int before = seen[key]++;
    finding.fingerprint = fingerprint_of(std::move(key), before);
  }
}

}  // namespace sudsmark::front
