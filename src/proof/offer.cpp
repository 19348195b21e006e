#include "proof/offer.h"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "catalogue/role.h"
#include "formula/vocabulary.h"
#include "proof/amounts.h"
#include "proof/draft.h"
#include "proof/example.h"
#include "rules/grammar.h"
#include "rules/words.h"

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
    add(true, rule.pair ? rule.pair_passes.size() : rule.passes.size());
    add(false, rule.pair ? rule.pair_fails.size() : rule.fails.size());
    std::vector<Draft> filled;
    for (const Draft& base : bases) add_filled(filled, base);
    bases.insert(bases.begin(), filled.begin(), filled.end());
    for (const Draft& base : bases) move_amounts(base);
    for (const Edge& edge : known_) move_amounts(Draft(rule, edge));
    std::vector<Draft> further;
    for (const Edge& edge : known_) bases.emplace_back(rule, edge);
    for (const Draft& base : bases) {
      leave_out(base, further);
      say_otherwise(base, further);
      put_in_doubt(base, further);
      make_own(base, further);
      take_other_materials(base, further);
    }
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

  /// Without each line, and without all that a section says.
  static void leave_out(const Draft& draft, std::vector<Draft>& out) {
    constexpr std::array<std::string_view, 4> sections{"task ", "portion ", "fragrance ", "tweak "};
    constexpr std::array<std::string_view, 5> heads{"formula ", "phase ", "premix ", "workshop ",
                                                    "material "};
    const auto begins = [](const Line& line, const auto& words) {
      return std::any_of(words.begin(), words.end(),
                         [&](std::string_view word) { return line.text.starts_with(word); });
    };
    const std::vector<Line> lines = draft.lines();
    for (std::size_t at = 0; at < lines.size(); ++at) {
      if (lines[at].text.starts_with("q.s. ") || begins(lines[at], heads)) continue;
      Draft without = draft;
      std::size_t end = at + 1;
      if (begins(lines[at], sections)) {
        while (end < lines.size() && !begins(lines[end], sections) && !begins(lines[end], heads)) {
          ++end;
        }
      }
      bool whole = true;
      for (std::size_t gone = at; gone < end; ++gone) {
        whole = whole && lines[gone].part == 0;
        if (whole) without.remove(lines[gone]);
      }
      if (whole) out.push_back(std::move(without));
    }
  }

  /// Each amount as one that may be nothing: it stands on both sides of "is there".
  static void put_in_doubt(const Draft& draft, std::vector<Draft>& out) {
    for (const Line& line : draft.lines()) {
      const std::vector<Digits> amounts = amounts_in(line.text);
      if (!name_in(line.text) || amounts.empty() || amounts.size() > 1) continue;
      out.push_back(draft);
      out.back().replace(line, "0 - " + line.text);
    }
  }

  /// Each material as one of the formula's own, which has what no material of the catalogue may
  /// have: it is pure, coarse, limited, or bears a hazard statement that the rule names.
  void make_own(const Draft& draft, std::vector<Draft>& out) {
    gather_materials();
    std::vector<std::string> traits{"active 100 %", "form granules", "supplier limit 10 %"};
    for (const std::string& word : words_) {
      if (rules::is_hazard_code(word)) traits.push_back("hazards " + word);
    }
    const std::vector<Line> lines = draft.lines();
    for (const Line& line : lines) {
      const auto name = name_in(line.text);
      if (!name || line.text[*name] == '"') continue;
      const std::string what = line.text.substr(*name, line.text.find(',', *name) - *name);
      for (const std::string& trait : traits) {
        Draft own = draft;
        if (!own.may_add(lines.back())) continue;
        own.replace(line, std::string(line.text).insert(*name, "our "));
        own.add_behind(lines.back(), trait);
        own.add_behind(lines.back(), "material \"our " + what + "\" like " + what);
        out.push_back(std::move(own));
      }
    }
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

  /// The same formula for other users, another market, another kind of product, …
  void say_otherwise(const Draft& draft, std::vector<Draft>& out) {
    using Words = std::span<const std::string_view>;
    namespace vocabulary = formula::vocabulary;
    std::vector<std::string_view> products;
    for (const catalogue::ProductKind& kind : catalogue_.products) products.push_back(kind.name);
    const std::array<std::pair<std::string_view, Words>, 8> statements{
        std::pair{std::string_view("product "), Words(products)},
        {"forming ", vocabulary::formings},
        {"market ", vocabulary::markets},
        {"users ", vocabulary::users},
        {"claims ", vocabulary::claims},
        {"mask ", vocabulary::masks},
        {"extraction ", vocabulary::yes_or_no},
        {"water ", vocabulary::waters}};
    for (const auto& [keyword, words] : statements) {
      bool stated = false;
      for (const Line& line : draft.lines()) {
        if (!line.text.starts_with(keyword)) continue;
        stated = true;
        for (const std::string_view word : words) {
          out.push_back(draft);
          out.back().replace(line, std::string(keyword) + std::string(word));
        }
        if (keyword == "product ") continue;
        out.push_back(draft);
        out.back().remove(line);
      }
      if (stated || keyword == "mask " || keyword == "extraction ") continue;
      for (const Line& line : draft.lines()) {
        if (!line.text.starts_with("product ")) continue;
        for (const std::string_view word : words) {
          out.push_back(draft);
          out.back().add_behind(line, std::string(keyword) + std::string(word));
        }
      }
    }
  }

  /// What the rule names, in the place of each material and beside it.
  void take_other_materials(const Draft& draft, std::vector<Draft>& out) {
    gather_materials();
    for (const std::string& material : materials_) {
      bool added = false;
      for (const Line& line : draft.lines()) {
        const auto name = name_in(line.text);
        if (!name) continue;
        out.push_back(draft);
        out.back().replace(line, line.text.substr(0, *name) + material);
        if (added) continue;
        added = true;
        out.push_back(draft);
        out.back().add_behind(line, "5 % " + material);
      }
    }
  }

  void gather_materials() {
    if (!materials_.empty()) return;
    const rules::Rule& rule = ruleset_.rules[rule_];
    std::vector<std::string> texts{rule.when_text, rule.expect_text};
    std::set<std::string> known;
    while (!texts.empty()) {
      const std::string text = std::move(texts.back());
      texts.pop_back();
      rules::SyntaxError error;
      const auto tree = rules::parse_expression(text, error);
      if (!tree) continue;
      for (const rules::Node& node : tree->nodes) {
        using rules::Op;
        if (node.op == Op::name && known.insert(node.text).second) {
          if (const auto at = ruleset_.find_measure(node.text)) {
            texts.push_back(ruleset_.measures[*at].text);
          }
        }
        if (node.op == Op::pick_name || node.op == Op::pick_quoted) words_.push_back(node.text);
      }
    }
    for (const std::string& word : words_) add_materials(word);
    if (rule.each == rules::Each::row) add_rows(catalogue_.tables[rule.table]);
    for (const std::string_view role :
         {"oil", "bicarbonate", "acid", "anionic", "humectant", "water", "emulsifier"}) {
      add_materials(std::string(role));
    }
  }

  /// Whether a word of a selection, or a hazard statement, means a material.
  static bool means(const std::string& word, const catalogue::Material& material) {
    if (const auto role = catalogue::find_role(word)) {
      return (material.roles & catalogue::bit(*role)) != 0;
    }
    if (const auto form = catalogue::find_form(word)) return material.form == *form;
    const auto& hazards = material.hazards;
    return std::find(hazards.begin(), hazards.end(), word) != hazards.end();
  }

  /// A material by its name; of a role, a form or a hazard statement three that have it, first
  /// those that nothing else in the rule means.
  void add_materials(const std::string& word) {
    const auto add = [&](const std::string& name) {
      if (std::find(materials_.begin(), materials_.end(), name) == materials_.end()) {
        materials_.push_back(name);
      }
    };
    if (!catalogue::find_role(word) && !catalogue::find_form(word) &&
        !rules::is_hazard_code(word)) {
      return add(word);
    }
    std::vector<std::pair<std::size_t, std::string>> found;
    for (const catalogue::Material& material : catalogue_.materials) {
      if (!means(word, material)) continue;
      const auto others = std::count_if(words_.begin(), words_.end(), [&](const std::string& one) {
        return one != word && means(one, material);
      });
      found.emplace_back(static_cast<std::size_t>(others), material.name);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    constexpr std::size_t most = 3;
    for (std::size_t at = 0; at < std::min(most, found.size()); ++at) add(found[at].second);
  }

  /// One row for each word of each column.
  void add_rows(const catalogue::Table& table) {
    std::set<std::pair<std::size_t, std::string>> seen;
    for (const catalogue::Row& row : table.rows) {
      for (std::size_t column = 0; column < row.cells.size(); ++column) {
        const auto* word = std::get_if<std::string>(&row.cells[column]);
        const bool few = seen.size() < 40;
        if (word == nullptr || !few || !seen.emplace(column, *word).second) continue;
        if (std::find(materials_.begin(), materials_.end(), row.name) == materials_.end()) {
          materials_.push_back(row.name);
        }
      }
    }
  }

  std::uint32_t rule_;
  const std::vector<Edge>& known_;
  std::vector<Mutant*>& left_;
  rules::Ruleset& ruleset_;
  const catalogue::Catalogue& catalogue_;
  rules::Day on_;
  std::vector<std::string> words_;  ///< of the rule's selections
  std::vector<std::string> materials_;
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
