// What a rule says of a formula: each verdict, its level, its place and its words.
#include <doctest/doctest.h>

#include <cmath>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

constexpr std::string_view emulsifier_rule =
    "    expect: emulsifier / (oils + scent) >= 0.5\n"
    "    message: '{emulsifier} of emulsifier stands against {oils + scent}: "
    "{emulsifier / (oils + scent)} to 1'\n"
    "    sources: [book]\n";

std::string bar(std::string_view lines, std::string_view statements = "") {
  return "formula \"test\"\n product bubble bar\n" + std::string(statements) + "phase \"all\"\n" +
         std::string(lines) + " q.s. bicarb\n";
}

}  // namespace

TEST_CASE("pass, fail, review and not applicable") {
  CHECK(verdict_of(emulsifier_rule, bar(" 3 % sweet oil\n 2 % binder 80\n")) ==
        "pass none line 5: The rule (0.67; at least 0.5)\n");
  CHECK(verdict_of(emulsifier_rule, bar(" 5 % sweet oil\n 1.5 % binder 80\n")) ==
        "fail warning line 5: 1.5 % of emulsifier stands against 5 %: 0.3 to 1; at least 0.5\n");
  CHECK(verdict_of(emulsifier_rule, bar(" 3 - 5 % sweet oil\n 2 % binder 80\n")) ==
        "review warning line 5: it depends on the true figures: 2 % of emulsifier stands against "
        "3 to 5 %: 0.4 to 0.67 to 1; at least 0.5\n");
  CHECK(verdict_of("    when: oils > 1 %\n" + std::string(emulsifier_rule),
                   bar(" 2 % binder 80\n")) == "notApplicable\n");
}

TEST_CASE("a limit on an end of a range is broken by what is certain, or by what is possible") {
  const std::string certain = "    expect: lowest(oils) <= 4 %\n    message: '{lowest(oils)}'\n";
  const std::string possible = "    expect: highest(oils) <= 4 %\n    message: '{highest(oils)}'\n";
  const std::string around = bar(" 3 - 5 % sweet oil\n");
  const std::string over = bar(" 4.5 - 5 % sweet oil\n");
  CHECK(verdict_of(certain + "    sources: [book]\n", around).starts_with("pass "));
  CHECK(verdict_of(possible + "    sources: [book]\n", around).starts_with("fail warning"));
  CHECK(verdict_of(certain + "    sources: [book]\n", over).find("4.5 %") != std::string::npos);
}

TEST_CASE("water that is stated by its figures is none of the named ones") {
  const std::string rule =
      "    when: bath.water in {hard, figures}\n    expect: bath.water = figures\n"
      "    message: hard\n"
      "    sources: [book]\n";
  const std::string figures = " water alkalinity 150 mg/l, hardness 155 mg/l, ph 7.5\n";
  CHECK(verdict_of(rule, bar("", figures)).starts_with("pass "));
  CHECK(verdict_of(rule, bar("", " water hard\n")).starts_with("fail "));
  CHECK(verdict_of(rule, bar("", " water soft\n")) == "notApplicable\n");
}

TEST_CASE("a figure never looks equal to the limit that it breaks") {
  CHECK(verdict_of(emulsifier_rule, bar(" 5 % sweet oil\n 2.499 % binder 80\n")) ==
        "fail warning line 5: 2.5 % of emulsifier stands against 5 %: 0.4998 to 1; at least 0.5\n");
}

TEST_CASE("a limit that is met to the letter is met") {
  CHECK(verdict_of(emulsifier_rule, bar(" 5 % sweet oil\n 2.5 % binder 80\n")) ==
        "pass none line 5: The rule (0.5; at least 0.5)\n");
  CHECK(verdict_of("    expect: oils + scent <= 0.3 %\n    message: m\n",
                   bar(" 0.1 % sweet oil\n 0.2 % meadow oil\n")) ==
        "pass none line 4: The rule (0.3 %; at most 0.3 %)\n");
}

