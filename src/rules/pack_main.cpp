// sudsmark_pack FOLDER SOURCE: reads the rulesets of a folder, and writes a C++ source that holds
// them packed. A mistake in any of them ends the build with file, line and column.
#include <cstdio>
#include <string>
#include <vector>

#include "rules/layer.h"
#include "rules/pack.h"
#include "rules/packed.h"
#include "text/diagnostic.h"
#include "text/files.h"
#include "text/source.h"
#include "text/written_file.h"
#include "text/yaml.h"

namespace {

using namespace sudsmark;

void say(const std::string& line) {
  std::fprintf(stderr, "%s\n", line.c_str());
}

void report(const text::Sources& sources, const text::Diagnostics& diagnostics) {
  for (const text::Diagnostic& one : diagnostics.in_order()) {
    std::string place;
    if (!one.places.empty() && one.places.front().somewhere()) {
      const text::Position at = sources.position(one.places.front());
      place = std::string(sources.path(one.places.front())) + ":" + std::to_string(at.line) + ":" +
              std::to_string(at.column) + ": ";
    }
    say(place + "error: " + text::sentence(one));
  }
}

/// String literals of 32 bytes a line, everything but letters and digits escaped.
std::string literals(const std::string& bytes) {
  std::string out;
  constexpr std::size_t a_line = 32;
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    if (at % a_line == 0) out += at == 0 ? "    \"" : "\"\n    \"";
    const auto byte = static_cast<unsigned char>(bytes[at]);
    const bool plain = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte == ' ';
    if (plain) {
      out += bytes[at];
    } else {
      out += '\\';
      out += static_cast<char>('0' + (byte >> 6U));
      out += static_cast<char>('0' + ((byte >> 3U) & 7U));
      out += static_cast<char>('0' + (byte & 7U));
    }
  }
  return out + "\"";
}

std::string source_of(const std::string& bytes) {
  return "// Written by sudsmark_pack out of the rulesets.\n"
         "#include \"rules/packed.h\"\n\n"
         "namespace sudsmark::rules {\n"
         "namespace {\n\n"
         "constexpr char bytes[] =\n" +
         literals(bytes) +
         ";\n\n"
         "}  // namespace\n\n"
         "std::string_view packed_rulesets() { return {bytes, sizeof bytes - 1}; }\n\n"
         "}  // namespace sudsmark::rules\n";
}

}  // namespace

// The packer is built of the same rooms as the program, before there is anything packed.
std::string_view sudsmark::rules::packed_rulesets() {
  return {};
}

int main(int count, char** words) {
  if (count != 3) {
    say("usage: sudsmark_pack FOLDER SOURCE");
    return 2;
  }
  const text::FilesBelow below = text::files_below(words[1], ".yaml");
  if (!below.unread.empty()) {
    say(below.unread.front().path + ": " + below.unread.front().reason);
    return 2;
  }
  text::Sources sources;
  std::vector<text::FileIndex> files;
  for (const std::string& path : below.files) {
    text::FileBytes read = text::read_file(path, text::most_yaml_bytes);
    if (!read.bytes) {
      say(path + ": " + read.reason);
      return 2;
    }
    files.push_back(sources.add(path, std::move(*read.bytes)));
  }
  text::Diagnostics diagnostics;
  const rules::Rulebook book = rules::add_layer({}, sources, files, true, diagnostics);
  if (!diagnostics.empty()) {
    report(sources, diagnostics);
    return 1;
  }
  const std::string bytes = catalogue::to_bytes(book.catalogue, book.ruleset);
  rules::Rulebook again;
  if (!catalogue::from_bytes(bytes, again.catalogue, again.ruleset) ||
      !catalogue::consistent(again.catalogue) ||
      !rules::consistent(again.ruleset, again.catalogue)) {
    say("what was packed does not come out as it went in");
    return 1;
  }
  if (const auto wrong = text::write_file(words[2], source_of(bytes))) {
    say(*wrong);
    return 2;
  }
  return 0;
}
