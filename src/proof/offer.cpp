#include "proof/offer.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "proof/amounts.h"
#include "proof/draft.h"
#include "proof/example.h"
#include "proof/neighbours.h"

namespace sudsmark::proof {
namespace {

using Line = Draft::Line;

class Search {
 public:
  Search(std::uint32_t rule, const std::vector<Edge>& known, std::vector<Mutant*>& left,
         rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue, const rules::Day& on)
      : rule_(rule),
        known_(known),
        left_(left),
        ruleset_(ruleset),
        catalogue_(catalogue),
        on_(on) {}

  std::vector<Edge> run() {
    const rules::Rule& rule = ruleset_.rules[rule_];
    std::vector<Draft> bases;
    const auto add = [&](bool of_pass, std::size_t count) {
      for (std::size_t at = 1; at <= count; ++at) bases.emplace_back(rule, of_pass, at);
    };
    add(true, rule.pair ? rule.words->pair_passes.size() : rule.words->passes.size());
    add(false, rule.pair ? rule.words->pair_fails.size() : rule.words->fails.size());
    std::vector<Draft> filled;
    for (const Draft& base : bases) add_filled(filled, base);
    bases.insert(bases.begin(), filled.begin(), filled.end());
    for (const Draft& base : bases) move_amounts(base);
    for (const Edge& edge : known_) move_amounts(Draft(rule, edge));
    std::vector<Draft> further;
    for (const Edge& edge : known_) bases.emplace_back(rule, edge);
    const Neighbours neighbours(rule, ruleset_, catalogue_);
    for (const Draft& base : bases) neighbours.add_of(base, further);
    // what noticed something is near to what else there is to notice
    std::vector<Draft> near;
    trials_ = 0;
    for (const Draft& draft : further) {
      if (left_.empty() || trials_ > most_trials) break;
      if (ask(draft)) near.push_back(draft);
    }
    near.insert(near.end(), further.begin(), further.end());
    trials_ = 0;
    for (const Draft& draft : near) {
      if (left_.empty() || trials_ > most_trials) break;
      move_amounts(draft);
    }
    return std::move(edges_);
  }

 private:
  static constexpr int most_trials = 4'000;

  std::optional<Kind> verdict(const Draft& draft) {
    ++trials_;
    const auto made = make(draft.words(), catalogue_);
    if (!made->blend) return std::nullopt;
    return outcome(ruleset_, rule_, *made, on_);
  }

  /// Keeps a draft if it notices something that nothing did before.
  bool ask(const Draft& draft) {
    ++trials_;
    const auto made = make(draft.words(), catalogue_);
    if (!made->blend) return false;
    const Kind gives = outcome(ruleset_, rule_, *made, on_);
    bool news = false;
    for (Mutant* mutant : left_) {
      const Changed changed(ruleset_, *mutant);
      mutant->noticed = outcome(ruleset_, rule_, *made, on_) != gives;
      news = news || mutant->noticed;
    }
    if (!news) return false;
    std::erase_if(left_, [](const Mutant* mutant) { return mutant->noticed; });
    Edge edge = draft.edge();
    edge.gives = gives;
    edges_.push_back(std::move(edge));
    return true;
  }

  /// Amounts that sum to 100 % cannot be moved alone: the largest of them becomes what fills up.
  void add_filled(std::vector<Draft>& out, Draft draft) {
    const std::vector<Line> lines = draft.lines();
    const Line* largest = nullptr;
    double most = 0;
    for (const Line& line : lines) {
      if (line.text.starts_with("q.s. ") || line.text.starts_with("fill with")) return;
      const auto name = name_in(line.text);
      const std::vector<Digits> amounts = amounts_in(line.text);
      const bool share = name && line.text.find('%') < *name;
      if (!share || amounts.empty() || amounts.front().value <= most) continue;
      largest = &line;
      most = amounts.front().value;
    }
    if (largest == nullptr) return;
    draft.replace(*largest, "q.s. " + largest->text.substr(*name_in(largest->text)));
    if (verdict(draft)) out.push_back(std::move(draft));
  }

  static Draft with(const Draft& draft, const Line& line, const Digits& amount,
                    const std::string& figure) {
    Draft out = draft;
    std::string text = line.text;
    out.replace(line, text.replace(amount.begin, amount.end - amount.begin, figure));
    return out;
  }

  void move_amounts(const Draft& draft) {
    for (const Line& line : draft.lines()) {
      for (const Digits& amount : amounts_in(line.text)) {
        if (left_.empty()) return;
        move(draft, line, amount);
      }
    }
  }

  /// Moves one amount over a wide stretch, and looks closely where the verdict turns.
  void move(const Draft& draft, const Line& line, const Digits& amount) {
    constexpr std::array steps{0.1, 0.4, 0.7, 0.9, 1.0, 1.1, 1.4, 2.0, 5.0};
    struct Point {
      double at = 0;
      Kind kind = Kind::pass;
    };
    std::vector<Point> points;
    const auto at_amount = [&](double value, int digits) {
      return with(draft, line, amount, figure(value, digits));
    };
    constexpr int fine = 13;
    for (const double step : steps) {
      const double value = step * amount.value;
      if (const auto kind = verdict(at_amount(value, fine))) points.push_back({value, *kind});
    }
    for (std::size_t at = 0; at + 1 < points.size(); ++at) {
      if (points[at].kind == points[at + 1].kind) continue;
      Point low = points[at];
      Point high = points[at + 1];
      for (int step = 0; step < 40; ++step) {
        const double middle = (low.at + high.at) / 2;
        const auto kind = verdict(at_amount(middle, fine));
        if (!kind) return;
        (*kind == low.kind ? low : high) = {middle, *kind};
      }
      const double turn = (low.at + high.at) / 2;
      for (int digits = 1; digits <= 5; ++digits) ask(at_amount(turn, digits));
      for (const double near : {0.02, 0.005, 0.001}) {
        ask(at_amount(turn * (1 - near), 4));
        ask(at_amount(turn * (1 + near), 4));
      }
      for (int digits = 6; digits <= 12; ++digits) ask(at_amount(turn, digits));
      if (left_.empty()) return;
    }
    for (const double step : steps) {
      if (!left_.empty()) ask(at_amount(step * amount.value, 3));
    }
  }

  std::uint32_t rule_;
  const std::vector<Edge>& known_;
  std::vector<Mutant*>& left_;
  rules::Ruleset& ruleset_;
  const catalogue::Catalogue& catalogue_;
  rules::Day on_;
  std::vector<Edge> edges_;
  int trials_ = 0;
};

}  // namespace

std::vector<Edge> offers_for(std::uint32_t rule, const std::vector<Edge>& edges,
                             std::vector<Mutant*>& left, rules::Ruleset& ruleset,
                             const catalogue::Catalogue& catalogue, const rules::Day& on) {
  if (left.empty()) return {};
  return Search(rule, edges, left, ruleset, catalogue, on).run();
}

}  // namespace sudsmark::proof
