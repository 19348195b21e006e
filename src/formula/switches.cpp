#include "formula/switches.h"

#include <string_view>
#include <utility>
#include <variant>

#include "formula/statements.h"

namespace sudsmark::formula {
namespace {

template <typename Value, typename Leave>
void visit(std::optional<Value>& field, const Leave& leave) {
  if (field && leave(place_of(*field))) field.reset();
}

template <typename Leave>
void visit(std::vector<Allow>& allows, const Leave& leave) {
  std::vector<Allow> left;
  for (Allow& allow : allows) {
    if (!leave(allow.place)) left.push_back(std::move(allow));
  }
  allows = std::move(left);
}

/// Asks of each statement whether it is to be left out, and leaves it out.
template <typename Leave>
void visit_statements(Statements& statements, const Leave& leave) {
  each_field<Statements>([&](const auto& row) {
    using Field = typename std::remove_cvref_t<decltype(row)>::FieldType;
    if constexpr (changes_verdicts<Field>) visit(statements.*(row.field), leave);
  });
}

}  // namespace

std::string written_line(const text::Sources& sources, const Span& place) {
  if (!place.somewhere()) return {};
  std::string_view line = sources[place.file].line(sources.position(place).line);
  bool quoted = false;
  for (std::size_t index = 0; index < line.size(); ++index) {
    if (quoted && line[index] == '\\') {
      ++index;
    } else if (line[index] == '"') {
      quoted = !quoted;
    } else if (line[index] == '#' && !quoted) {
      line = line.substr(0, index);
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
  std::size_t index = 0;
  std::vector<Edit> edits;
  for (Edit& edit : tweak.edits) {
    if (on[index++]) edits.push_back(std::move(edit));
  }
  tweak.edits = std::move(edits);
  visit_statements(tweak.statements, [&](const Span& /*place*/) { return !on[index++]; });
}

}  // namespace sudsmark::formula
