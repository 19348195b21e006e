// `task is H318` and `premix is H318`: hazard statements of a mix, by the mixture rules.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string bar(std::string_view premix, std::string_view more = "") {
  return "formula \"test\"\n product bubble bar\nphase \"all\"\n 1 kg bag\npremix \"bag\" makes 1 "
         "kg\n" +
         std::string(premix) + "task \"tip\"\n handles 1 kg bag\n" + std::string(more);
}

std::string rule(std::string_view each, std::string_view asked) {
  return "    each: " + std::string(each) + "\n    expect: not (" + std::string(asked) +
         ")\n    message: 'caution'\n    sources: [book]\n";
}

}  // namespace

TEST_CASE("a mix has the statements that the mixture rules give it") {
  // a surfactant alone from 1 % on (CLP Annex I, table 3.3.4, from memory)
  CHECK(verdict_of(rule("task", "task is H318"), bar(" 900 g bicarb\n 100 g foam powder\n")) ==
        "fail warning line 8: caution\n");
  CHECK(verdict_of(rule("premix", "premix is H318"), bar(" 900 g bicarb\n 100 g foam powder\n")) ==
        "fail warning line 5: caution\n");
  CHECK(verdict_of(rule("task", "task is H318"), bar(" 995 g bicarb\n 5 g foam powder\n")) ==
        "pass none line 8: The rule: 'tip'\n");
  // several are asked for at once, and what is denied is denied
  CHECK(verdict_of(rule("task", "task is (H334 or H318)"),
                   bar(" 900 g bicarb\n 100 g foam powder\n")) == "fail warning line 8: caution\n");
  CHECK(verdict_of(rule("task", "task is (H315 and not H318)"),
                   bar(" 900 g bicarb\n 100 g foam powder\n")) ==
        "pass none line 8: The rule: 'tip'\n");
}

TEST_CASE("what depends on a supplier's figure, or on a sheet that nobody gave, stays open") {
  const std::string straddles =
      "formula \"test\"\n product bubble bar\n batch 1 kg\nphase \"all\"\n 5 - 15 % foam powder\n"
      " q.s. bicarb\ntask \"tip\"\n handles phase \"all\"\n";
  CHECK(verdict_of(rule("task", "task is H315"), straddles)
            .find("open note line 7: not known: whether "
                  "H315 holds for the mix 'tip'") == 0);
  const std::string unknown = bar(" 900 g bicarb\n 100 g mystery\n",
                                  "material \"mystery\"\n role filler\n form fine powder\n");
  CHECK(verdict_of(rule("task", "task is H318"), unknown)
            .find("the safety data sheet of 'mystery'") != std::string::npos);
}

TEST_CASE("only statements are asked with 'is', and only of tasks and premixes") {
  const auto error = [](const std::string& keys) { return Workbench(rule_file(keys)).errors(); };
  CHECK(error(rule("task", "task is acid"))
            .find("hazard-of-part 'task is' asks for a hazard "
                  "statement") != std::string::npos);
  CHECK(error(rule("premix", "premix is \"Foam powder\"")).find("hazard-of-part") !=
        std::string::npos);
  CHECK(error(rule("portion", "portion is H318")).find("is-of-what") != std::string::npos);
  CHECK(error("    expect: task is H318\n    message: m\n    sources: [book]\n") != "");
}
