#include "report/maker_words.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "front/fingerprint.h"
#include "quantity/unit.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

bool small(char c) {
  return c >= 'a' && c <= 'z';
}
bool capital(char c) {
  return c >= 'A' && c <= 'Z';
}

/// Whether a word belongs to an amount: "24", "%", "per", "q.s.".
bool of_amount(std::string_view word) {
  constexpr std::array<std::string_view, 7> others{"-", "to", "per", "about", "up", "q.s.", "of"};
  if (word.empty() || (word[0] >= '0' && word[0] <= '9')) return true;
  if (std::find(others.begin(), others.end(), word) != others.end()) return true;
  return quantity::find_unit(word).has_value();
}

/// Where the first sentence ends, its point left out.
std::size_t first_sentence(std::string_view words) {
  for (std::size_t at = words.find(". "); at != std::string_view::npos;
       at = words.find(". ", at + 1)) {
    const bool number = at >= 2 && words.substr(at - 2, 2) == "No";
    if (!number && at + 2 < words.size() && !small(words[at + 2])) return at;
  }
  return words.ends_with('.') ? words.size() - 1 : words.size();
}

}  // namespace

std::string maker_line(const Finding& finding) {
  return wording::harmless(front::bare_line(finding.line_text));
}

std::string maker_name(const Finding& finding) {
  const std::string line = maker_line(finding);
  std::string_view rest = line;
  while (!rest.empty() && rest.front() != '"') {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (!of_amount(rest.substr(0, end))) break;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  if (rest.starts_with('"')) {
    const std::size_t end = rest.find('"', 1);
    if (end != std::string_view::npos) rest = rest.substr(1, end - 1);
  } else {
    rest = rest.substr(0, rest.find(','));
  }
  // a line without an amount is none of a material
  const bool amount = rest.size() < line.size() && !rest.empty();
  return amount ? std::string(rest) : wording::harmless(finding.subject);
}

std::string remedy_in_short(const std::string& remedy) {
  std::string out = remedy.substr(0, first_sentence(remedy));
  if (out.size() > 1 && capital(out[0]) && (small(out[1]) || out[1] == ' ')) {
    out[0] = static_cast<char>(out[0] - 'A' + 'a');
  }
  return out;
}

}  // namespace sudsmark::report
