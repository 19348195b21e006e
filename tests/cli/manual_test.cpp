// The manual cannot rot: README.md's formulas are written to files, its commands are run, and what
// they print must be what it shows. Run with SUDSMARK_RENEW=1 to write what they print today.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "process.h"
#include "where.h"

namespace {

struct Block {
  std::string info;  ///< what stands behind the fence: "formula ebb-line.formula", "console"
  std::string text;
};

std::vector<Block> blocks(const std::string& manual) {
  std::vector<Block> out;
  std::istringstream stream(manual);
  bool inside = false;
  for (std::string line; std::getline(stream, line);) {
    if (line.starts_with("```")) {
      if (!inside) out.push_back({line.substr(3), ""});
      inside = !inside;
    } else if (inside) {
      out.back().text += line + "\n";
    }
  }
  return out;
}

TEST_CASE("README.md shows what the program does") {
  const std::string path = sudsmark::testing::source_dir() / "README.md";
  std::string manual = test::contents(path);
  const bool renew = std::getenv("SUDSMARK_RENEW") != nullptr;
  const test::Folder folder;
  std::size_t commands = 0;
  for (const Block& block : blocks(manual)) {
    if (block.info.starts_with("formula ")) folder.write(block.info.substr(8), block.text);
    if (block.info.starts_with("yaml ")) folder.write(block.info.substr(5), block.text);
    if (block.info != "console") continue;
    const std::size_t end = block.text.find('\n');
    const std::string command = block.text.substr(0, end);
    REQUIRE(command.starts_with("$ sudsmark "));
    const auto ran = test::run(command.substr(11), folder.path());
    ++commands;
    const std::string shown = block.text.substr(end + 1);
    const std::string printed = ran.err + ran.out;
    if (renew && shown != printed) {
      manual.replace(manual.find(block.text), block.text.size(), command + "\n" + printed);
    }
    CHECK_MESSAGE(printed == shown, command);
  }
  CHECK(commands >= 3);
  if (renew) std::ofstream(path, std::ios::binary) << manual;
}

}  // namespace
