#include <algorithm>
#include <cstdlib>
#include <set>

#include "drill/choices.h"
#include "text/name.h"

namespace sudsmark::drill {
namespace {

constexpr std::size_t stem = 5;

std::set<std::string> stems(std::string_view words) {
  std::set<std::string> out;
  std::string word;
  const auto take = [&] {
    if (word.size() >= stem) out.insert(word.substr(0, stem));
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

/// How many of others a figure is above; of equal ones half are below.
double rank(double own, const std::vector<double>& others) {
  double below = 0;
  for (const double other : others) below += other < own ? 1 : other == own ? 0.5 : 0;
  return below;
}

struct Candidate {
  const rules::Rule* rule = nullptr;
  int closeness = 0;
};

}  // namespace

std::size_t likeness(std::string_view one, std::string_view other) {
  const auto a = stems(one);
  const auto b = stems(other);
  return static_cast<std::size_t>(
      std::count_if(a.begin(), a.end(), [&](const std::string& word) { return b.contains(word); }));
}

std::vector<Choice> reasons(const rules::Ruleset& ruleset, const RunResult& run,
                            const std::string& broken, std::uint32_t line,
                            const std::string& line_words, Draws& draws) {
  const auto own = ruleset.find_rule(broken);
  if (!own) return {};
  const rules::Rule& right = ruleset.rules[*own];
  std::set<std::string> minded;
  std::set<std::string> holding;
  std::set<std::string> there;
  for (const FormulaResult& formula : run.formulas) {
    for (const Finding& finding : formula.findings) {
      const bool holds = finding.kind == Kind::pass && !finding.allowed;
      if (finding.kind == Kind::not_applicable) continue;
      (holds ? holding : minded).insert(finding.rule);
      if (holds && finding.line == line) there.insert(finding.rule);
    }
  }
  std::vector<Candidate> pool;
  std::set<std::string> titles{right.title};
  for (const rules::Rule& rule : ruleset.rules) {
    if (minded.contains(rule.id) || !rule.paper.empty() || rule.id == broken) continue;
    const bool near = rule.file == right.file;
    const bool holds = holding.contains(rule.id);
    if ((!near && !holds) || rule.pair != right.pair || !titles.insert(rule.title).second) continue;
    const int closeness = (near ? 3 : 0) + (holds ? 2 : 0) + (there.contains(rule.id) ? 2 : 0);
    pool.push_back({&rule, closeness});
  }
  draws.shuffle(pool);
  std::stable_sort(pool.begin(), pool.end(), [](const Candidate& a, const Candidate& b) {
    return a.closeness > b.closeness;
  });
  constexpr std::size_t most = 16;
  if (pool.size() > most) pool.resize(most);
  constexpr std::size_t others = choices - 1;
  if (pool.size() < others) return {};
  // the right one is to stand anywhere among the four by length, and by words shared with the line
  const double wanted_length = static_cast<double>(draws.below(choices));
  const double wanted_likeness = static_cast<double>(draws.below(choices));
  std::vector<Candidate> best;
  double least = 1e9;
  constexpr int tries = 60;
  for (int at = 0; at < tries; ++at) {
    std::vector<Candidate> some = pool;
    draws.shuffle(some);
    some.resize(others);
    std::vector<double> lengths;
    std::vector<double> shared;
    double closeness = 0;
    for (const Candidate& one : some) {
      lengths.push_back(static_cast<double>(one.rule->title.size()));
      shared.push_back(static_cast<double>(likeness(one.rule->title, line_words)));
      closeness += one.closeness;
    }
    const double off =
        std::abs(rank(static_cast<double>(right.title.size()), lengths) - wanted_length) +
        std::abs(rank(static_cast<double>(likeness(right.title, line_words)), shared) -
                 wanted_likeness) -
        closeness / 20;
    if (off >= least) continue;
    least = off;
    best = std::move(some);
  }
  std::vector<Choice> out{{right.title, true}};
  for (const Candidate& one : best) out.push_back({one.rule->title, false});
  draws.shuffle(out);
  return out;
}

}  // namespace sudsmark::drill
