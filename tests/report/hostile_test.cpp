// A formula whose names are made to trip over comes out harmless in every format.
#include <algorithm>
#include <set>
#include <string>
#include <string_view>

#include <sudsmark/baseline.h>
#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "estuary.h"
#include "where.h"
#include "wording/code_points.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

std::string hostile_text() {
  return file_contents(testing::source_dir() / "tests/report/hostile/names.formula");
}

/// A file with a name of the same sort.
RunResult hostile(const Rulesets& rulesets) {
  return checked("a\"><script>alert(0)</script>\x1b[2J\u202E{0}.formula", hostile_text(), rulesets);
}

/// The same formula, its label and its bench sheet, without verdicts.
RunResult hostile_label(const Rulesets& rulesets) {
  CheckOptions options = in_full();
  options.label = true;
  options.verdicts = false;
  RunResult run = check({"\"></script>\x07\u2067.formula",
                         hostile_text() + "\nlabel\n  ingredients \"<script>alert(9)</script>, "
                                          "]]>, {0}, abc\u202Edef\"\n"},
                        rulesets, options);
  return run;
}

/// A tweak of it with names and edits of the same sort, against it.
Comparison hostile_comparison(const Rulesets& rulesets) {
  const std::filesystem::path folder = testing::source_dir() / "tests/report/hostile";
  CheckOptions options = in_full();
  options.read = [&](const std::string& path) { return file_contents(folder / path); };
  const FormulaText tweak{"tweak.formula", file_contents(folder / "tweak.formula")};
  const auto base = base_of(tweak, options);
  REQUIRE(base);
  auto compared = compare(*base, tweak, rulesets, options);
  REQUIRE(compared.problems.empty());
  REQUIRE(compared);
  return std::move(*compared);
}

/// Marks that turn text around, and control characters but line ends.
std::size_t bad_marks(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size();) {
    const char32_t c = wording::next_code_point(text, at);
    const bool control = (c < 0x20 && c != '\n') || c == 0x7F || (c >= 0x80 && c < 0xA0);
    if (control || wording::turns_text(c)) ++count;
  }
  return count;
}

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// The names of all tags of a page, and whether every attribute is quoted.
std::set<std::string> tags(const std::string& page) {
  std::set<std::string> out;
  const std::size_t style = page.find("</style>");
  REQUIRE(style != std::string::npos);
  for (std::size_t at = style; (at = page.find('<', at)) != std::string::npos;) {
    std::size_t end = at + 1;
    while (end < page.size() && page[end] != ' ' && page[end] != '>' && page[end] != '\n') ++end;
    out.insert(page.substr(at + 1, end - at - 1));
    // to the end of the tag: quotes come in pairs
    bool quoted = false;
    while (at < page.size() && (quoted || page[at] != '>')) {
      if (page[at] == '"') quoted = !quoted;
      ++at;
    }
  }
  return out;
}

/// No mark that turns text around, and no tag that the pages do not have on their own.
/// The page that leads to the page of a run's only formula.
std::string overview(const RunResult& run, const std::string& address, const Rulesets& rulesets) {
  const auto begun = find_report(Command::check, "html")->begin_overview(rulesets, {});
  begun->add(run.formulas.front(), address);
  return begun->written(run);
}

void check_page(const std::string& page) {
  CHECK(bad_marks(page) == 0);
  for (const std::string& tag : tags(page)) {
    CAPTURE(tag);
    const std::string bare = tag.starts_with('/') ? tag.substr(1) : tag;
    static const std::set<std::string> known{
        "a",       "article",    "b",        "bdi",    "body",    "caption", "circle", "cite",
        "code",    "dd",         "defs",     "desc",   "details", "summary", "div",    "dl",
        "dt",      "figcaption", "figure",   "footer", "h1",      "h2",      "h3",     "header",
        "html",    "li",         "line",     "main",   "nav",     "ol",      "p",      "path",
        "pattern", "polygon",    "polyline", "q",      "rect",    "section", "small",  "span",
        "style",   "svg",        "table",    "tbody",  "td",      "text",    "th",     "thead",
        "time",    "title",      "tr",       "ul",     "head"};
    CHECK(known.count(bare) == 1);
  }
}

}  // namespace

