// Files that nobody wrote: every case of the language cut short or with bytes changed. Whatever
// comes of it, reading ends, errors point into the file and speak plainly, and what is read without
// an error prints and reads back as the same tree.
#include <doctest/doctest.h>

#include <array>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "assembled.h"
#include "case_files.h"
#include "formula/parse.h"
#include "formula/print.h"

namespace sudsmark::formula::test {
namespace {

constexpr int mutations = 6000;
constexpr std::array<std::string_view, 28> scraps{
    "\"",      "\\",      "#",       ",",        " - ",    "to ",   "%",
    " g ",     "per kg ", "0",       "1/3",      "1e9",    "q.s. ", "\n",
    "\r\n",    "\t",      "\xC3",    "\xE2\x80", "\0",     " of ",  "(",
    "include", "phase ",  "premix ", "tweak ",   "until ", "keep ", "5 bags "};

class Mutator {
 public:
  explicit Mutator(unsigned seed) : random_(seed) {}

  std::string mutated(std::string text) {
    for (std::size_t change = 0; change <= below(3); ++change) {
      const std::size_t at = below(text.size() + 1);
      switch (below(7)) {
        case 0:
          text.resize(at);
          break;
        case 1:
          if (at < text.size()) text[at] = static_cast<char>(below(256));
          break;
        case 2:
          text.insert(at, scraps[below(scraps.size())]);
          break;
        case 3:
          text.erase(at, 1 + below(4));
          break;
        case 4:
          text.insert(at, text.substr(below(text.size() + 1), below(60)));
          break;
        case 5:
          if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
          break;
        default:
          if (at < text.size()) std::swap(text[at], text[below(text.size())]);
      }
    }
    return text;
  }

 private:
  std::size_t below(std::size_t bound) {
    return bound == 0 ? 0 : std::uniform_int_distribution<std::size_t>(0, bound - 1)(random_);
  }

  std::mt19937 random_;
};

std::vector<std::string> originals() {
  std::vector<std::string> texts;
  for (const std::string_view folder :
       {"tests/formula/cases", "fixtures/malformed", "fixtures/formulas"}) {
    for (const auto& path : testing::case_files(std::string(folder), ".formula")) {
      texts.push_back(testing::file_contents(path));
    }
  }
  return texts;
}

void check_diagnostics(const text::Diagnostics& diagnostics, const text::Sources& sources) {
  for (const text::Diagnostic& one : diagnostics.in_order()) {
    const std::string sentence = text::sentence(one);
    CHECK_FALSE(sentence.empty());
    for (const std::string_view strange : {"boost", "x3", "::", "{", "lambda"}) {
      // a hole that was left open, or the name of a type
      const bool quoted = sentence.find('\'') != std::string::npos;
      CHECK_MESSAGE((quoted || sentence.find(strange) == std::string::npos), sentence);
    }
    REQUIRE_FALSE(one.places.empty());
    for (const Span& place : one.places) {
      REQUIRE(place.somewhere());
      CHECK(place.begin <= place.end);
      CHECK(place.end <= sources[place.file].text().size());
    }
  }
}

}  // namespace

TEST_CASE("mutated files never break the reader, and what reads well prints and reads back") {
  const std::vector<std::string> texts = originals();
  Mutator mutator(20261125);
  int sound = 0;
  for (int run = 0; run < mutations; ++run) {
    const std::string& original = texts[static_cast<std::size_t>(run) % texts.size()];
    const std::string text = mutator.mutated(original);
    CAPTURE(text);
    text::Sources sources;
    const text::FileIndex file = sources.add("a.formula", text);
    text::Diagnostics diagnostics;
    const Document document = parse(sources, file, diagnostics);
    CHECK(document.whole == diagnostics.empty());
    CHECK(diagnostics.count() <= text::Diagnostics::most);
    check_diagnostics(diagnostics, sources);
    if (diagnostics.empty()) {
      ++sound;
      const std::string printed = print(document);
      CAPTURE(printed);
      const text::FileIndex again = sources.add("again.formula", printed);
      text::Diagnostics none;
      const Document reread = parse(sources, again, none);
      CHECK(listing(none, sources, again).empty());
      CHECK(dump(reread, sources, false) == dump(document, sources, false));
    }
    // a tweak of whatever it is
    const Assembled tweaked =
        assembled({{"t.formula", "tweak t of \"a.formula\"\n  set kaolin to 5 %\n  remove mica\n"},
                   {"a.formula", text}},
                  "t.formula", {.partial = true});
    CHECK((tweaked.card.has_value() || !tweaked.errors.empty()));
  }
  CHECK(sound > mutations / 20);
}

TEST_CASE("every sound case prints and reads back as the same tree") {
  int sound = 0;
  for (const std::string& text : originals()) {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const Document document = parse(sources, sources.add("a.formula", text), diagnostics);
    if (!diagnostics.empty()) continue;
    ++sound;
    CAPTURE(text);
    text::Diagnostics none;
    const Document again = parse(sources, sources.add("b.formula", print(document)), none);
    CHECK(none.empty());
    CHECK(dump(again, sources, false) == dump(document, sources, false));
    CHECK(print(again) == print(document));
  }
  CHECK(sound >= 40);
}

}  // namespace sudsmark::formula::test