TEST_CASE("open names what to find out, and weighs as 'undecided' says") {
  const std::string rule =
      "    when: forming = pressed\n    expect: oils <= 2 %\n"
      "    message: '{oils} of oil'\n";
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n")) ==
        "open note line 4: not known: the forming method (`forming`); would decide \"The rule\"\n");
  CHECK(verdict_of(rule + "    undecided: warning\n", bar(" 3 % sweet oil\n")) ==
        "open warning line 4: not known: the forming method (`forming`); would decide \"The "
        "rule\"\n");
  // what holds however the product is formed passes
  CHECK(verdict_of(rule, bar(" 1 % sweet oil\n")) ==
        "pass none line 4: The rule (1 %; at most 2 %)\n");
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n", " forming pressed\n")) ==
        "fail warning line 5: 3 % of oil; at most 2 %\n");
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n", " forming hand moulded\n")) == "notApplicable\n");
}

TEST_CASE("a 'when' that depends on true figures makes a review") {
  CHECK(verdict_of(
            "    when: oils > 4 %\n    expect: emulsifier >= 1 %\n    message: '{emulsifier}'\n",
            bar(" 3 - 5 % sweet oil\n")) ==
        "review warning line 1: it depends on the true figures whether this applies: 0 %; at least "
        "1 %\n");
}

TEST_CASE("several things missing") {
  CHECK(verdict_of("    expect: forming = pressed and users = adults and market = GB and\n"
                   "      bath.water = soft and workshop.mask = none\n    message: m\n",
                   bar("")) ==
        "open note line 1: not known: the forming method (`forming`), who uses it (`users`), where "
        "it is sold (`market`) and 2 more; would decide \"The rule\"\n");
}

TEST_CASE("limits in words") {
  const auto wanted = [](std::string_view expect) {
    return verdict_of("    expect: " + std::string(expect) + "\n    message: no\n",
                      bar(" 3 % sweet oil\n", " batch 2 kg\n"));
  };
  CHECK(wanted("oils < 3 %") == "fail warning line 5: no; less than 3 %\n");
  CHECK(wanted("oils > 3 %") == "fail warning line 5: no; more than 3 %\n");
  CHECK(wanted("oils = 2 %") == "fail warning line 5: no; 2 %\n");
  CHECK(wanted("oils != 3 %") == "fail warning line 5: no; anything but 3 %\n");
  CHECK(wanted("oils <= 0 %") == "fail warning line 5: no; none wanted\n");
  CHECK(wanted("oils between 4 % and 9 %") ==
        "fail warning line 5: no; at least 4 % and at most 9 %\n");
  CHECK(wanted("not (oils between 1 % and 9 %)") ==
        "fail warning line 5: no; less than 1 % or more than 9 %\n");
  CHECK(wanted("not (oils > 2 %)") == "fail warning line 5: no; at most 2 %\n");
  // the limit is the side that is written as a figure, in its own unit
  CHECK(wanted("5 % <= oils") == "fail warning line 5: no; at least 5 %\n");
  CHECK(wanted("supplied(oil) <= 6 g per kg") == "fail warning line 5: no; at most 6 g/kg\n");
  CHECK(wanted("mass(oil) <= 0.05 kg") == "fail warning line 5: no; at most 0.05 kg\n");
  // of two, the one that is broken
  CHECK(wanted("oils < 4 % and oils < 2 %") == "fail warning line 5: no; less than 2 %\n");
  CHECK(wanted("oils > 4 % or oils > 5 %") == "fail warning line 5: no; more than 4 %\n");
  CHECK(wanted("if forming = pressed then oils < 2 % else oils < 1 %") ==
        "fail warning line 5: no; less than 2 %\n");
  // nothing is measured where nothing is compared
  CHECK(wanted("not holds(oil)") == "fail warning line 5: no\n");
  CHECK(wanted("product = shampoo bar") == "fail warning line 2: no\n");
}

