// Ten thousand spoiled formulas through the whole library: fixtures cut short, with bytes changed,
// removed, doubled and lines swapped. None may crash or hang (ctest ends what hangs), and none may
// pass in silence: each comes to a checked formula or to an error with words and a place.
#include <doctest/doctest.h>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "where.h"
#include "written.h"

namespace {

namespace fs = std::filesystem;

std::string contents(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<fs::path> seeds() {
  std::vector<fs::path> out;
  for (const char* folder : {"formulas", "faulty", "malformed"}) {
    for (const auto& entry :
         fs::directory_iterator(sudsmark::testing::source_dir() / "fixtures" / folder)) {
      if (entry.path().extension() == ".formula") out.push_back(entry.path());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

class Spoiler {
 public:
  explicit Spoiler(unsigned seed) : random_(seed) {}

  std::string operator()(std::string text, const std::string& other) {
    const std::size_t times = 1 + pick(4);
    for (std::size_t at = 0; at < times && !text.empty(); ++at) once(text, other);
    return text;
  }
  std::size_t pick(std::size_t below) {
    return std::uniform_int_distribution<std::size_t>(0, below - 1)(random_);
  }

 private:
  void once(std::string& text, const std::string& other) {
    static const std::string odd = "0123456789.,%-/\"#\\ \n\t\r{}[]:\x00\x7F\x80\xC3\xFFqsper";
    const std::size_t place = pick(text.size());
    const std::size_t length = std::min<std::size_t>(1 + pick(12), text.size() - place);
    switch (pick(6)) {
      case 0:
        text.resize(place);
        break;
      case 1:
        text[place] = odd[pick(odd.size())];
        break;
      case 2:
        text.erase(place, length);
        break;
      case 3:
        text.insert(place, text.substr(place, length));
        break;
      case 4:
        text.insert(place, 1, odd[pick(odd.size())]);
        break;
      default: {
        if (other.empty()) break;
        const std::size_t from = pick(other.size());
        text.insert(place, other.substr(from, 1 + pick(60)));
      }
    }
  }
  std::mt19937 random_;
};

TEST_CASE("ten thousand spoiled formulas: no crash, no hang, no pass in silence") {
  const auto rulesets = sudsmark::Rulesets::built_in();
  const std::vector<fs::path> paths = seeds();
  std::vector<std::string> texts;
  for (const fs::path& path : paths) texts.push_back(contents(path));
  REQUIRE(texts.size() > 100);
  Spoiler spoil(20261125);
  std::size_t refused = 0;
  for (int round = 0; round < 10'000; ++round) {
    const std::size_t at = spoil.pick(texts.size());
    const std::string spoiled = spoil(texts[at], texts[spoil.pick(texts.size())]);
    sudsmark::CheckOptions options;
    options.read = [](const std::string& path) -> std::optional<std::string> {
      if (!fs::is_regular_file(path)) return std::nullopt;
      return contents(path);
    };
    sudsmark::RunResult run =
        sudsmark::check({paths[at].string(), spoiled, false}, rulesets, options);
    const std::string report = sudsmark::testing::written(sudsmark::Command::check, "text", &run);
    const std::string errors = sudsmark::problem_lines(run.problems);
    CHECK_MESSAGE(run.formulas.size() + run.problems.size() >= 1, spoiled);
    for (const auto& problem : run.problems) {
      CHECK_FALSE(problem.message.empty());
      CHECK_MESSAGE(problem.message.find("boost") == std::string::npos, problem.message);
    }
    refused += run.formulas.empty() ? 1 : 0;
  }
  // most spoiled files cannot be read; some are still a formula
  CHECK(refused > 2'000);
  CHECK(refused < 10'000);
}

}  // namespace
