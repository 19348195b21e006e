// Several reports of one run, pages in a folder, baselines, ASCII and colour: as a process.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "process.h"
#include "where.h"

namespace {

using test::contents;
using test::Folder;
using test::run;

const std::filesystem::path source = sudsmark::testing::source_dir();
const std::string day = " --on 2026-11-25 ";
/// The small rulesets and the formula of tests/golden, whose findings are known.
const std::string estuary = day + "--bare --rules tests/golden tests/golden/estuary.formula";

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("several formats in one run, one of them on standard output") {
  const Folder folder;
  const std::string path = folder.path().string();
  const auto ran = run("check --format sarif='" + path + "/a.sarif' --format json --format html='" +
                           path + "/a.html'" + estuary,
                       source);
  CHECK(ran.status == 1);
  CHECK(ran.out.starts_with("{\n  \"$schema\""));
  CHECK(holds(contents(folder.path() / "a.sarif"), "\"version\": \"2.1.0\""));
  CHECK(contents(folder.path() / "a.html").starts_with("<!DOCTYPE html>"));
}

TEST_CASE("where every format has a path, standard output carries text") {
  const Folder folder;
  const auto ran =
      run("check --format json='" + folder.path().string() + "/a.json'" + estuary, source);
  CHECK(holds(ran.out, "little-starch"));
  CHECK(holds(contents(folder.path() / "a.json"), "\"rule\":\"little-starch\""));
}

TEST_CASE("formats that cannot be") {
  const Folder folder;
  const std::string path = folder.path().string();
  const auto refused = [&](const std::string& formats, const std::string& words) {
    CAPTURE(formats);
    const auto ran = run("check " + formats + estuary, source);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK(holds(ran.err, words));
  };
  refused("--format yaml",
          "'yaml' is no format here; known are text, lines, json, json-lines, sarif, html");
  refused("--format json --format sarif", "one format alone can go to standard output");
  refused("--format json=", "names no file");
  refused("--format json='" + path + "/a' --format sarif='" + path + "/a'", "two formats");
  refused("--format json='" + path + "/'", "is a folder; only html");
  const auto nowhere = run("check --format json='" + path + "/none/a.json'" + estuary, source);
  CHECK(nowhere.status == 2);
  CHECK(holds(nowhere.err, "cannot write"));
  const auto measure = run("measure --format sarif fixtures/formulas/fen-crumble.formula", source);
  CHECK(measure.status == 2);
}

TEST_CASE("a folder of pages: one a formula, and one that leads to them") {
  const Folder folder;
  const std::string path = folder.path().string();
  const std::string formula = contents(source / "tests/golden/estuary.formula");
  const std::string first = folder.write("mixes/a/bar.formula", formula);
  const std::string second = folder.write("mixes/a-bar.formula", formula);
  const auto ran =
      run("check --format html='" + path + "/report/'" + day + "--bare --rules '" +
              source.string() + "/tests/golden' mixes/a/bar.formula mixes/a-bar.formula",
          folder.path());
  CHECK(ran.status == 1);
  const std::string front = contents(folder.path() / "report/index.html");
  CHECK(holds(front, "href=\"mixes-a-bar.html\""));
  CHECK(holds(front, "href=\"mixes-a-bar-2.html\""));
  CHECK(holds(contents(folder.path() / "report/mixes-a-bar.html"), "href=\"index.html\""));
  CHECK(holds(contents(folder.path() / "report/mixes-a-bar-2.html"), "Estuary Bar"));

  const auto alone = run("check --format html='" + path + "/alone'/" + estuary, source);
  CHECK(alone.status == 1);
  CHECK(holds(contents(folder.path() / "alone/index.html"), "Estuary Bar"));

  // what a baseline has and the formula has not stands on its only page too
  const std::string known = path + "/known.json";
  CHECK(run("check --write-baseline '" + known + "'" + estuary, source).status == 0);
  const auto fewer = run("check --without little-starch --baseline '" + known +
                             "' --format html='" + path + "/fewer/'" + estuary,
                         source);
  CHECK(fewer.status == 0);
  CHECK(holds(contents(folder.path() / "fewer/index.html"), "Gone since the baseline"));

  // beside a file that cannot be read, the formula has a page of its own
  folder.write("broken.formula", "formula \"Half\"\n  batch 0,5 kg\n");
  const auto both = run("check --baseline '" + known + "' --format html='" + path + "/both/'" +
                            estuary + " '" + path + "/broken.formula'",
                        source);
  CHECK(both.status == 2);
  const std::string leading = contents(folder.path() / "both/index.html");
  CHECK(holds(leading, "What could not be read"));
  CHECK(holds(leading, "href=\"tests-golden-estuary.html\""));
  CHECK(holds(contents(folder.path() / "both/tests-golden-estuary.html"), "Estuary Bar"));
}

TEST_CASE("every format has the same bytes for any number of jobs") {
  for (const std::string format : {"text", "json", "json-lines", "sarif", "html"}) {
    const std::string arguments =
        "check --format " + format + day + "fixtures/formulas fixtures/malformed --jobs ";
    const auto one = run(arguments + "1", source);
    const auto four = run(arguments + "4", source);
    CHECK(one.out == four.out);
    CHECK(one.status == four.status);
    CHECK_FALSE(one.out.empty());
  }
}

TEST_CASE("a baseline: written, then only what is new fails") {
  const Folder folder;
  const std::string baseline = (folder.path() / "baseline.json").string();
  const std::string rules = day + "--bare --rules '" + source.string() + "/tests/golden' ";
  std::string text = contents(source / "tests/golden/estuary.formula");
  folder.write("bars/estuary.formula", text);
  const std::string here = rules + "bars/estuary.formula";
  const auto written = run("check --write-baseline baseline.json" + here, folder.path());
  CHECK(written.status == 0);
  CHECK(holds(written.out, "little-starch"));
  CHECK(holds(contents(baseline), "\"rule\":\"little-starch\""));

  // paths are those from the folder of the baseline, wherever the program is called
  const auto same = run("check --baseline '" + baseline + "'" + rules + "estuary.formula",
                        folder.path() / "bars");
  CHECK(same.status == 0);
  CHECK_FALSE(holds(same.out, "little-starch"));
  CHECK(holds(same.out, "; 6 as in the baseline"));
  CHECK(holds(run("check --verbose --baseline baseline.json" + here, folder.path()).out,
              "little-starch"));

  // the lines move, and one of them is changed for the worse
  text.replace(text.find("2.5 - 4 %"), 9, "3.5 - 4 %");
  folder.write("bars/estuary.formula", "\n# moved\n" + text);
  const auto changed = run("check --baseline baseline.json" + here, folder.path());
  CHECK(changed.status == 1);
  CHECK(holds(changed.out, "glycerin-window"));
  CHECK(holds(changed.out, "as in the baseline"));
}

TEST_CASE("a baseline that is missing or is none is an error") {
  const Folder folder;
  const auto missing =
      run("check --baseline '" + folder.path().string() + "/none'" + estuary, source);
  CHECK(missing.status == 2);
  CHECK(missing.out.empty());
  CHECK(holds(missing.err, "cannot be read"));
  const std::string other = folder.write("other.json", "{\"findings\": []}");
  const auto none = run("check --baseline '" + other + "'" + estuary, source);
  CHECK(none.status == 2);
  CHECK(none.out.empty());
  CHECK(holds(none.err, "it is no baseline of sudsmark"));
}

TEST_CASE("no baseline is written over where something could not be read") {
  const Folder folder;
  const std::string baseline = folder.write("baseline.json", "kept");
  const auto ran =
      run("check --write-baseline '" + baseline + "' no-such.formula" + estuary, source);
  CHECK(ran.status == 2);
  CHECK(holds(ran.err, "no baseline is written"));
  CHECK(contents(baseline) == "kept");
}

TEST_CASE("ASCII alone, and colour only where it is wished for") {
  const auto ascii = [](const std::string& text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x80; });
  };
  for (const std::string format : {"text", "json", "sarif", "html"}) {
    const auto ran = run("check --ascii --format " + format + day + "tests/report/hostile", source);
    CHECK(ran.status == 1);
    CHECK(ascii(ran.out));
  }
  const std::string hostile = day + "tests/report/hostile/names.formula";
  for (const std::string& command :
       {"measure --ascii" + hostile, "measure --ascii --format json" + hostile,
        "measure --ascii --sheet" + hostile, "measure --ascii --sheet --format html" + hostile,
        "label --ascii --verbose" + hostile, "label --ascii --format json" + hostile,
        "compare --ascii" + day + "tests/report/hostile/tweak.formula",
        "compare --ascii --format json" + day + "tests/report/hostile/tweak.formula",
        "compare --ascii --format html" + day + "tests/report/hostile/tweak.formula",
        std::string("explain --ascii bath.ph"), std::string("rules --ascii --verbose")}) {
    CAPTURE(command);
    const auto ran = run(command, source);
    CHECK(ran.status < 2);
    CHECK_FALSE(ran.out.empty());
    CHECK(ascii(ran.out));
  }
  const Folder folder;
  folder.write("caf\u00e9.formula", "formula \"Caf\u00e9\"\n  froming \u00e9\n");
  const auto wrong = run("check --ascii 'caf\u00e9.formula'", folder.path());
  CHECK(wrong.status == 2);
  CHECK_FALSE(wrong.err.empty());
  CHECK(ascii(wrong.err));
  CHECK_FALSE(ascii(run("explain bath.ph", source).out + run("rules --verbose", source).out +
                    run("measure --sheet" + hostile, source).out));
  CHECK_FALSE(holds(run("check" + estuary, source).out, "\x1b["));
  CHECK(holds(run("check --color always" + estuary, source).out, "\x1b["));
  CHECK_FALSE(holds(run("check --color never" + estuary, source).out, "\x1b["));
}