TEST_CASE("measured and limit") {
  const auto ends = [](std::string_view expect) {
    Workbench bench(rule_file("    expect: " + std::string(expect) + "\n    message: m\n"));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const blend::Blend blend = bench.mix(bar(" 3 % sweet oil\n"));
    const Asked asked = ask(bench, blend);
    REQUIRE(asked.verdicts.size() == 1);
    const rules::Verdict& verdict = asked.verdicts.front();
    REQUIRE(verdict.measured.has_value());
    CHECK(verdict.measured->value.holds(0.03));
    CHECK(verdict.measured->unit == "%");
    REQUIRE(verdict.limit.has_value());
    return verdict.limit->value;
  };
  CHECK(ends("oils >= 5 %") == quantity::Range(0.05, HUGE_VAL));
  CHECK(ends("oils <= 5 %") == quantity::Range(-HUGE_VAL, 0.05));
  CHECK(ends("5 % > oils") == quantity::Range(-HUGE_VAL, 0.05));
  CHECK(ends("oils between 3 % and 9 %") == quantity::Range(0.03, 0.09));
  CHECK(ends("oils = 3 %") == quantity::Range(0.03));
  CHECK(ends("not (oils > 5 %)") == quantity::Range(-HUGE_VAL, 0.05));
}

TEST_CASE("places: where a maker would change it") {
  const auto line = [](std::string_view keys) {
    const std::string said = verdict_of(
        std::string(keys) + "    message: m\n",
        "formula \"test\"\n product bubble bar\n forming pressed\n batch 2 kg\nphase \"all\"\n"
        " 1 % sweet oil\n 3 % hard butter\n 2 % binder 80\n q.s. bicarb\n");
    return said.substr(said.find("line"), said.find(':') - said.find("line"));
  };
  CHECK(line("    expect: oils < 1 %\n") == "line 7");
  CHECK(line("    expect: emulsifier / oils > 5\n") == "line 8");
  CHECK(line("    expect: share(oil and not butter) < 1 %\n") == "line 6");
  CHECK(line("    expect: scent + emulsifier > 5 %\n") == "line 8");
  CHECK(line("    expect: batch.mass < 1 kg\n") == "line 4");
  CHECK(line("    expect: forming = loose\n") == "line 3");
  CHECK(line("    expect: product is rinse-off\n") == "line 2");
  CHECK(line("    expect: looks_like_food\n") == "line 1");
  CHECK(line("    expect: scent > 1 %\n") == "line 1");
  CHECK(line("    expect: oils < 1 %\n    place: emulsifier\n") == "line 8");
  CHECK(line("    expect: oils < 1 %\n    place: forming\n") == "line 3");
  CHECK(line("    expect: oils < 1 %\n    place: batch.mass\n") == "line 4");
  CHECK(line("    expect: oils < 1 %\n    place: product\n") == "line 2");
  // what is selected is not there: then as if nothing was said
  CHECK(line("    expect: oils < 1 %\n    place: scent\n") == "line 7");
}

TEST_CASE("a limit from memory may fail and never simply passes") {
  const std::string rule =
      "    expect: oils <= 2 %\n    message: '{oils} of oil'\n"
      "    otherwise: error\n    sources: [memory]\n";
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n")) ==
        "fail error line 4: 3 % of oil; at most 2 %\n");
  CHECK(verdict_of(rule, bar(" 1 % sweet oil\n")) ==
        "review note line 4: the limit is from memory and is to be looked up: The rule (1 %; "
        "at most 2 %)\n");
  // one source that can be looked up is enough
  CHECK(verdict_of("    expect: oils <= 2 %\n    message: m\n    sources: [memory, habit]\n",
                   bar(" 1 % sweet oil\n")) == "pass none line 4: The rule (1 %; at most 2 %)\n");
}

