// Answers to choose from among which the right one does not stand out: not by its length, nor by
// the words that it shares with the line or with the card.
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "drill/choices.h"
#include "text/name.h"

namespace sudsmark::drill {
namespace {

/// Words of fewer letters say nothing; of longer ones the beginning does.
constexpr std::size_t shortest = 4;
constexpr std::size_t stem = 5;

std::set<std::string> stems(std::string_view words) {
  std::set<std::string> out;
  std::string word;
  const auto take = [&] {
    if (word.size() >= shortest) out.insert(word.substr(0, stem));
    word.clear();
  };
  for (const char c : text::fold(words)) {
    if (c >= 'a' && c <= 'z') {
      word += c;
    } else {
      take();
    }
  }
  take();
  return out;
}

double shared(const std::set<std::string>& one, const std::set<std::string>& other) {
  return static_cast<double>(std::count_if(
      one.begin(), one.end(), [&](const std::string& word) { return other.contains(word); }));
}

/// What a guesser goes by who knows nothing: words of the line, words of the card, length.
struct Looks {
  double line = 0;
  double card = 0;
  double length = 0;
};

/// Of some figures how many are below one, of equal ones half: 0 the smallest, 3 the greatest.
template <class Figure>
double rank(const Looks& own, const std::vector<const Looks*>& others, Figure figure) {
  double out = 0;
  for (const Looks* other : others) {
    out += figure(*other) < figure(own) ? 1 : figure(*other) == figure(own) ? 0.5 : 0;
  }
  return out;
}

}  // namespace

std::vector<Choice> balanced(const std::string& right, const std::vector<Candidate>& pool,
                             const std::string& line, const std::string& card, Draws& draws) {
  std::vector<Choice> out{{right, true}};
  constexpr std::size_t others = choices - 1;
  const auto of_line = stems(line);
  const auto of_card = stems(card);
  const auto looks = [&](const std::string& words) {
    const auto own = stems(words);
    return Looks{shared(own, of_line), shared(own, of_card), static_cast<double>(words.size())};
  };
  const Looks own = looks(right);
  std::vector<Looks> all;
  all.reserve(pool.size());
  for (const Candidate& one : pool) all.push_back(looks(one.words));
  // by words of the line: those that share more than the right one, as many, and fewer
  std::vector<std::size_t> more;
  std::vector<std::size_t> alike;
  std::vector<std::size_t> fewer;
  for (std::size_t at = 0; at < all.size(); ++at) {
    (all[at].line > own.line ? more : all[at].line < own.line ? fewer : alike).push_back(at);
  }
  const auto wanted = [&] { return static_cast<double>(draws.below(choices)); };
  const Looks place{wanted(), wanted(), wanted()};
  // as many tell nothing at all; where there are too few of them, the right one's place is drawn
  const bool enough = alike.size() >= others;
  std::size_t below = enough ? 0 : static_cast<std::size_t>(place.line);
  std::size_t above = enough ? 0 : others - below;
  // some that share more make up for right ones that nothing else comes up to
  if (enough && !draws.once_in(6)) above = 1;
  std::vector<std::size_t> best;
  double least = std::numeric_limits<double>::infinity();
  constexpr int tries = 200;
  for (int at = 0; at < tries && pool.size() >= others; ++at) {
    draws.shuffle(more);
    draws.shuffle(alike);
    draws.shuffle(fewer);
    std::vector<std::size_t> picked;
    const auto take = [&](const std::vector<std::size_t>& from, std::size_t most) {
      for (std::size_t in = 0; in < from.size() && in < most && picked.size() < others; ++in) {
        picked.push_back(from[in]);
      }
    };
    take(more, above);
    take(fewer, below);
    take(alike, others);
    take(more, others);
    take(fewer, others);
    std::sort(picked.begin(), picked.end());
    if (std::unique(picked.begin(), picked.end()) != picked.end()) continue;
    std::vector<const Looks*> some;
    double closeness = 0;
    for (const std::size_t one : picked) {
      some.push_back(&all[one]);
      closeness += pool[one].closeness;
    }
    const auto off = [&](double Looks::*figure) {
      return std::abs(rank(own, some, [&](const Looks& one) { return one.*figure; }) -
                      place.*figure);
    };
    constexpr double weight_of_closeness = 0.05;
    const double cost =
        off(&Looks::card) + 2 * off(&Looks::length) - weight_of_closeness * closeness;
    if (cost >= least) continue;
    least = cost;
    best = std::move(picked);
  }
  if (best.empty()) {
    for (std::size_t at = 0; at < pool.size() && at < others; ++at) best.push_back(at);
  }
  for (const std::size_t at : best) out.push_back({pool[at].words, false});
  draws.shuffle(out);
  return out;
}

}  // namespace sudsmark::drill