TEST_CASE("hostile names in every format") {
  const Rulesets rulesets = Rulesets::built_in();
  const RunResult run = hostile(rulesets);
  REQUIRE(run.problems.empty());
  REQUIRE(run.formulas.size() == 1);
  REQUIRE(run.formulas.front().name.find("<script>") != std::string::npos);

  CHECK(bad_marks(written(Command::check, "text", &run, {true, false, false})) == 0);
  CHECK(bad_marks(written(Command::measure, "text", &run)) == 0);
  CHECK(bad_marks(written(Command::check, "json", &run, rulesets)) == 0);
  CHECK(bad_marks(written(Command::measure, "json", &run)) == 0);
  CHECK(bad_marks(written(Command::check, "sarif", &run, rulesets, {true, false, false})) == 0);
  CHECK(bad_marks(baseline_text(run)) == 0);

  check_page(written(Command::check, "html", &run, rulesets));
  check_page(overview(run, "a\"><script>b</script>.html", rulesets));
  check_page(written(Command::sheet, "html", &run));
  const RunResult label = hostile_label(rulesets);
  REQUIRE(label.formulas.size() == 1);
  CHECK(bad_marks(written(Command::label, "text", &label, {true, false, false})) == 0);
  CHECK(bad_marks(written(Command::label, "json", &label)) == 0);
  CHECK(bad_marks(written(Command::sheet, "text", &label)) == 0);
  check_page(written(Command::sheet, "html", &label));
  // a label that is held against what it should say
  const RunResult held = checked("label.formula",
                                 hostile_text() +
                                     "\nlabel\n  ingredients \"abc\u202Edef, ]]>, "
                                     "<b>\"\n",
                                 rulesets);
  CHECK(bad_marks(written(Command::check, "text", &held, {true, false, false})) == 0);
  CHECK(bad_marks(written(Command::check, "sarif", &held, rulesets, {true, false, false})) == 0);
  check_page(written(Command::check, "html", &held, rulesets));

  const Comparison compared = hostile_comparison(rulesets);
  CHECK_FALSE(compared.same());
  CHECK(bad_marks(written(Command::compare, "text", &compared, {true, false, false})) == 0);
  CHECK(bad_marks(written(Command::compare, "json", &compared, rulesets)) == 0);
  const std::string comparison = written(Command::compare, "html", &compared, rulesets);
  check_page(comparison);
  CHECK(comparison.find("&lt;/code&gt;&lt;script&gt;alert(8)") != std::string::npos);
  const std::string page = written(Command::check, "html", &run, rulesets);
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("&lt;script&gt;alert(1)&lt;/script&gt;") != std::string::npos);
}

TEST_CASE("ASCII alone in every format") {
  const Rulesets rulesets = Rulesets::built_in();
  const RunResult run = hostile(rulesets);
  CHECK_FALSE(is_ascii(written(Command::check, "text", &run, {true, false, false})));
  CHECK(is_ascii(written(Command::check, "text", &run, {true, false, true})));
  CHECK(is_ascii(written(Command::measure, "text", &run, {false, false, true})));
  CHECK(is_ascii(written(Command::check, "json", &run, rulesets, {false, false, true})));
  CHECK(is_ascii(written(Command::measure, "json", &run, {false, false, true})));
  CHECK(is_ascii(written(Command::check, "sarif", &run, rulesets, {true, false, true})));
  CHECK(is_ascii(written(Command::check, "html", &run, rulesets, {false, false, true})));
  CHECK(is_ascii(written(Command::sheet, "html", &run, {false, false, true})));
}

TEST_CASE("a baseline of hostile names is read back, and one with hostile words harms nothing") {
  const Rulesets rulesets = Rulesets::built_in();
  const std::string baseline = baseline_text(hostile(rulesets));
  const auto marked = with_baseline(hostile(rulesets), baseline);
  REQUIRE(marked);
  const RunResult& run = *marked;
  CHECK(run.absent.empty());
  for (const Finding& finding : run.formulas.front().findings) {
    CHECK(finding.standing != Standing::fresh);
  }
  // an entry that nobody finds any more, with a message out of somebody else's hands
  std::string forged = baseline;
  const std::string fingerprint = "\"fingerprint\":\"";
  const std::size_t at = forged.find(fingerprint) + fingerprint.size();
  forged.replace(at, 4, "zzzz");
  const std::string message = "\"message\":\"";
  forged.insert(forged.find(message) + message.size(),
                "</style><script>alert(10)</script>\\u202E\\u0007 ");
  const auto read = with_baseline(hostile(rulesets), forged);
  REQUIRE(read);
  const RunResult& other = *read;
  REQUIRE(other.absent.size() == 1);
  CHECK(bad_marks(written(Command::check, "text", &other, {true, false, false})) == 0);
  CHECK(bad_marks(written(Command::check, "json", &other, rulesets)) == 0);
  CHECK(bad_marks(written(Command::check, "sarif", &other, rulesets, {true, false, false})) == 0);
  check_page(written(Command::check, "html", &other, rulesets));
  check_page(overview(other, "a.html", rulesets));
}

TEST_CASE("a link in a message is none") {
  const Rulesets rulesets = Rulesets::built_in();
  RunResult run = hostile(rulesets);
  run.formulas.front().findings.front().message = "see [here](javascript:alert(4))";
  run.formulas.front().findings.front().kind = Kind::fail;
  const std::string log = written(Command::check, "sarif", &run, rulesets);
  CHECK(log.find("see \\\\[here\\\\](javascript:alert(4))") != std::string::npos);
}