TEST_CASE("division by nothing asks for something") {
  CHECK(verdict_of(emulsifier_rule, bar(" 1 % binder 80\n")) ==
        "open note line 4: not known: an amount of oils + scent that is more than nothing; would "
        "decide "
        "\"The rule\"\n");
  // where there may be some, it depends on how much
  CHECK(verdict_of(emulsifier_rule, bar(" 0 - 3 % sweet oil\n 1 % binder 80\n")) ==
        "review warning line 5: it depends on the true figures: 1 % of emulsifier stands against 0 "
        "to 3 %: at least 0.33 to 1; at least 0.5\n");
}

TEST_CASE("what is undeclared may be any aroma chemical") {
  const std::string rule = "    expect: share(citral) <= 0.1 %\n    message: '{share(citral)}'\n";
  const std::string secret = "fragrance \"Secret\"\n 1 - 2 % linalool\n";
  CHECK(verdict_of(rule, bar(" 2 % Secret\n") + secret) ==
        "open note line 4: not known: what 'Secret' holds undeclared; would decide "
        "\"The rule\"\n");
  CHECK(verdict_of(rule, bar(" 2 % Secret\n") + secret + " undeclared none\n") ==
        "pass none line 1: The rule (0 %; at most 0.1 %)\n");
  CHECK(verdict_of(rule, bar(" 0.05 % Secret\n") + secret) ==
        "pass none line 1: The rule (0 to 0.05 %; at most 0.1 %)\n");
}

TEST_CASE("allowed") {
  const std::string rule = "    expect: oils <= 2 %\n    message: '{oils} of oil'\n";
  const std::string allow = " allow the-rule because \"two testers\"";
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n", allow + "\n")) ==
        "fail warning line 5: 3 % of oil; at most 2 % [allowed: two testers]\n");
  CHECK(verdict_of(rule, bar(" 2 - 3 % sweet oil\n", allow + " until 2026-11-25\n")) ==
        "review warning line 5: it depends on the true figures: 2 to 3 % of oil; at most 2 "
        "% [allowed: two testers]\n");
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n", allow + " until 2026-11-24\n")) ==
        "fail warning line 5: 3 % of oil; at most 2 %; it was allowed until 2026-11-24\n");
  CHECK(verdict_of(rule, bar(" 1 % sweet oil\n", allow + "\n")) ==
        "pass none line 5: The rule (1 %; at most 2 %)\n");
  const std::string law = "authority: law\nmarkets: [GB, EU]\n";
  CHECK(verdict_of(rule + "    otherwise: error\n",
                   bar(" 3 % sweet oil\n", " market GB\n" + allow + "\n"), law) ==
        "fail error line 6: 3 % of oil; at most 2 %; what the law calls an error cannot be "
        "allowed\n");
  CHECK(verdict_of(rule, bar(" 3 % sweet oil\n", " market GB\n" + allow + "\n"), law) ==
        "fail warning line 6: 3 % of oil; at most 2 % [allowed: two testers]\n");
}

TEST_CASE("an allow of a rule that is not known is an error") {
  Workbench bench(rule_file("    expect: oils <= 2 %\n    message: m\n"));
  const blend::Blend blend =
      bench.mix(bar("", " allow the-rul because \"a\"\n allow The-Rule because \"b\"\n"));
  text::Diagnostics diagnostics;
  rules::check_allows(bench.book.ruleset, blend, diagnostics);
  CHECK(printed(bench.sources, diagnostics) ==
        "3:8 unknown-allow no rule is called 'the-rul'; perhaps 'the-rule'\n");
}

