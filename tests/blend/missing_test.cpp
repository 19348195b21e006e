#include "blend/missing.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

using sudsmark::blend::MissingSet;
using sudsmark::blend::MissingTable;

namespace {

MissingSet set_of(const std::set<std::size_t>& indices) {
  MissingSet out;
  for (const std::size_t index : indices) out |= MissingSet::of(index);
  return out;
}

std::set<std::size_t> indices_of(const MissingSet& set) {
  std::set<std::size_t> out;
  set.each([&](std::size_t index) { out.insert(index); });
  return out;
}

}  // namespace

TEST_CASE("sets of reasons, within one word and beyond") {
  const std::set<std::size_t> some{0, 3, 63, 64, 127, 128, 1000};
  CHECK(indices_of(set_of(some)) == some);
  for (const std::size_t index : some) CHECK(set_of(some).shares(MissingSet::of(index)));
  for (const std::size_t index : {1U, 62U, 65U, 129U, 999U, 1001U, 5000U}) {
    CHECK_FALSE(set_of(some).shares(MissingSet::of(index)));
  }
  CHECK(MissingSet().empty());
  CHECK_FALSE(MissingSet::of(0).empty());
  CHECK_FALSE(MissingSet::of(64).empty());
  CHECK(set_of({1, 70}) == set_of({70, 1}));
  CHECK_FALSE(set_of({1, 70}) == set_of({1}));
  CHECK_FALSE(set_of({1, 70}) == set_of({1, 71}));
}

TEST_CASE("one set of reasons with another") {
  CHECK((set_of({1, 70}) | set_of({2, 200})) == set_of({1, 2, 70, 200}));
  CHECK((set_of({1, 2, 70, 200}) - set_of({2, 200, 300})) == set_of({1, 70}));
  // what is left of a large set is equal to one that never was large
  CHECK((set_of({1, 70, 200}) - set_of({70, 200})) == set_of({1}));
  CHECK((set_of({70}) - set_of({70})).empty());
  CHECK(set_of({1, 70}).shares(set_of({70, 300})));
  CHECK(set_of({1, 70}).shares(set_of({1})));
  CHECK_FALSE(set_of({1, 70}).shares(set_of({2, 71, 300})));
  CHECK_FALSE(MissingSet().shares(set_of({1})));
  MissingSet own = set_of({1, 70});
  const MissingSet& itself = own;
  own -= itself;
  CHECK(own.empty());
  MissingSet copy = set_of({1, 70});
  const MissingSet kept = copy;
  copy |= MissingSet::of(2);
  CHECK(kept == set_of({1, 70}));
  copy.clear();
  CHECK(copy.empty());
}

TEST_CASE("a table keeps each reason once") {
  MissingTable table;
  MissingSet all;
  for (int number = 0; number < 200; ++number) {
    all |= table.add("paper " + std::to_string(number));
  }
  CHECK(table.add("paper 150") == MissingSet::of(150));
  CHECK(table.find("paper 63") == MissingSet::of(63));
  CHECK(table.find("paper 200").empty());
  CHECK(table.items().size() == 200);
  const auto words = table.words(all);
  REQUIRE(words.size() == 200);
  CHECK(words[64] == "paper 64");
  CHECK(table.words(MissingSet::of(3) | MissingSet::of(199)) ==
        std::vector<std::string>{"paper 3", "paper 199"});
}
