#include "proof/neighbours.h"

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "catalogue/role.h"
#include "formula/statements.h"
#include "formula/vocabulary.h"
#include "proof/amounts.h"
#include "rules/grammar.h"
#include "rules/words.h"

namespace sudsmark::proof {

using Line = Draft::Line;

namespace {

/// Whether a word of a selection, or a hazard statement, means a material.
bool means(const std::string& word, const catalogue::Material& material) {
  if (const auto role = catalogue::find_role(word)) {
    return (material.roles & catalogue::bit(*role)) != 0;
  }
  if (const auto form = catalogue::find_form(word)) return material.form == *form;
  const auto& hazards = material.hazards;
  return std::find(hazards.begin(), hazards.end(), word) != hazards.end();
}

/// A statement that is one of a few words.
struct Statement {
  std::string keyword;
  std::vector<std::string_view> words;
  bool of_formula = false;  ///< it can stand right under the kind of product
};

template <typename Words>
Statement statement(std::string_view keyword, const Words& words, bool of_formula) {
  return {std::string(keyword) + " ", {words.begin(), words.end()}, of_formula};
}

/// Those of a section, by the language's register.
template <typename Section>
void add_choices(bool of_formula, std::vector<Statement>& out) {
  formula::each_field<Section>([&](const auto& row) {
    using Form = decltype(row.form);
    constexpr bool chosen =
        std::is_same_v<Form, formula::ChoiceForm> || std::is_same_v<Form, formula::ChoicesForm>;
    if constexpr (chosen) out.push_back(statement(row.full, row.form.choice.choices, of_formula));
  });
}

}  // namespace

Neighbours::Neighbours(const rules::Rule& rule, const rules::Ruleset& ruleset,
                       const catalogue::Catalogue& catalogue)
    : catalogue_(catalogue) {
  gather_words(rule, ruleset);
  for (const std::string& word : words_) add_materials(word);
  if (rule.each == rules::Each::row) add_rows(catalogue_.tables[rule.table]);
  for (const std::string_view role :
       {"oil", "bicarbonate", "acid", "anionic", "humectant", "water", "emulsifier"}) {
    add_materials(std::string(role));
  }
}

void Neighbours::add_of(const Draft& draft, std::vector<Draft>& out) const {
  leave_out(draft, out);
  say_otherwise(draft, out);
  put_in_doubt(draft, out);
  make_own(draft, out);
  take_other_materials(draft, out);
}

/// Without each line, and without all that a section says.
void Neighbours::leave_out(const Draft& draft, std::vector<Draft>& out) {
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
void Neighbours::put_in_doubt(const Draft& draft, std::vector<Draft>& out) {
  for (const Line& line : draft.lines()) {
    const std::vector<Digits> amounts = amounts_in(line.text);
    if (!name_in(line.text) || amounts.empty() || amounts.size() > 1) continue;
    out.push_back(draft);
    out.back().replace(line, "0 - " + line.text);
  }
}

/// Each material as one of the formula's own, which has what no material of the catalogue may
/// have: it is pure, coarse, limited, or bears a hazard statement that the rule names.
void Neighbours::make_own(const Draft& draft, std::vector<Draft>& out) const {
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

/// The same formula for other users, another market, another kind of product, …
void Neighbours::say_otherwise(const Draft& draft, std::vector<Draft>& out) const {
  std::vector<std::string_view> products;
  for (const catalogue::ProductKind& kind : catalogue_.products) products.push_back(kind.name);
  std::vector<Statement> statements{statement("product", products, true)};
  add_choices<formula::Statements>(true, statements);
  add_choices<formula::Workshop>(false, statements);
  statements.push_back(statement("water", formula::vocabulary::waters, true));
  for (const auto& [keyword, words, of_formula] : statements) {
    bool stated = false;
    for (const Line& line : draft.lines()) {
      if (!line.text.starts_with(keyword)) continue;
      stated = true;
      for (const std::string_view word : words) {
        out.push_back(draft);
        out.back().replace(line, keyword + std::string(word));
      }
      if (keyword == "product ") continue;
      out.push_back(draft);
      out.back().remove(line);
    }
    if (stated || !of_formula) continue;
    for (const Line& line : draft.lines()) {
      if (!line.text.starts_with("product ")) continue;
      for (const std::string_view word : words) {
        out.push_back(draft);
        out.back().add_behind(line, keyword + std::string(word));
      }
    }
  }
}

/// What the rule names, in the place of each material and beside it.
void Neighbours::take_other_materials(const Draft& draft, std::vector<Draft>& out) const {
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

/// What a rule selects, itself or in the measures that it leans on.
void Neighbours::gather_words(const rules::Rule& rule, const rules::Ruleset& ruleset) {
  std::vector<std::string> texts{rule.words->when_text, rule.words->expect_text};
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
        constexpr std::string_view side = "base.";
        const std::string name = node.text.substr(node.text.starts_with(side) ? side.size() : 0);
        if (const auto at = ruleset.find_measure(name)) texts.push_back(ruleset.measures[*at].text);
      }
      if (node.op == Op::pick_name || node.op == Op::pick_quoted) words_.push_back(node.text);
    }
  }
}

/// A material by its name; of a role, a form or a hazard statement three that have it, first
/// those that nothing else in the rule means.
void Neighbours::add_materials(const std::string& word) {
  const auto add = [&](const std::string& name) {
    if (std::find(materials_.begin(), materials_.end(), name) == materials_.end()) {
      materials_.push_back(name);
    }
  };
  if (!catalogue::find_role(word) && !catalogue::find_form(word) && !rules::is_hazard_code(word)) {
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
void Neighbours::add_rows(const catalogue::Table& table) {
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

}  // namespace sudsmark::proof
