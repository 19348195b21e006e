// What the program reads and writes, and what it leaves alone: as a process.
#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <string>

#include "process.h"

namespace {

namespace fs = std::filesystem;

using test::contents;
using test::Folder;
using test::run;

const std::string sound =
    "formula \"Ebb\"\n  product bath salts\n  users adults\nphase \"all\"\n  99 % sea salt\n"
    "  1 % sodium bicarbonate\n";
/// With an oil and nothing that would take it into the bath.
const std::string oily =
    "formula \"Slick\"\n  product bath fizzy\nphase \"all\"\n  60 % sodium bicarbonate\n"
    "  34 % citric acid\n  6 % rice bran oil\n";

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// Runs lines of a shell in which `sudsmark` is the program. Nothing may wait for ever: what does
/// is ended.
test::Ran shell(const std::string& lines, const Folder& folder) {
  const std::string program = "'" + sudsmark::testing::program().string() + "'";
  return run("--version >/dev/null && { sudsmark() { timeout 20 " + program + " \"$@\"; }; " +
                 lines + "; }",
             folder.path());
}

/// Rights to files mean nothing to an administrator.
bool everything_is_allowed() {
  return geteuid() == 0;
}

TEST_CASE("a device and a pipe are written to, never replaced") {
  const Folder folder;
  folder.write("a.formula", sound);
  REQUIRE(mkfifo((folder.path() / "pipe").c_str(), 0600) == 0);
  const auto plain = run("check a.formula", folder.path());
  const auto to_device = run("check a.formula --output /dev/null", folder.path());
  CHECK(to_device.status == 0);
  CHECK(fs::is_character_file("/dev/null"));
  const auto to_pipe =
      shell("sudsmark check a.formula --output pipe & timeout 20 cat pipe", folder);
  CHECK(to_pipe.out == plain.out);
  CHECK(fs::is_fifo(folder.path() / "pipe"));
  for (const std::string path : {"-", "/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"}) {
    CAPTURE(path);
    CHECK(run("check a.formula --output " + path, folder.path()).out == plain.out);
  }
  CHECK_FALSE(fs::exists(folder.path() / "-"));
  CHECK(fs::is_symlink("/dev/stdout"));
  // what is there already stays before it
  const std::string append = "sudsmark check a.formula --output /dev/stdout >>log; ";
  shell(append + append + "true", folder);
  CHECK(contents(folder.path() / "log") == plain.out + plain.out);
}

TEST_CASE("a link is followed, and who may read a file stays as it was") {
  const Folder folder;
  folder.write("a.formula", sound);
  folder.write("kept/report.txt", "old");
  fs::permissions(folder.path() / "kept/report.txt",
                  fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("kept/report.txt", folder.path() / "link.txt");
  fs::create_symlink("kept/new.txt", folder.path() / "dangling.txt");
  CHECK(run("check a.formula --output link.txt", folder.path()).status == 0);
  CHECK(fs::is_symlink(folder.path() / "link.txt"));
  CHECK(holds(contents(folder.path() / "kept/report.txt"), "not a safety assessment"));
  CHECK((fs::status(folder.path() / "kept/report.txt").permissions() & fs::perms::all) ==
        (fs::perms::owner_read | fs::perms::owner_write));
  CHECK(run("check a.formula --output dangling.txt", folder.path()).status == 0);
  CHECK(holds(contents(folder.path() / "kept/new.txt"), "not a safety assessment"));
}

TEST_CASE("no other file is touched, and nothing stays behind") {
  const Folder folder;
  folder.write("a.formula", sound);
  folder.write("r.txt.new", "precious");
  folder.write("victim", "precious");
  fs::create_symlink("victim", folder.path() / "s.txt.new");
  CHECK(run("check a.formula --output r.txt", folder.path()).status == 0);
  CHECK(run("check a.formula --output s.txt", folder.path()).status == 0);
  CHECK(contents(folder.path() / "r.txt.new") == "precious");
  CHECK(contents(folder.path() / "victim") == "precious");
  std::string many;
  for (int index = 0; index < 8; ++index) many += "sudsmark check a.formula --output race.txt & ";
  CHECK(shell(many + "wait", folder).err.empty());
  CHECK(contents(folder.path() / "race.txt") == contents(folder.path() / "r.txt"));
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(folder.path())) files += entry.exists() ? 1 : 0;
  CHECK(files == 7);
}

TEST_CASE("no report, baseline or tweak goes over a file that is read") {
  const Folder folder;
  const std::string base = "include \"scents.formula\"\n" + oily;
  const std::string scents = "material \"Ebb Salt\"\n  inci Maris Sal\n  class salt\n  role salt\n";
  const std::string rules =
      "subject: House rules\nauthority: craft\n"
      "sources:\n  - { id: house, kind: common practice, title: the house }\n"
      "rules:\n  - id: little-oil\n    title: Little oil\n    expect: oils <= 3 %\n"
      "    message: \"{oils} of oil\"\n    why: So we do.\n    remedy: Less oil.\n"
      "    sources: [house]\n";
  folder.write("a.formula", oily);
  folder.write("house/house.yaml", rules);
  folder.write("b.json", "{\"baseline\": 2, \"findings\": []}");
  fs::create_symlink("a.formula", folder.path() / "link.formula");
  fs::create_hard_link(folder.path() / "a.formula", folder.path() / "hard.formula");
  const std::string reads = " --rules house --baseline b.json a.formula";
  for (const std::string arguments :
       {"check --output a.formula", "check --output ./house/../a.formula",
        "check --output link.formula", "check --output hard.formula",
        "check --format json=a.formula", "check --format html=house/house.yaml",
        "check --write-baseline link.formula", "check --write-baseline house/house.yaml",
        "check --write-baseline b.json", "check --output b.json"}) {
    CAPTURE(arguments);
    const auto ran = run(arguments + reads, folder.path());
    CHECK(ran.status == 2);
    CHECK(holds(ran.err, "itself, which this command reads"));
    CHECK(contents(folder.path() / "a.formula") == oily);
    CHECK(contents(folder.path() / "house/house.yaml") == rules);
    CHECK(contents(folder.path() / "b.json") == "{\"baseline\": 2, \"findings\": []}");
  }
  const auto piped = shell("sudsmark check - --output a.formula <a.formula", folder);
  CHECK(piped.status == 2);
  CHECK(contents(folder.path() / "a.formula") == oily);
  const auto tweak = run("suggest --write link.formula --replace a.formula", folder.path());
  CHECK(tweak.status == 2);
  CHECK(contents(folder.path() / "a.formula") == oily);
  CHECK(fs::is_symlink(folder.path() / "link.formula"));

  folder.write("whole.formula", base);
  folder.write("scents.formula", scents);
  CHECK(run("check whole.formula --output scents.formula", folder.path()).status == 2);
  CHECK(contents(folder.path() / "scents.formula") == scents);
}

TEST_CASE("one file is not written twice, whatever it is called") {
  const Folder folder;
  folder.write("a.formula", sound);
  folder.write("r.txt", "");
  fs::create_symlink("r.txt", folder.path() / "l.txt");
  const auto linked =
      run("check a.formula --format json=r.txt --format sarif=l.txt", folder.path());
  CHECK(linked.status == 2);
  CHECK(holds(linked.err, "two formats"));
  CHECK(run("check a.formula --format json=n.txt --format sarif=./n.txt", folder.path()).status ==
        2);
  const auto both = run("check a.formula --output n.txt --write-baseline ./n.txt", folder.path());
  CHECK(both.status == 2);
  CHECK_FALSE(fs::exists(folder.path() / "n.txt"));
}

TEST_CASE("errors of reading and writing say why") {
  const Folder folder;
  folder.write("a.formula", sound);
  fs::create_directory(folder.path() / "sub");
  const auto err = [&](const std::string& arguments) {
    const auto ran = run(arguments, folder.path());
    CHECK(ran.status == 2);
    return ran.err;
  };
  CHECK(holds(err("check none.formula"), "sudsmark: error: none.formula: cannot be read: no such"));
  CHECK(holds(err("check a.formula --rules none.yaml"), "cannot be read: no such file"));
  CHECK(holds(err("check a.formula --baseline sub"), "cannot be read: it is a folder"));
  CHECK(holds(err("check a.formula --output none/r.txt"), "there is no such folder"));
  CHECK(holds(err("check a.formula --output a.formula/r.txt"), "should be its folder"));
  CHECK(holds(err("check a.formula --write-baseline sub"), "it is a folder"));
  CHECK(holds(err("check /dev/null"), "it is a device"));
  folder.write("lost.formula", "include \"none.formula\"\n" + sound);
  CHECK(holds(err("check lost.formula"), "'none.formula' is not read: no such file"));
  if (everything_is_allowed()) return;
  folder.write("shut.formula", sound);
  fs::permissions(folder.path() / "shut.formula", fs::perms::none);
  CHECK(holds(err("check shut.formula"), "no permission"));
  CHECK(holds(err("check a.formula --output shut.formula"), "no permission"));
}

TEST_CASE("in a folder nothing is passed over in silence") {
  const Folder folder;
  folder.write("mixes/a.formula", sound);
  folder.write("other/secret.formula", "root");
  fs::create_symlink("nothing.formula", folder.path() / "mixes/dangling.formula");
  fs::create_symlink("a.formula", folder.path() / "mixes/again.formula");
  fs::create_symlink("../other/secret.formula", folder.path() / "mixes/leads-out.formula");
  fs::create_symlink("../other", folder.path() / "mixes/linked");
  const auto ran = run("check mixes", folder.path());
  CHECK(ran.status == 2);
  CHECK(holds(ran.err,
              "sudsmark: error: mixes/dangling.formula: cannot be read: it is a link to what"));
  CHECK(holds(ran.err,
              "sudsmark: error: mixes/leads-out.formula: cannot be read: it is a link that"));
  CHECK(holds(ran.err, "note: 'mixes/linked' is a link to a folder"));
  CHECK_FALSE(holds(ran.err, "root"));
  CHECK(holds(ran.out, "mixes/a.formula\n"));
  CHECK(holds(ran.out, "mixes/again.formula\n"));
  CHECK(holds(run("check --allow-outside mixes", folder.path()).err,
              "mixes/leads-out.formula:1:1: error: 'root'"));
  fs::create_directory(folder.path() / "empty");
  CHECK(holds(run("check empty", folder.path()).err, "no *.formula stands in this folder"));
  if (everything_is_allowed()) return;
  folder.write("shut/in/b.formula", sound);
  fs::permissions(folder.path() / "shut/in", fs::perms::none);
  const auto shut = run("check shut", folder.path());
  fs::permissions(folder.path() / "shut/in", fs::perms::owner_all);
  CHECK(shut.status == 2);
  CHECK(holds(shut.err, "sudsmark: error: shut/in: cannot be read: no permission"));
  CHECK_FALSE(holds(shut.err, "no *.formula"));
}

TEST_CASE("an include through a link stays in the folder, unless it may leave") {
  const Folder folder;
  const std::string scents = "material \"Ebb Salt\"\n  inci Maris Sal\n  class salt\n  role salt\n";
  folder.write("mixes/a.formula", "include \"out.formula\"\n" + sound);
  folder.write("elsewhere.formula", "phase \"x\"\n  1 g kaolin\n");
  fs::create_symlink("../elsewhere.formula", folder.path() / "mixes/out.formula");
  const auto kept = run("check mixes/a.formula", folder.path());
  CHECK(kept.status == 2);
  CHECK(holds(kept.err, "leads out of the folder of the formula"));
  const auto allowed = run("check --allow-outside mixes/a.formula", folder.path());
  CHECK_FALSE(holds(allowed.err, "cannot be read"));
}

TEST_CASE("what never ends is not waited for") {
  const Folder folder;
  folder.write("a.formula", sound);
  folder.write("b.formula", "include \"pipe.formula\"\n" + sound);
  REQUIRE(mkfifo((folder.path() / "pipe.formula").c_str(), 0600) == 0);
  for (const std::string arguments :
       {"check --rules pipe.formula a.formula", "check --baseline pipe.formula a.formula",
        "check b.formula", "check ."}) {
    CAPTURE(arguments);
    const auto ran = shell("sudsmark " + arguments, folder);
    CHECK(ran.status == 2);
    CHECK(holds(ran.err, "it is a pipe"));
  }
  const auto endless = run("drill --count 1", folder.path(), std::string(100'000, 'x'));
  CHECK(endless.status == 2);
  CHECK(holds(endless.err, "more than 1000 bytes"));
  // a pipe that is named is meant
  const auto named =
      shell("sudsmark check pipe.formula & timeout 20 cat a.formula >pipe.formula; wait", folder);
  CHECK(holds(named.out, "kept: "));
  CHECK(named.err.empty());
}

}  // namespace
