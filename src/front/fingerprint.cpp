#include "front/fingerprint.h"

#include <cstdint>
#include <unordered_map>

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

/// The fingerprint of a key's hash; of `before` that are alike, the next.
std::string numbered(std::uint64_t key, int before) {
  return hex(before > 0 ? text::hash_of("\n" + std::to_string(before), key) : key);
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

std::string fingerprint_of(std::string_view key, int before) {
  return numbered(text::hash_of(key), before);
}

void add_fingerprints(std::vector<Finding>& findings) {
  std::unordered_map<std::uint64_t, int> seen;  // by the hash of the key
  std::unordered_map<std::string_view, std::string> lines;
  for (Finding& finding : findings) {
    if (finding.kind == Kind::pass || finding.kind == Kind::not_applicable) continue;
    const auto [line, first] = lines.try_emplace(finding.line_text);
    if (first) line->second = line_without_figures(finding.line_text);
    // a line feed is in none of the parts
    std::uint64_t key = text::hash_of(finding.rule);
    for (const std::string_view part :
         {std::string_view(finding.subject_kind), std::string_view(finding.subject),
          std::string_view(line->second)}) {
      key = text::hash_of(part, text::hash_of("\n", key));
    }
    finding.fingerprint = numbered(key, seen[key]++);
  }
}

}  // namespace sudsmark::front
