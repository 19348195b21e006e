#include "formula/switches.h"

#include <string_view>
#include <utility>
#include <variant>

namespace sudsmark::formula {
namespace {

/// Asks of each statement whether it is to be left out, and leaves it out.
template <typename Leave>
void visit_statements(Statements& statements, const Leave& leave) {
  each_statement([&](std::string_view /*keyword*/, auto member) {
    auto& field = statements.*member;
    if (field && leave(place_of(*field))) field.reset();
  });
  if (!statements.markets.empty() && leave(statements.markets_place)) statements.markets.clear();
  std::vector<Allow> allows;
  for (Allow& allow : statements.allows) {
    if (!leave(allow.place)) allows.push_back(std::move(allow));
  }
  statements.allows = std::move(allows);
}

}  // namespace

std::string written_line(const text::Sources& sources, const Span& place) {
  if (!place.somewhere()) return {};
  std::string_view line = sources[place.file].line(sources.position(place).line);
  bool quoted = false;
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (quoted && line[at] == '\\') {
      ++at;
    } else if (line[at] == '"') {
      quoted = !quoted;
    } else if (line[at] == '#' && !quoted) {
      line = line.substr(0, at);
      break;
    }
  }
  constexpr std::string_view blanks = " \t\r";
  const std::size_t first = line.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  std::string out;
  for (const char c : line.substr(first, line.find_last_not_of(blanks) - first + 1)) {
    const bool blank = c == ' ' || c == '\t';
    if (!blank) {
      out += c;
    } else if (out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

std::vector<Switch> switches_of(const Tweak& tweak, const text::Sources& sources) {
  std::vector<Switch> out;
  const auto add = [&](const Span& place) { out.push_back({written_line(sources, place), place}); };
  for (const Edit& edit : tweak.edits) {
    std::visit([&](const auto& one) { add(one.place); }, edit);
  }
  Statements statements = tweak.statements;
  visit_statements(statements, [&](const Span& place) {
    add(place);
    return false;
  });
  return out;
}

void leave_only(const std::vector<bool>& on, Tweak& tweak) {
  std::size_t at = 0;
  std::vector<Edit> edits;
  for (Edit& edit : tweak.edits) {
    if (on[at++]) edits.push_back(std::move(edit));
  }
  tweak.edits = std::move(edits);
  visit_statements(tweak.statements, [&](const Span& /*place*/) { return !on[at++]; });
}

}  // namespace sudsmark::formula
