// The reference page of the rule language, run: its whole files are loaded and their examples
// verified, each of its expressions and messages is asked of a formula that has one of everything,
// and each word that the language knows has an example.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "proof/verified.h"
#include "rules/words.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// A block of the page between fences.
struct Block {
  std::string kind;
  std::vector<std::string> lines;
};

std::vector<Block> blocks() {
  std::istringstream page(file_contents(source_dir() / "src/rules/expressions.md"));
  std::vector<Block> out;
  bool inside = false;
  for (std::string line; std::getline(page, line);) {
    if (line.starts_with("```")) {
      inside = !inside;
      if (inside) out.push_back({line.substr(3), {}});
    } else if (inside) {
      out.back().lines.push_back(line);
    }
  }
  return out;
}

std::string in_quotes(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\\\"") : std::string(1, c);
  return out + "\"";
}

constexpr std::string_view everything =
    "formula \"everything\"\n product bubble bar\n forming pressed\n users adults\n market GB\n"
    " water soft\n batch 2 kg\n"
    "phase \"all\"\n 3 % sweet oil\n 1 % meadow oil\n 10 % foam powder\n 1 % hard butter\n"
    " 1 % binder 80\n 0.1 % sky lake\n 1 % borax\n q.s. bicarb\n"
    "portion \"one\", 50 %\n 1 g per kg sky lake\nportion \"two\", 50 %\n"
    "premix \"dry bag\" makes 1 kg as bag\n 600 g bicarb\n 400 g foam powder\n"
    "workshop \"room\"\n extraction yes\n mask FFP2\n"
    "task \"tip\"\n handles 1 bag \"dry bag\"\n takes 12 min\n times 4 per day\n in 20 l\n";

/// Asks a rule of these keys, and holds its words against what it came to.
void run(const std::string& keys, bool both_sides) {
  Workbench bench(rule_file(keys));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const blend::Blend blend = bench.mix(everything);
  rules::EvaluateOptions options;
  options.on = test_day;
  options.base = both_sides ? &blend : nullptr;
  const Asked found = ask(bench, blend, options);
  REQUIRE_FALSE(found.verdicts.empty());
  const bool applies = std::any_of(
      found.verdicts.begin(), found.verdicts.end(),
      [](const rules::Verdict& verdict) { return verdict.kind != sudsmark::Kind::not_applicable; });
  CHECK_MESSAGE(applies, keys);
}

bool is_word(std::string_view text, std::string_view word) {
  const auto inner = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
  };
  for (std::size_t at = text.find(word); at != std::string_view::npos;
       at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !inner(text[at - 1])) && (end == text.size() || !inner(text[end]))) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("the expressions and messages of the reference page") {
  int asked = 0;
  for (const Block& block : blocks()) {
    if (block.kind != "expressions" && block.kind != "messages") continue;
    std::string each;
    bool both_sides = false;
    for (const std::string& line : block.lines) {
      if (line.starts_with("each: ")) {
        each = "    " + line + "\n";
      } else if (line.starts_with("sides: ")) {
        both_sides = true;
      } else if (block.kind == "expressions") {
        run(each + "    expect: " + in_quotes(line) + "\n    message: m\n", both_sides);
      } else {
        run(each + "    expect: oils > 99 %\n    message: " + in_quotes(line) + "\n", false);
      }
      ++asked;
    }
  }
  CHECK(asked > 80);
}

TEST_CASE("the files of the reference page") {
  int files = 0;
  for (const Block& block : blocks()) {
    if (block.kind != "yaml") continue;
    std::string text;
    for (const std::string& line : block.lines) text += line + "\n";
    Workbench bench(text);
    CHECK_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const auto found = verify(bench);
    for (const auto& finding : found.findings) CHECK_MESSAGE(false, finding.message);
    ++files;
  }
  CHECK(files >= 2);
}

TEST_CASE("every word of the language has an example on the reference page") {
  std::string examples;
  for (const Block& block : blocks()) {
    for (const std::string& line : block.lines) examples += line + "\n";
  }
  std::vector<std::string_view> words;
  for (const auto& word : rules::stated_words()) words.push_back(word.name);
  for (const auto& word : rules::fields()) words.push_back(word.name);
  for (const auto& word : rules::marks()) words.push_back(word.name);
  for (const auto& word : rules::flags()) words.push_back(word.name);
  for (const auto& word : rules::texts()) words.push_back(word.name);
  for (const auto& word : rules::functions()) words.push_back(word);
  for (const std::string_view word :
       {"and", "or", "not", "in", "is", "if", "then", "else", "between", "per", "listed in"}) {
    words.push_back(word);
  }
  CHECK(words.size() > 60);
  for (const std::string_view word : words) CHECK_MESSAGE(is_word(examples, word), word);
}
