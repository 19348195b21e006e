// Inputs made to take all time or memory: each is answered, or refused with the bound named. What
// is measured here is memory, by a limit on the address space; nothing depends on time.
#include <doctest/doctest.h>

#include <string>

#include "alike.h"
#include "process.h"
#include "where.h"

namespace {

using test::Folder;
using test::run;

const std::string head =
    "formula \"t\"\n  product bubble bar\n  batch 10 kg\nphase \"a\"\n"
    "  q.s. sodium bicarbonate\n";

std::string rules_over(const std::string& each, const std::string& expect, int many) {
  std::string out = "subject: x\nauthority: craft\nrules:\n";
  for (int at = 0; at < many; ++at) {
    out += "  - { id: r" + std::to_string(at) + ", title: t, message: m, each: " + each +
           ", expect: \"" + expect + "\" }\n";
  }
  return out;
}

/// Runs in an address space of half a gigabyte; sanitizers need more than that for themselves.
test::Ran bounded(const std::string& arguments, const Folder& folder) {
  if (sudsmark::testing::sanitized) return run(arguments, folder.path());
  const std::string program = "'" + sudsmark::testing::program().string() + "'";
  return run("--version >/dev/null && ulimit -v 524288 && " + program + " " + arguments,
             folder.path());
}

}  // namespace

TEST_CASE("eight million brackets in a file of rules are refused, and take no gigabytes") {
  const Folder folder;
  folder.write("x.formula", head);
  for (const char bracket : {'[', '{'}) {
    folder.write("rules.yaml", "subject: x\nrules: " + std::string(8'000'000, bracket));
    const auto ran = bounded("check --rules rules.yaml x.formula", folder);
    CHECK(ran.status == 2);
    CHECK(ran.err.find("commas and brackets") != std::string::npos);
  }
}

TEST_CASE("reports of many formulas leave formula by formula") {
  const Folder folder;
  const auto demo = [](const std::string& name) {
    return test::contents(sudsmark::testing::source_dir() / "fixtures/formulas" / name);
  };
  const std::string puck = demo("harbour-puck.formula");
  for (const char* const name : {"quillmere-workshop.formula", "quillmere-scents.formula"}) {
    folder.write(std::string("all/") + name, demo(name));
  }
  // more than a megabyte each, if they were kept
  const int many = sudsmark::testing::sanitized ? 30 : 450;
  for (int at = 0; at < many; ++at) {
    folder.write("all/" + std::to_string(at) + ".formula", puck);
  }
  folder.write("all/none.formula", "formula \"None\"\n  batch 0,5 kg\n");
  const auto ran =
      bounded("check --jobs 1 --format sarif=all.sarif --format html=pages/ all", folder);
  CHECK(ran.status == 2);
  CHECK(ran.err.find("0,5") != std::string::npos);
  const std::string log = test::contents(folder.path() / "all.sarif");
  CHECK(log.find("\"ruleId\":\"spelling\"") != std::string::npos);
  CHECK(log.find("\"executionSuccessful\":false") != std::string::npos);
  const std::string front = test::contents(folder.path() / "pages/index.html");
  CHECK(front.find("What could not be read") != std::string::npos);
  const std::string last = "all-" + std::to_string(many - 1) + ".html";
  CHECK(front.find("href=\"" + last + "\"") != std::string::npos);
  CHECK(test::contents(folder.path() / "pages" / last).find("</html>") != std::string::npos);
}

TEST_CASE("a thousand rules over a thousand tasks are refused with the bound") {
  const Folder folder;
  std::string text = head;
  for (int at = 0; at < 1'000; ++at) {
    text += "task \"t" + std::to_string(at) + "\"\n  handles 1 kg sodium bicarbonate\n";
  }
  folder.write("x.formula", text);
  folder.write("rules.yaml", rules_over("task", "task.mass <= 5 kg", 1'000));
  const auto ran = bounded("check --bare --rules rules.yaml x.formula", folder);
  CHECK(ran.status == 2);
  CHECK(ran.err.find("at most 200000 times") != std::string::npos);
}

TEST_CASE("a batch beyond what a formula may state is no batch") {
  const Folder folder;
  folder.write("x.formula", head);
  CHECK(run("check --batch 99999999999999kg x.formula", folder.path()).status == 2);
  CHECK(run("check --batch 9kg x.formula", folder.path()).status != 2);
}
