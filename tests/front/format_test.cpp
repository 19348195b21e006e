// Cards in tidy columns: what is set where, and that no card changes its meaning or is set twice.
#include <doctest/doctest.h>

#include <filesystem>
#include <string>

#include <sudsmark/format.h>

#include "case_files.h"

namespace {

using namespace sudsmark;

std::string tidy(const std::string& text) {
  const auto out = formatted({"card.formula", text});
  REQUIRE(out);
  CHECK(out.problems.empty());
  return *out;
}

}  // namespace

TEST_CASE("words, amounts, values and remarks stand in columns") {
  const std::string text =
      "\xEF\xBB\xBF\n\n# made on Tuesdays\r\n"
      "formula   \"Ebb  Line\"  # the first\n"
      "product bath fizzy\t# a kind\n"
      "on  sale since 2024-03-01\n"
      "      batch 2   kg# all\n"
      "    # who it is for\n"
      " users adults\n\n\n\n"
      "# what makes gas\n"
      "phase \"dry\"\n"
      "44  %   \"sodium bicarbonate\"\n"
      "1 lb 4 oz of corn starch\n"
      "2  -  3 % Süßholz # and # again\n"
      "q.s. kaolin, dries off\n"
      "fragrance \"Sea # Fig\"\n"
      "limit 11.4 %\n"
      "6 - 8 % linalool\n"
      "undeclared none\n\n\n";
  const std::string set =
      "# made on Tuesdays\n"
      "formula   \"Ebb  Line\"  # the first\n"
      "  product   bath fizzy  # a kind\n"
      "  on sale since 2024-03-01\n"
      "  batch     2   kg      # all\n"
      "  # who it is for\n"
      "  users     adults\n\n"
      "# what makes gas\n"
      "phase \"dry\"\n"
      "  44 %      \"sodium bicarbonate\"\n"
      "  1 lb 4 oz of corn starch\n"
      "  2 - 3 %   Süßholz  # and # again\n"
      "  q.s.      kaolin, dries off\n"
      "fragrance \"Sea # Fig\"\n"
      "  limit     11.4 %\n"
      "  6 - 8 %   linalool\n"
      "  undeclared none\n";
  CHECK(tidy(text) == set);
  CHECK(tidy(set) == set);
}

TEST_CASE("what is not written in the language is left alone, and told") {
  const auto out =
      formatted({"card.formula", "formula \"x\"\n  product bath salts\n  batch 0,6 kg\n"});
  CHECK_FALSE(out);
  REQUIRE(out.problems.size() == 1);
  CHECK(out.problems.front().line == 3);
}

TEST_CASE("every card of the fixtures keeps its meaning, and once is enough") {
  std::size_t cards = 0;
  for (const auto& entry :
       std::filesystem::recursive_directory_iterator(testing::source_dir() / "fixtures")) {
    if (entry.path().extension() != ".formula") continue;
    CAPTURE(entry.path().filename().string());
    const auto once = formatted({"card.formula", testing::file_contents(entry.path())});
    if (!once) {
      CHECK(once.problems.front().message.find("another meaning") == std::string::npos);
      continue;
    }
    ++cards;
    CHECK(tidy(*once) == *once);
  }
  CHECK(cards > 150);
}
