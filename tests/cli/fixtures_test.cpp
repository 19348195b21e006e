// Every fixture through the whole program: sound formulas are quiet, each faulty one gives its
// finding and no other at warning or above, malformed ones give their messages and status 2.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include "process.h"
#include "where.h"

namespace {

namespace fs = std::filesystem;

const fs::path source = sudsmark::testing::source_dir();

std::vector<fs::path> formulas(const std::string& folder) {
  std::vector<fs::path> out;
  for (const auto& entry : fs::directory_iterator(source / "fixtures" / folder)) {
    if (entry.path().extension() == ".formula") out.push_back(entry.path());
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) out.push_back(line);
  return out;
}

bool weighs(const std::string& line) {
  return line.find(": warning: ") != std::string::npos ||
         line.find(": error: ") != std::string::npos;
}

TEST_CASE("sound formulas are quiet at warning level") {
  CHECK(formulas("sound").size() >= 30);
  for (const char* folder : {"fixtures/formulas", "fixtures/sound"}) {
    const auto ran =
        test::run(std::string("check --format lines --on 2026-11-25 ") + folder, source);
    CHECK(ran.status == 0);
    CHECK(ran.err.empty());
    for (const std::string& line : lines_of(ran.out)) CHECK_MESSAGE(!weighs(line), line);
  }
}

TEST_CASE("each faulty formula gives its finding and no other at warning or above") {
  const auto all = formulas("faulty");
  CHECK(all.size() >= 40);
  for (const fs::path& path : all) {
    fs::path expected = path;
    expected.replace_extension(".expected");
    std::istringstream words(test::contents(expected));
    std::string level;
    std::string rule;
    std::string line_number;
    std::string day = "2026-11-25";
    words >> level >> rule >> line_number >> day;
    const std::string name = path.filename().string();
    const auto ran =
        test::run("check --format lines --on " + day + " fixtures/faulty/" + name, source);
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    std::size_t heavy = 0;
    bool found = false;
    for (const std::string& line : lines_of(ran.out)) {
      heavy += weighs(line) ? 1 : 0;
      // papers to ask for stand in one line for the whole formula, which has no place
      const std::string begin =
          "fixtures/faulty/" + name + (line_number == "-" ? ": " : ":" + line_number + ":");
      const bool here =
          line.starts_with(begin) && line.find(": " + level + ": ") != std::string::npos;
      const std::size_t ids = line.rfind('[');
      if (!here || ids == std::string::npos) continue;
      const std::string bracket = ", " + line.substr(ids + 1, line.size() - ids - 2) + ", ";
      found = found || bracket.find(", " + rule + ", ") != std::string::npos;
    }
    CHECK_MESSAGE(found, name << " does not give " << rule << "\n" << ran.out);
    CHECK_MESSAGE(heavy == (level == "note" ? 0U : 1U), name << "\n" << ran.out);
    CHECK(ran.status == (level == "note" ? 0 : 1));
  }
}

TEST_CASE("each tweak that goes wrong gives its findings, and its base is quiet") {
  std::size_t tweaks = 0;
  for (const fs::path& path : formulas("tweaks")) {
    const std::string name = path.filename().string();
    if (name == "bench.formula") continue;  // what the others include
    fs::path beside = path;
    beside.replace_extension(".expected");
    const auto ran = test::run("check --format lines fixtures/tweaks/" + name, source);
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    const std::vector<std::string> found = lines_of(ran.out);
    std::size_t heavy = 0;
    if (fs::exists(beside)) {
      ++tweaks;
      const std::vector<std::string> expected = lines_of(test::contents(beside));
      CHECK(!expected.empty());
      for (const std::string& one : expected) {
        std::istringstream words(one);
        std::string level;
        std::string rule;
        std::string place;
        words >> level >> rule >> place;
        heavy += level == "note" ? 0 : 1;
        CHECK_MESSAGE(std::any_of(found.begin(), found.end(),
                                  [&](const std::string& line) {
                                    return line.starts_with("fixtures/tweaks/" + place + ":") &&
                                           line.find(": " + level + ": ") != std::string::npos &&
                                           line.ends_with("[" + rule + "]");
                                  }),
                      name << " does not give " << one << "\n"
                           << ran.out);
      }
    }
    const auto weighing = std::count_if(found.begin(), found.end(), weighs);
    CHECK_MESSAGE(static_cast<std::size_t>(weighing) == heavy, name << "\n" << ran.out);
    CHECK(ran.status == (heavy == 0 ? 0 : 1));
  }
  CHECK(tweaks >= 10);
}

TEST_CASE("malformed files: status 2, and their messages as the files beside them say") {
  const auto all = formulas("malformed");
  CHECK(all.size() >= 40);
  for (const fs::path& path : all) {
    fs::path expected = path;
    expected.replace_extension(".expected");
    const std::string name = path.filename().string();
    const auto ran = test::run("check " + name, source / "fixtures" / "malformed");
    CHECK_MESSAGE(ran.status == 2, name);
    // the language's own messages; what the catalogue adds comes after a sheet without errors
    for (const std::string& line : lines_of(test::contents(expected))) {
      CHECK_MESSAGE(ran.err.find(line) != std::string::npos, name << " lacks\n"
                                                                  << line << "\n"
                                                                  << ran.err);
    }
  }
}

}  // namespace