TEST_CASE("a law holds in its markets") {
  const std::string rule = "    expect: oils <= 2 %\n    message: '{oils} in {market}'\n";
  const std::string law = "authority: law\nmarkets: [GB, EU]\n";
  const auto sold = [&](std::string_view market) {
    return verdict_of(rule, bar(" 3 % sweet oil\n", market), law);
  };
  CHECK(sold(" market GB, US\n") == "fail warning line 5: 3 % in GB and US; at most 2 %\n");
  CHECK(sold(" market US\n") == "notApplicable\n");
  CHECK(sold("") ==
        "open note line 4: not known: where it is sold (`market`); would decide "
        "\"The rule\"\n");
  CHECK(verdict_of(rule, bar(" 1 % sweet oil\n"), law) ==
        "pass none line 4: The rule (1 %; at most 2 %)\n");

  Workbench bench(rule_file(rule, law));
  const blend::Blend blend = bench.mix(bar(" 3 % sweet oil\n", " market US\n"));
  CHECK(ask(bench, blend, {test_day, {"EU"}, {}, true}).text ==
        "fail warning line 5: 3 % in EU; at most 2 %\n");
}

TEST_CASE("dates of a law") {
  using std::chrono::year;
  const auto day = [](int y, unsigned m, unsigned d) {
    return rules::Day(year(y), std::chrono::month(m), std::chrono::day(d));
  };
  const auto asked = [&](std::string_view dates, std::string_view batch_made,
                         const rules::Day& on) {
    Workbench bench(rule_file("    expect: oils <= 2 %\n    message: no\n" + std::string(dates)));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const blend::Blend blend = bench.mix(bar(" 3 % sweet oil\n", batch_made));
    return ask(bench, blend, {on, {}, {}, true}).verdicts.front().kind == sudsmark::Kind::fail;
  };
  const std::string plain = "    from: 2026-07-31\n";
  CHECK_FALSE(asked(plain, "", day(2026, 7, 30)));
  CHECK(asked(plain, "", day(2026, 7, 31)));
  // without a shelf date it holds for all from that day
  CHECK(asked(plain, " batch made 2020-01-01\n", day(2026, 7, 31)));
  // a product that is to be sold later must meet what holds by then
  CHECK(asked(plain, " batch made 2026-09-01\n", day(2026, 1, 1)));

  const std::string shelf = plain + "    shelf: 2028-07-31\n";
  CHECK_FALSE(asked(shelf, " batch made 2026-07-30\n", day(2026, 11, 25)));
  CHECK_FALSE(asked(shelf, " batch made 2026-07-30\n", day(2028, 7, 30)));
  CHECK(asked(shelf, " batch made 2026-07-30\n", day(2028, 7, 31)));
  CHECK(asked(shelf, " batch made 2026-07-31\n", day(2026, 7, 31)));
  CHECK(asked(shelf, "", day(2026, 7, 31)));

  const std::string old = "    until: 2026-07-31\n";
  CHECK(asked(old, "", day(2026, 7, 30)));
  CHECK_FALSE(asked(old, "", day(2026, 7, 31)));
}

TEST_CASE("only and without") {
  Workbench bench(
      "subject: s\nauthority: craft\nrules:\n"
      "  - { id: a, title: t, expect: oils <= 2 %, message: m }\n"
      "  - { id: b, title: t, expect: oils <= 2 %, message: m }\n"
      "  - { id: c, title: t, expect: oils <= 2 %, message: m }\n");
  std::vector<std::string> unknown;
  const auto chosen = [&](const std::vector<std::string>& only,
                          const std::vector<std::string>& without) {
    return rules::chosen_rules(bench.book.ruleset, only, without, unknown);
  };
  CHECK(chosen({}, {}) == std::vector<bool>{true, true, true});
  CHECK(chosen({"b"}, {}) == std::vector<bool>{false, true, false});
  CHECK(chosen({}, {"b", "d"}) == std::vector<bool>{true, false, true});
  CHECK(unknown == std::vector<std::string>{"d"});
  const blend::Blend blend = bench.mix(bar(""));
  CHECK(ask(bench, blend, {test_day, {}, chosen({"b"}, {}), true}).verdicts.size() == 1);
}

TEST_CASE("passes without words where nobody reads them") {
  Workbench bench(rule_file("    expect: oils <= 2 %\n    message: m\n"));
  const blend::Blend blend = bench.mix(bar(""));
  CHECK(ask(bench, blend, {test_day, {}, {}, false}).text == "pass none line 1: \n");
}
