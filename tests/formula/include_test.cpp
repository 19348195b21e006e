// Includes: which files are read, how often, and from where.
#include <doctest/doctest.h>

#include <string>

#include "assembled.h"
#include "formula/tree.h"

namespace sudsmark::formula::test {
namespace {

const std::string formula = "formula a\n  product bubble bar\nphase dry\n  100 % kaolin\n";

std::string including(const std::string& path) {
  return "include \"" + path + "\"\n";
}

std::string scent(const std::string& name) {
  return "fragrance \"" + name + "\"\n  limit 5 %\n";
}

}  // namespace

TEST_CASE("paths are joined to the folder of the file that names them") {
  CHECK(path_beside("a.formula", "b.formula") == "b.formula");
  CHECK(path_beside("x/a.formula", "b.formula") == "x/b.formula");
  CHECK(path_beside("x/a.formula", "./y/../b.formula") == "x/b.formula");
  CHECK(path_beside("x/a.formula", "../b.formula") == "b.formula");
  CHECK(path_beside("/x/a.formula", "/y/b.formula") == "/y/b.formula");
}

TEST_CASE("a path leaves a folder by going up or by starting at the root") {
  CHECK_FALSE(leaves_folder("b.formula", ""));
  CHECK_FALSE(leaves_folder("x/b.formula", ""));
  CHECK_FALSE(leaves_folder("x/b.formula", "x"));
  CHECK_FALSE(leaves_folder("/x/y/b.formula", "/x"));
  CHECK(leaves_folder("../b.formula", ""));
  CHECK(leaves_folder("xy/b.formula", "x"));
  CHECK(leaves_folder("b.formula", "x"));
  CHECK(leaves_folder("/b.formula", "x"));
  CHECK(leaves_folder("/x/b.formula", "/x/y"));
}

TEST_CASE("what is included comes before the file's own sections, and each file once") {
  const Assembled out =
      assembled({{"x/a.formula", including("lib/b.formula") + including("lib/c.formula") +
                                     including("./lib/b.formula") + formula},
                 {"x/lib/b.formula", including("c.formula") + scent("b")},
                 {"x/lib/c.formula", scent("c") + "phase wet\n  0 % water\n"}},
                "x/a.formula");
  CHECK(out.errors.empty());
  REQUIRE(out.card);
  REQUIRE(out.card->fragrances.size() == 2);
  CHECK(out.card->fragrances[0].name.text == "c");
  CHECK(out.card->fragrances[1].name.text == "b");
  REQUIRE(out.card->phases.size() == 2);
  CHECK(out.card->phases[0].name.text == "wet");
  CHECK(out.card->phases[1].name.text == "dry");
  CHECK(out.at(out.card->phases[0].lines[0].place) == "x/lib/c.formula:4:3");
  CHECK(out.card->whole);
}

TEST_CASE("names may be used before the section that defines them") {
  const Assembled out =
      assembled({{"a.formula",
                  "task sift\n  handles 2 bags \"dry bag\"\n" + formula + including("b.formula")},
                 {"b.formula", "premix \"dry bag\" makes 1 kg as bag\n  100 % kaolin\n"}},
                "a.formula");
  CHECK(out.errors.empty());
}

TEST_CASE("a circle is an error that names it") {
  const Assembled out = assembled({{"a.formula", including("b.formula") + formula},
                                   {"b.formula", including("c/c.formula")},
                                   {"c/c.formula", including("../b.formula")}},
                                  "a.formula");
  CHECK_FALSE(out.card);
  CHECK(out.errors ==
        "c/c.formula:1:9: error: the files go round in a circle: b.formula -> c/c.formula -> "
        "b.formula\n");
}

TEST_CASE("included files stay in the folder of the named file unless that is allowed") {
  const Files files{{"x/a.formula", including("lib/b.formula") + formula},
                    {"x/lib/b.formula", including("../../c.formula")},
                    {"c.formula", scent("c")}};
  const Assembled refused = assembled(files, "x/a.formula");
  CHECK(refused.errors ==
        "x/lib/b.formula:1:9: error: '../../c.formula' leaves the folder of the formula; "
        "--allow-outside permits it\n");
  const Assembled allowed = assembled(files, "x/a.formula", {.allow_outside = true});
  CHECK(allowed.errors.empty());
  REQUIRE(allowed.card);
  CHECK(allowed.card->fragrances.size() == 1);
}

TEST_CASE("a base is held to the same folder") {
  const Files files{{"x/a.formula", "tweak b of \"../c.formula\"\n"}, {"c.formula", formula}};
  CHECK(assembled(files, "x/a.formula").errors ==
        "1:12: error: '../c.formula' leaves the folder of the formula; --allow-outside permits "
        "it\n");
  CHECK(assembled(files, "x/a.formula", {.allow_outside = true}).errors.empty());
}

TEST_CASE("an include tree holds at most 64 files") {
  Files files;
  std::string all;
  for (int at = 1; at < 64; ++at) {
    const std::string name = "lib" + std::to_string(at) + ".formula";
    files[name] = scent(std::to_string(at));
    all += including(name);
  }
  files["a.formula"] = all + formula;
  CHECK(assembled(files, "a.formula").errors.empty());
  files["one-more.formula"] = scent("one more");
  files["a.formula"] = all + including("one-more.formula") + formula;
  CHECK(assembled(files, "a.formula").errors ==
        "64:9: error: a formula and all it names are at most 64 files\n");
}

TEST_CASE("an include tree holds at most 8 MiB") {
  // eight comments that fill a file to its own bound, and a few bytes more
  Files files;
  std::string all;
  for (int at = 0; at < 8; ++at) {
    const std::string name = "lib" + std::to_string(at) + ".formula";
    files[name] = "#" + std::string((std::size_t{1} << 20U) - 2, 'x') + "\n";
    all += including(name);
  }
  files["a.formula"] = all + formula;
  CHECK(assembled(files, "a.formula").errors ==
        "8:9: error: a formula and all it names are at most 8 MiB\n");
}

TEST_CASE("a file is at most 1 MiB") {
  const std::string filler = "#" + std::string(1022, 'x') + "\n";
  std::string text = formula;
  while (text.size() + filler.size() <= (std::size_t{1} << 20U)) text += filler;
  text += std::string((std::size_t{1} << 20U) - text.size(), '\n');
  CHECK(assembled({{"a.formula", text}}, "a.formula").errors.empty());
  CHECK(assembled({{"a.formula", text + "\n"}}, "a.formula").errors ==
        "1:1: error: a formula file is at most 1 MiB; this one has 1048577 bytes\n");
}

TEST_CASE("a formula has at most 2,000 ingredient lines") {
  const auto lines = [](int count) {
    std::string text;
    for (int at = 0; at < count; ++at) text += "  1 g kaolin\n";
    return text;
  };
  const std::string head = "formula a\n  product bubble bar\nphase dry\n";
  CHECK(assembled({{"a.formula", head + lines(2000)}}, "a.formula").errors.empty());
  CHECK(assembled({{"a.formula", head + lines(2003)}}, "a.formula").errors ==
        "2004:3: error: a formula has at most 2,000 ingredient lines\n");
  const Files two{{"a.formula", including("b.formula") + head + lines(1500)},
                  {"b.formula", "phase wet\n" + lines(600)}};
  CHECK(assembled(two, "a.formula").errors ==
        "1405:3: error: a formula has at most 2,000 ingredient lines\n");
}

TEST_CASE("a name given twice in the tree names both places") {
  const Assembled out =
      assembled({{"a.formula", including("b.formula") + formula + scent("Fen  Rose")},
                 {"b.formula", "material \"fen-rose\"\n"}},
                "a.formula");
  // fragrances are looked at before materials, so the material is the second
  CHECK(out.errors ==
        "b.formula:1:10: error: material 'fen-rose' is there already\n"
        "6:11: note: the other place is here\n");
}

TEST_CASE("a formula has one label") {
  const Assembled out = assembled(
      {{"a.formula", including("b.formula") + formula + "label\n"}, {"b.formula", "label\n"}},
      "a.formula");
  CHECK(out.errors ==
        "6:1: error: a formula has one label, and this is the second\n"
        "b.formula:1:1: note: the other place is here\n");
}

TEST_CASE("portions make 100 % within 0.05, by some value of their ranges") {
  const auto errors = [](const std::string& one, const std::string& two) {
    return assembled({{"a.formula", formula + "portion b, " + one + "\nportion c, " + two + "\n"}},
                     "a.formula")
        .errors;
  };
  CHECK(errors("50 %", "50 %").empty());
  CHECK(errors("50 %", "49.95 %").empty());
  CHECK(errors("50 %", "50.05 %").empty());
  CHECK(errors("40 - 60 %", "50 %").empty());
  CHECK(errors("50 %", "49.94 %") ==
        "5:12: error: the portions make 99.94 %, not 100 %: 0.06 % is missing\n");
  CHECK(errors("60 - 70 %", "50 %") ==
        "5:12: error: the portions make 110 %, not 100 %: 10 % too much\n");
}

TEST_CASE("a unit must be some premix's own") {
  const auto errors = [](const std::string& lines) {
    return assembled(
        {{"a.formula", formula + lines + "premix \"dry mix\" makes 1 kg as box\n  100 % kaolin\n"}},
        "a.formula");
  };
  const Assembled boxes = errors("  2 boxes \"dry mix\"\n  1 Box dry mix\n");
  CHECK(boxes.errors.empty());
  REQUIRE(boxes.card);
  CHECK(boxes.card->phases[0].lines[1].amount.unit == "box");
  CHECK(errors("  2 bxo \"dry mix\"\n").errors ==
        "5:5: error: 'bxo' is no unit, and no premix is made in it; perhaps 'box'\n");
  CHECK(errors("  2 grams kaolin\n").errors ==
        "5:5: error: 'gram' is no unit, and no premix is made in it; write 'g'\n");
}

TEST_CASE("a partial card is given after errors where it is asked for") {
  const Files files{{"a.formula", formula + "  -1 % mica\n"}};
  CHECK_FALSE(assembled(files, "a.formula").card);
  const Assembled out = assembled(files, "a.formula", {.partial = true});
  CHECK_FALSE(out.errors.empty());
  REQUIRE(out.card);
  CHECK_FALSE(out.card->whole);
  CHECK(out.card->phases[0].lines.size() == 1);
}

}  // namespace sudsmark::formula::test
