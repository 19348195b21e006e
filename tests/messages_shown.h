// Whether every message of a room is shown by a test: the messages out of the room's header, held
// against the lines that tests expect ("3:7 unknown-key 'sauce' is not …").
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "case_files.h"

namespace sudsmark::testing {

/// A message as its header declares it.
struct Declared {
  std::string name;  ///< of the constant
  std::string id;
  std::string pattern;
};

/// The texts in quotes that stand in a piece of C++, unescaped.
inline std::vector<std::string> quoted_texts(std::string_view code) {
  std::vector<std::string> out;
  bool inside = false;
  for (std::size_t index = 0; index < code.size(); ++index) {
    if (code[index] == '"') {
      inside = !inside;
      if (inside) out.emplace_back();
    } else if (inside) {
      if (code[index] == '\\') ++index;
      out.back() += code[index];
    }
  }
  return out;
}

/// All messages of a header `messages.h`.
inline std::vector<Declared> messages_of(const std::filesystem::path& header) {
  const std::string code = file_contents(header);
  constexpr std::string_view opens = "constexpr Message ";
  std::vector<Declared> out;
  for (std::size_t at = code.find(opens); at != std::string::npos; at = code.find(opens, at)) {
    at += opens.size();
    const std::size_t brace = code.find('{', at);
    const std::size_t end = code.find(";\n", brace);
    const std::vector<std::string> texts = quoted_texts(code.substr(brace, end - brace));
    REQUIRE(texts.size() >= 2);
    Declared one{code.substr(at, brace - at), texts.front(), {}};
    for (std::size_t text = 1; text < texts.size(); ++text) one.pattern += texts[text];
    out.push_back(std::move(one));
  }
  return out;
}

/// Whether an expected line says a message, whatever fills its holes.
inline bool shows(std::string_view line, const Declared& message) {
  const std::size_t id = line.find(' ' + message.id + ' ');
  if (id == std::string_view::npos) return false;
  std::string_view rest = line.substr(id + message.id.size() + 2);
  std::string_view pattern = message.pattern;
  bool first = true;
  while (true) {
    std::size_t hole = 0;
    const auto is_hole = [&] {
      return pattern[hole] == '{' && hole + 2 < pattern.size() && pattern[hole + 2] == '}';
    };
    while (hole < pattern.size() && !is_hole()) ++hole;
    const std::string_view words = pattern.substr(0, hole);
    const std::size_t found = rest.find(words);
    if (found == std::string_view::npos || (first && found != 0)) return false;
    rest.remove_prefix(found + words.size());
    if (hole == pattern.size())
      return !words.empty() ? rest.empty() || rest.starts_with("; see ") : true;
    pattern.remove_prefix(hole + 3);
    first = false;
  }
}

/// The lines of all expectations of a folder.
inline std::string expected_lines(const std::string& folder) {
  std::string out;
  for (const auto& path : case_files(folder, ".expected")) out += file_contents(path) + "\n";
  return out;
}

/// Asks for a case for each message that no line shows.
inline void check_all_shown(const std::filesystem::path& header, std::string_view lines,
                            const std::vector<std::string>& exempt = {}) {
  const std::vector<Declared> all = messages_of(header);
  CHECK(all.size() > 10);
  for (const Declared& message : all) {
    bool shown = std::find(exempt.begin(), exempt.end(), message.name) != exempt.end();
    for (std::string_view left = lines; !shown && !left.empty();) {
      const std::size_t end = std::min(left.find('\n'), left.size());
      shown = shows(left.substr(0, end), message);
      left.remove_prefix(std::min(end + 1, left.size()));
    }
    CHECK_MESSAGE(shown, "no test shows ", message.name, ": ", message.pattern);
  }
}

}  // namespace sudsmark::testing
