#include "text/yaml.h"

#include <doctest/doctest.h>

#include <random>
#include <string>

#include "case_files.h"
#include "text/yaml_fields.h"

namespace {

using namespace sudsmark;
using sudsmark::text::Node;

std::string place(const text::Sources& sources, const text::Span& span) {
  const text::Position from = sources[span.file].position(span.begin);
  const text::Position to = sources[span.file].position(span.end);
  return std::to_string(from.line) + ":" + std::to_string(from.column) + "-" +
         std::to_string(to.line) + ":" + std::to_string(to.column);
}

std::string visible(std::string_view words) {
  std::string out;
  for (const char c : words) out += c == '\n' ? std::string("\\n") : std::string(1, c);
  return out;
}

/// The tree, a node a line, with its place.
void print(const text::Sources& sources, const Node& node, std::string& out, std::size_t depth) {
  out += std::string(2 * depth, ' ');
  if (node.key_span.somewhere()) {
    out += '<' + visible(node.key) + "> " + place(sources, node.key_span) + ' ';
  }
  switch (node.kind) {
    case Node::Kind::nothing:
      out += "nothing";
      break;
    case Node::Kind::scalar:
      out += '"' + visible(node.text) + '"';
      break;
    case Node::Kind::list:
      out += "list";
      break;
    case Node::Kind::map:
      out += "map";
      break;
  }
  if (node.span.somewhere()) out += ' ' + place(sources, node.span);
  out += '\n';
  for (const Node& item : node.items) print(sources, item, out, depth + 1);
}

struct Reading {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::optional<Node> root;

  explicit Reading(std::string file_text) {
    const text::FileIndex file = sources.add("x.yaml", std::move(file_text));
    root = text::read_yaml(sources, file, diagnostics);
  }
  [[nodiscard]] std::string_view bytes(const text::Span& span) const {
    return std::string_view(sources[span.file].text()).substr(span.begin, span.end - span.begin);
  }
};

}  // namespace

TEST_CASE("files and what is read of them") {
  for (const auto& path : testing::case_files("tests/text/cases", ".yaml")) {
    const Reading reading(testing::file_contents(path));
    std::string actual = testing::printed(reading.sources, reading.diagnostics);
    if (reading.root) print(reading.sources, *reading.root, actual, 0);
    auto expected = path;
    testing::check_expected(expected.replace_extension(".expected"), actual);
  }
}

TEST_CASE("a place inside a text is found in the file") {
  const Reading reading(
      "plain: oils + scent > 1 %\n"
      "long: oils +\n"
      "   scent\n"
      "double: \"a \\\"b\\\" \\u00e9 \\n z \\\n"
      "   end\"\n"
      "single: 'it''s all'\n"
      "folded: >\n"
      "  one two\n"
      "  three\n"
      "literal: |\n"
      "  x: y\n"
      "   z\n");
  REQUIRE(reading.root);
  const auto found = [&](std::string_view key, std::string_view part) {
    const Node* node = reading.root->find(key);
    REQUIRE(node != nullptr);
    const std::size_t at = node->text.find(part);
    REQUIRE(at != std::string::npos);
    const std::string_view file_text = reading.sources[0].text();
    return std::string(reading.bytes(text::place_in(*node, file_text, at, at + part.size())));
  };
  CHECK(found("plain", "scent") == "scent");
  CHECK(found("plain", "1 %") == "1 %");
  CHECK(found("long", "scent") == "scent");
  CHECK(found("long", "+ scent") == "+\n   scent");
  CHECK(found("double", "b") == "b");
  CHECK(found("double", "\"b\"") == "\\\"b\\\"");
  CHECK(found("double", "\xC3\xA9") == "\\u00e9");
  CHECK(found("double", "z") == "z");
  CHECK(found("double", "end") == "end");
  CHECK(found("single", "all") == "all");
  CHECK(found("single", "it's") == "it''s");
  CHECK(found("folded", "three") == "three");
  CHECK(found("folded", "two three") == "two\n  three");
  CHECK(found("literal", "z") == "z");
  CHECK(found("literal", "y") == "y");
}

TEST_CASE("bounds: bytes, nesting, nodes") {
  const std::string open(text::most_yaml_depth, '[');
  const std::string close(text::most_yaml_depth, ']');
  CHECK(Reading(open + close).root.has_value());
  CHECK_FALSE(Reading('[' + open + close + ']').root.has_value());

  const Reading large(std::string(text::most_yaml_bytes + 1, ' '));
  CHECK_FALSE(large.root);
  CHECK(testing::printed(large.sources, large.diagnostics) ==
        "1:1 yaml-too-large the file is larger than 8 MiB\n");

  std::string many = "[";
  for (std::size_t i = 0; i < text::most_yaml_nodes; ++i) many += "a,";
  const Reading nodes(many + "]");
  CHECK_FALSE(nodes.root);
  CHECK(testing::printed(nodes.sources, nodes.diagnostics) ==
        "1:800000 yaml-too-many the file holds more than 400000 entries\n");

  for (const char bracket : {'[', '{'}) {
    const Reading deep(std::string(text::most_yaml_bytes, bracket));
    CHECK_FALSE(deep.root);
    CHECK(testing::printed(deep.sources, deep.diagnostics) ==
          "1:500001 yaml-too-many-signs the file holds more than 500000 commas and brackets: write "
          "lists "
          "line by line\n");
  }
}

