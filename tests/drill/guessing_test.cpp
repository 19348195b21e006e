// What somebody gets right who knows nothing and goes by words, lengths and places.
#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <map>
#include <set>
#include <string>

#include "alike.h"
#include "drill/thousand.h"

using namespace sudsmark;

namespace {

/// Words of four letters and more. Worked out here, not by the drill.
std::set<std::string> words_of(const std::string& text) {
  std::set<std::string> out;
  std::string word;
  for (const char c : text + " ") {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (letter) {
      word += static_cast<char>(c | 0x20);
      continue;
    }
    if (word.size() >= 4) out.insert(word.substr(0, 5));
    word.clear();
  }
  return out;
}

double shared(const std::string& one, const std::string& other) {
  const auto a = words_of(one);
  const auto b = words_of(other);
  double out = 0;
  for (const std::string& word : a) out += b.contains(word) ? 1 : 0;
  return out;
}

/// The line that was to be found, as it is shown.
std::string line_of(const Exercise& exercise) {
  std::string line;
  std::uint32_t number = 1;
  for (const char c : exercise.card) {
    if (c == '\n') {
      ++number;
    } else if (number == exercise.lines.front()) {
      line += c;
    }
  }
  return line;
}

/// How often the choice with the highest mark is the right one, of ties its part.
struct Guessed {
  double right = 0;
  double expected = 0;  ///< by chance
  double variance = 0;
  std::size_t asked = 0;
};

using Mark = std::function<double(const Exercise&, const std::string&, std::size_t)>;

void guess(const Exercise& exercise, const std::vector<Choice>& choices, const Mark& mark,
           Guessed& into) {
  if (choices.size() < 2) return;
  double best = -1e9;
  double alike = 0;
  double right = 0;
  for (std::size_t at = 0; at < choices.size(); ++at) {
    const double own = mark(exercise, choices[at].words, at);
    if (own > best) {
      best = own;
      alike = 0;
      right = 0;
    }
    if (own < best) continue;
    ++alike;
    right += choices[at].right ? 1 : 0;
  }
  const double chance = 1.0 / static_cast<double>(choices.size());
  into.right += right / alike;
  into.expected += chance;
  into.variance += chance * (1 - chance);
  ++into.asked;
}

const std::map<std::string, Mark>& guessers() {
  static const std::map<std::string, Mark> all{
      {"the first", [](const Exercise&, const std::string&,
                       std::size_t at) { return -static_cast<double>(at); }},
      {"the last",
       [](const Exercise&, const std::string&, std::size_t at) { return static_cast<double>(at); }},
      {"the longest", [](const Exercise&, const std::string& words,
                         std::size_t) { return static_cast<double>(words.size()); }},
      {"the shortest", [](const Exercise&, const std::string& words,
                          std::size_t) { return -static_cast<double>(words.size()); }},
      {"most words of the faulty line", [](const Exercise& one, const std::string& words,
                                           std::size_t) { return shared(words, line_of(one)); }},
      {"most words of the card", [](const Exercise& one, const std::string& words,
                                    std::size_t) { return shared(words, one.card); }},
      {"fewest words of the card", [](const Exercise& one, const std::string& words, std::size_t) {
         return -shared(words, one.card);
       }}};
  return all;
}

// Four standard deviations of a binomial guess: fourteen guessers try, and one in thirty thousand
// is beyond by chance.
void check_by_chance(const std::string& name, const std::string& of, const Guessed& guessed) {
  const double most = guessed.expected + 4 * std::sqrt(guessed.variance);
  MESSAGE(of << " by " << name << ": " << guessed.right << " of " << guessed.asked << ", by chance "
             << guessed.expected << ", at most " << most);
  CHECK(guessed.right <= most);
}

TEST_CASE("no reason can be picked by its words") {
  for (const auto& [name, mark] : guessers()) {
    Guessed guessed;
    for (const Exercise& one : thousand()) guess(one, one.reasons, mark, guessed);
    check_by_chance(name, "reason", guessed);
    CHECK(guessed.asked > testing::of_those_alike(500));
  }
}

TEST_CASE("no mend can be picked by its words") {
  for (const auto& [name, mark] : guessers()) {
    Guessed guessed;
    for (const Exercise& one : thousand()) guess(one, one.mends, mark, guessed);
    check_by_chance(name, "mend", guessed);
    CHECK(guessed.asked > testing::of_those_alike(500));
  }
}

TEST_CASE("one of the choices is right, and none is there twice") {
  for (const Exercise& one : thousand()) {
    for (const auto* choices : {&one.reasons, &one.mends}) {
      if (choices->empty()) continue;
      std::set<std::string> words;
      std::size_t right = 0;
      for (const Choice& choice : *choices) {
        words.insert(choice.words);
        right += choice.right ? 1 : 0;
      }
      CHECK(right == 1);
      CHECK(words.size() == choices->size());
    }
  }
}

}  // namespace
