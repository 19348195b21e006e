// Every message about YAML is shown by a test: by a file of `cases`, of this room or of the rules,
// which read keys and values by their kind, or by one of those here, which no file should hold.
#include <doctest/doctest.h>

#include <string>

#include "messages_shown.h"
#include "text/yaml.h"
#include "text/yaml_fields.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string said_of(std::string text) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const text::FileIndex file = sources.add("test.yaml", std::move(text));
  const auto root = text::read_yaml(sources, file, diagnostics);
  if (root) {
    text::Fields fields(*root, diagnostics);
    static_cast<void>(fields.text("name"));
  }
  return printed(sources, diagnostics);
}

}  // namespace

TEST_CASE("every message about YAML is shown") {
  std::string lines = expected_lines("tests/text/cases") + expected_lines("tests/rules/cases");
  lines += said_of(std::string(text::most_yaml_bytes + 1, ' '));
  std::string many = "[";
  for (std::size_t item = 0; item <= text::most_yaml_nodes; ++item) many += "a,";
  lines += said_of(many + "]");
  lines += said_of(std::string(600'000, ','));
  lines += said_of("name: ''\n");
  // `unreadable` is for what a later version of the YAML library may find
  check_all_shown(source_dir() / "src/text/yaml_messages.h", lines, {"unreadable"});
}