TEST_CASE("what is expected of a node, and what is found") {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto file =
      sources.add("x.yaml",
                  "list: a\n"
                  "text: [b]\n"
                  "empty:\n"
                  "blank: ''\n"
                  "flag: perhaps\n"
                  "texts: {a: b}\n"
                  "colour: red\n"
                  "long: \"a text that is so long that nobody wants to see the whole of it\"\n"
                  "remrk: x\n");
  const auto root = text::read_yaml(sources, file, diagnostics);
  REQUIRE(root);
  text::Fields fields(*root, diagnostics);
  CHECK(fields.list("list").empty());
  CHECK(fields.text("text").empty());
  CHECK(fields.text("empty").empty());
  CHECK(fields.text("blank").empty());
  CHECK_FALSE(fields.flag("flag"));
  CHECK(fields.texts("texts").empty());
  CHECK(fields.text("colour") == "red");
  CHECK(fields.strings("colour") == std::vector<std::string>{"red"});
  CHECK(fields.list("long").empty());
  CHECK(fields.needed_text("name").empty());
  CHECK(fields.text("remark").empty());
  fields.refuse_others();
  CHECK(
      testing::printed(sources, diagnostics) ==
      "1:1 missing-key the key 'name' is missing\n"
      "1:7 wrong-kind expected a list, found the text 'a'\n"
      "2:7 wrong-kind expected a text, found a list\n"
      "3:1 wrong-kind expected a text, found nothing\n"
      "4:8 empty-text expected a text, found an empty one\n"
      "5:7 wrong-kind expected yes or no, found the text 'perhaps'\n"
      "6:8 wrong-kind expected a text or a list of texts, found keys with values\n"
      "8:7 wrong-kind expected a list, found the text 'a text that is so long that nobody wants…'\n"
      "9:1 unknown-key 'remrk' is not a key that is known here; perhaps 'remark'\n");
}

TEST_CASE("spoilt files end in a tree or in an error, soon") {
  std::vector<std::string> seeds;
  for (const auto& path : testing::case_files("tests/text/cases", ".yaml")) {
    seeds.push_back(testing::file_contents(path));
  }
  std::mt19937 random(20261125);
  const auto pick = [&](std::size_t size) { return static_cast<std::size_t>(random() % size); };
  const std::string_view signs = "\"'[]{}:,-?&*!|>#%@ \n\t\\ax0\xC3";
  for (int round = 0; round < 2000; ++round) {
    std::string spoilt = seeds[pick(seeds.size())] + seeds[pick(seeds.size())];
    for (std::size_t times = 1 + pick(6); times > 0 && !spoilt.empty(); --times) {
      const std::size_t at = pick(spoilt.size());
      switch (pick(4)) {
        case 0:
          spoilt[at] = signs[pick(signs.size())];
          break;
        case 1:
          spoilt.insert(at, 1, signs[pick(signs.size())]);
          break;
        case 2:
          spoilt.erase(at, 1 + pick(4));
          break;
        default:
          spoilt.insert(at, spoilt.substr(pick(spoilt.size()), pick(12)));
          break;
      }
    }
    const Reading reading(spoilt);
    REQUIRE_MESSAGE((reading.root.has_value() || !reading.diagnostics.empty()), spoilt);
    for (const text::Diagnostic& item : reading.diagnostics.in_order()) {
      REQUIRE(item.places.front().begin <= spoilt.size());
      REQUIRE(item.places.front().end <= spoilt.size());
    }
  }
}

TEST_CASE("endless openings of every kind are read or refused (ctest ends what hangs)") {
  for (const std::string_view unit : {"[", "{", "- ", "? ", ": ", "\"", "'", "[a: ", "{a: ", "a:\n",
                                      "\"\\", "- \"\n", "|\n", "[? "}) {
    std::string file_text;
    while (file_text.size() < 300'000) file_text += unit;
    const Reading reading(file_text);
    CHECK_MESSAGE((reading.root.has_value() || !reading.diagnostics.empty()), unit);
  }
}

TEST_CASE("a very long line is read") {
  std::string file_text = "{";
  for (int at = 0; at < 190'000; ++at) file_text += "key" + std::to_string(at) + ": a, ";
  const Reading reading(file_text + "}");
  REQUIRE(reading.root);
  CHECK(reading.root->items.size() == 190'000);
}
