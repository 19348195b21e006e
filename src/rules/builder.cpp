#include "rules/builder.h"

#include <algorithm>
#include <array>
#include <utility>

#include "measures/registry.h"
#include "rules/grammar.h"
#include "rules/messages.h"
#include "rules/side.h"
#include "rules/words.h"
#include "text/name.h"
#include "text/shortened.h"

namespace sudsmark::rules {
namespace {

/// `edges` and `unnoticed` are the proof's to read.
constexpr std::array<std::string_view, 13> keys{
    "subject",   "authority", "concerns",  "markets",  "measures", "rules",   "edges",
    "unnoticed", "cards",     "breakages", "harmless", "chapters", "cautions"};

/// Letters, digits, points and underscores, and hyphens between them: what an expression reads as
/// one name.
bool is_measure_name(std::string_view name) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  const auto inner = [&](char c) { return letter(c) || (c >= '0' && c <= '9'); };
  if (name.empty() || !letter(name.front()) || name.size() > 100) return false;
  for (std::size_t at = 1; at < name.size(); ++at) {
    const char c = name[at];
    if (inner(c) || c == '_') continue;
    const bool joins = (c == '-' || c == '.') && at + 1 < name.size() && inner(name[at + 1]);
    if (!joins) return false;
  }
  SyntaxError error;
  const auto tree = parse_expression(name, error);  // a keyword is no name
  return tree && (*tree)[tree->root].op == Op::name;
}

void gather_names(const Tree& tree, std::vector<std::string>& names) {
  for (const Node& node : tree.nodes) {
    if (node.op == Op::name) names.push_back(node.text);
  }
}

}  // namespace

std::span<const std::string_view> rule_keys() {
  return keys;
}

RulesetBuilder::RulesetBuilder(const text::Sources& sources, text::Diagnostics& diagnostics,
                               Ruleset base)
    : sources_(sources), diagnostics_(diagnostics), ruleset_(std::move(base)) {
  for (std::uint32_t at = 0; at < ruleset_.rules.size(); ++at) {
    positions_.emplace(ruleset_.rules[at].id, at);
  }
  for (std::uint32_t at = 0; at < ruleset_.rules.size(); ++at) {
    for (const std::string& id : ruleset_.rules[at].formerly) positions_.emplace(id, at);
  }
}

void RulesetBuilder::add(const text::Node& root, std::string_view name) {
  if (root.kind != text::Node::Kind::map) return;
  if (const text::Node* tables = root.find("tables")) {
    for (const text::Node& table : tables->items) tables_.push_back(&table);
  }
  if (const text::Node* measures = root.find("measures")) add_measures(*measures);
  text::Fields fields(root, diagnostics_);
  add_training(fields);
  const std::vector<text::Node>& rules = fields.list("rules");
  const bool has_rules = fields.find("rules") != nullptr;
  if (!has_rules && fields.find("authority") == nullptr && fields.find("subject") == nullptr &&
      fields.find("markets") == nullptr) {
    return;
  }
  RuleFile file;
  file.name = name;
  file.subject = fields.needed_text("subject");
  file.edition = fields.text("edition");
  const text::Node* authority = fields.needed("authority");
  const std::string word = fields.text("authority");
  if (word == "law") {
    file.authority = Authority::law;
  } else if (word == "standard") {
    file.authority = Authority::standard;
  } else if (word != "craft" && !word.empty()) {
    diagnostics_.add(messages::unknown_authority, authority->span, {word});
  }
  const StatedInfo& known = info(StatedWords::market);
  file.concern = read_concern(fields, file.authority,
                              file.authority == Authority::law        ? Concern::law
                              : file.authority == Authority::standard ? Concern::health
                                                                      : Concern::craft);
  for (const text::Node* market : fields.texts("markets")) {
    const auto at = find_word(known, text::trimmed(market->text));
    if (at) {
      file.markets.emplace_back(known.known[*at]);
      continue;
    }
    const std::vector<std::string> all(known.known.begin(), known.known.end());
    diagnostics_.add(messages::unknown_word, market->span,
                     {std::string(text::trimmed(market->text)), std::string("'markets'"),
                      "; known are " + text::listed(all, "and")});
  }
  const text::Node* markets = fields.find("markets");
  if (file.authority == Authority::law && markets == nullptr) {
    diagnostics_.add(messages::markets_needed, authority != nullptr ? authority->span : root.span);
  } else if (file.authority != Authority::law && markets != nullptr) {
    diagnostics_.add(messages::markets_of_law, markets->key_span);
  }
  const auto index = static_cast<std::uint32_t>(ruleset_.files.size());
  ruleset_.files.push_back(std::move(file));
  for (const text::Node& rule : rules) pending_.push_back({&rule, index});
}

void RulesetBuilder::add_measures(const text::Node& node) {
  if (node.kind == text::Node::Kind::nothing) return;
  text::Fields fields(node, diagnostics_);
  if (!fields.valid()) return;
  for (const text::Node& item : node.items) {
    const std::string& name = item.key;
    if (!is_measure_name(name)) {
      diagnostics_.add(messages::measure_name, item.key_span, {text::shortened(name)});
      continue;
    }
    if (reserved(name)) {
      diagnostics_.add(messages::measure_word, item.key_span, {name});
      continue;
    }
    if (const auto [side, rest] = sided(name); side != Side::own && !measures::find(name)) {
      diagnostics_.add(messages::measure_side, item.key_span,
                       {name, std::string(side == Side::base ? "base." : "tweak.")});
      continue;
    }
    if (measures::find(name)) {
      diagnostics_.add(messages::measure_computed, item.key_span, {name});
      continue;
    }
    if (const auto known = measures_.find(name); known != measures_.end()) {
      diagnostics_.add(messages::duplicate_measure, {item.key_span, known->second.node->key_span},
                       {name});
      continue;
    }
    if (measures_.size() + ruleset_.measures.size() >= most_measures) {
      diagnostics_.add(messages::too_many, item.key_span,
                       {static_cast<double>(most_measures), std::string("measures")});
      return;
    }
    Declared declared;
    declared.node = &item;
    declared.expression = &item;
    if (item.kind == text::Node::Kind::map) {
      text::Fields of(item, diagnostics_);
      declared.expression = of.needed("is");
      declared.unit = of.text("unit");
      declared.meaning = of.text("meaning");
      of.refuse_others();
    }
    if (declared.expression == nullptr) continue;
    const auto text = text::text_of(*declared.expression, diagnostics_);
    if (!text) continue;
    declared.text = *text;
    auto tree = parse(*declared.expression, declared.expression->text, 0);
    if (!tree) declared.state = Declared::State::wrong;
    if (tree) declared.tree = std::move(*tree);
    measures_.emplace(name, std::move(declared));
    measure_order_.push_back(name);
  }
}

std::optional<Tree> RulesetBuilder::parse(const text::Node& node, std::string_view text,
                                          std::size_t offset, bool as_selection) {
  SyntaxError error;
  auto tree = as_selection ? parse_selection(text, error) : parse_expression(text, error);
  if (!tree) {
    diagnostics_.add(*error.message, placing(node, offset)(error.begin, error.end),
                     std::move(error.arguments));
  }
  return tree;
}

Placing RulesetBuilder::placing(const text::Node& node, std::size_t offset) const {
  return [this, &node, offset](std::uint32_t begin, std::uint32_t end) {
    return text::place_in(node, sources_[node.span.file].text(), offset + begin, offset + end);
  };
}

bool RulesetBuilder::compile_measure(const std::string& name, std::vector<std::string>& path) {
  const auto found = measures_.find(name);
  if (found == measures_.end()) return true;  // of the base, or no measure: the compiler knows
  Declared& declared = found->second;
  using State = Declared::State;
  if (declared.state == State::done) return true;
  if (declared.state == State::wrong) return false;
  path.push_back(name);
  if (declared.state == State::open) {
    refuse_circle({std::find(path.begin(), path.end(), name), path.end()});
    path.pop_back();
    return false;
  }
  if (path.size() > static_cast<std::size_t>(most_measure_depth)) {
    diagnostics_.add(messages::measure_deep, declared.node->key_span,
                     {static_cast<double>(most_measure_depth)});
    declared.state = State::wrong;
    path.pop_back();
    return false;
  }
  declared.state = State::open;
  std::vector<std::string> names;
  gather_names(declared.tree, names);
  bool well = true;
  for (const std::string& needed : names) well = compile_measure(needed, path) && well;
  path.pop_back();
  declared.state = State::wrong;
  if (!well) return false;
  const Placing places = placing(*declared.expression, 0);
  Scope scope;
  scope.sides = false;
  const Source source{declared.expression->text, declared.tree, scope, places};
  quantity::Dimension dimension;
  const auto program = compiler_->figure(source, dimension);
  if (!program) return false;
  if (!declared.unit.empty()) {
    const auto unit = quantity::find_unit(declared.unit);
    if (!unit) {
      std::vector<std::string> known;
      for (const quantity::Unit& each : quantity::units()) known.emplace_back(each.word);
      diagnostics_.add(messages::unknown_unit, declared.node->find("unit")->span,
                       {declared.unit, text::hint(declared.unit, known)});
      return false;
    }
    if (!quantity::comparable(unit->dimension, dimension)) {
      diagnostics_.add(messages::measure_unit, declared.node->find("unit")->span,
                       {type_words(dimension), declared.unit, type_words(unit->dimension)});
      return false;
    }
    dimension = unit->dimension;
  } else {
    declared.unit = program->unit;
  }
  const auto before = ruleset_.find_measure(name);
  if (before && !quantity::comparable(ruleset_.measures[*before].dimension, dimension)) {
    diagnostics_.add(
        messages::measure_changed, declared.node->key_span,
        {name, type_words(ruleset_.measures[*before].dimension), type_words(dimension)});
    return false;
  }
  keep_measure(name, declared, *program, dimension, source);
  return true;
}

void RulesetBuilder::keep_measure(const std::string& name, Declared& declared,
                                  const Program& program, const quantity::Dimension& dimension,
                                  const Source& source) {
  NamedMeasure measure;
  measure.name = name;
  measure.meaning = declared.meaning;
  measure.unit = declared.unit;
  measure.text = declared.text;
  measure.dimension = dimension;
  measure.program = program;
  measure.origins = compiler_->origins(source);
  measure.built_in = built_in_;
  measure.span = declared.node->key_span;
  declared.state = Declared::State::done;
  if (const auto before = ruleset_.find_measure(name)) {
    ruleset_.measures[*before] = std::move(measure);
  } else {
    ruleset_.measures.push_back(std::move(measure));
  }
}

void RulesetBuilder::compile_measures() {
  for (const std::string& name : measure_order_) {
    std::vector<std::string> path;
    if (!compile_measure(name, path)) compiler_->mark_faulty(name);
  }
  if (!measure_order_.empty()) check_measures();
}

void RulesetBuilder::refuse_circle(const std::vector<std::string>& path) {
  std::string circle;
  text::Span place;
  for (const std::string& name : path) {
    if (!circle.empty()) circle += " -> ";
    circle += name;
    const auto declared = measures_.find(name);
    if (declared != measures_.end()) place = declared->second.node->key_span;
  }
  diagnostics_.add(messages::measure_circle, place, {path.front(), circle});
}

/// A measure of this layer may close a circle through measures of the base, or make their towers
/// too high.
void RulesetBuilder::check_measures() {
  std::vector<int> depths(ruleset_.measures.size(), 0);
  for (std::uint32_t at = 0; at < ruleset_.measures.size(); ++at) {
    std::vector<std::uint32_t> path;
    if (depth_of(at, depths, path) <= most_measure_depth) continue;
    diagnostics_.add(messages::measure_deep, ruleset_.measures[at].span,
                     {static_cast<double>(most_measure_depth)});
    return;
  }
}

/// How many measures stand on one another below this one, itself counted. A circle is reported and
/// cut open.
int RulesetBuilder::depth_of(std::uint32_t measure, std::vector<int>& depths,
                             std::vector<std::uint32_t>& path) {
  if (depths[measure] != 0) return depths[measure];
  const auto known = std::find(path.begin(), path.end(), measure);
  if (known != path.end()) {
    std::vector<std::string> names;
    for (auto at = known; at != path.end(); ++at) names.push_back(ruleset_.measures[*at].name);
    names.push_back(ruleset_.measures[measure].name);
    refuse_circle(names);
    ruleset_.measures[measure].program = {};
    return 1;
  }
  if (path.size() > static_cast<std::size_t>(most_measure_depth)) return most_measure_depth + 1;
  path.push_back(measure);
  int deepest = 0;
  const Program program = ruleset_.measures[measure].program;
  for (std::uint32_t at = program.begin; at < program.end; ++at) {
    const Instruction& instruction = ruleset_.pool.code[at];
    if (instruction.code != Code::named) continue;
    deepest = std::max(deepest, depth_of(instruction.c, depths, path));
  }
  path.pop_back();
  depths[measure] = deepest + 1;
  return deepest + 1;
}

void RulesetBuilder::compile_rules() {
  for (const Pending& pending : pending_) {
    auto rule = read_rule(*pending.node, pending.file);
    if (!rule) continue;
    if (rule->table != nothing) note_table(rule->table);
    const auto known = positions_.find(rule->id);
    if (known != positions_.end()) {
      Rule& replaced = ruleset_.rules[known->second];
      // whoever replaces a rule by a name that it had means the same rule
      const auto own_place = ids_.find(replaced.id);
      if (rule->id != replaced.id && own_place != ids_.end()) {
        diagnostics_.add(messages::duplicate_rule, {rule->span, own_place->second->span},
                         {replaced.id});
        continue;
      }
      rule->id = replaced.id;
      for (std::string& id : replaced.formerly) {
        const auto& own = rule->formerly;
        if (std::find(own.begin(), own.end(), id) == own.end()) rule->formerly.push_back(id);
      }
      replaced = std::move(*rule);
      continue;
    }
    if (ruleset_.rules.size() >= most_rules) {
      diagnostics_.add(messages::too_many, pending.node->span,
                       {static_cast<double>(most_rules), std::string("rules")});
      return;
    }
    positions_.emplace(rule->id, static_cast<std::uint32_t>(ruleset_.rules.size()));
    ruleset_.rules.push_back(std::move(*rule));
  }
  check_former_ids();
}

/// A former id names one rule: it is no other rule's, now or before.
void RulesetBuilder::check_former_ids() {
  std::unordered_map<std::string, std::string> names;  ///< whose they are
  for (const Rule& rule : ruleset_.rules) names.emplace(rule.id, rule.id);
  for (const Rule& rule : ruleset_.rules) {
    for (const std::string& id : rule.formerly) {
      const auto [known, added] = names.emplace(id, rule.id);
      if (!added) diagnostics_.add(messages::former_id, rule.span, {id, known->second, rule.id});
    }
  }
}

void RulesetBuilder::note_table(std::uint16_t table) {
  const auto known = std::find_if(ruleset_.tables.begin(), ruleset_.tables.end(),
                                  [&](const TableUse& use) { return use.table == table; });
  if (known == ruleset_.tables.end()) {
    ruleset_.tables.push_back({table, catalogue_->tables[table].columns});
  }
}

/// Where a table of this layer has other columns than the one that it replaces, the base's rules
/// over it are compiled anew.
void RulesetBuilder::use_new_tables(const catalogue::Catalogue& catalogue) {
  for (TableUse& use : ruleset_.tables) {
    const catalogue::Table& table = catalogue.tables[use.table];
    if (table.columns == use.columns) continue;
    use.columns = table.columns;
    text::Span place;
    for (const text::Node* node : tables_) {
      const text::Node* id = node->find("id");
      if (id != nullptr && text::trimmed(id->text) == table.id) place = id->span;
    }
    const Placing there = [&](std::uint32_t, std::uint32_t) { return place; };
    for (Rule& rule : ruleset_.rules) {
      if (rule.table != use.table) continue;
      text::Diagnostics found;
      Compiler anew(ruleset_, catalogue, found);
      const auto compiled = [&](const std::string& words, bool tests) {
        SyntaxError error;
        const auto tree = parse_expression(words, error);
        if (!tree) return std::optional<Program>();
        return anew.truth({words, *tree, {rule.each, rule.table}, there}, tests);
      };
      if (!rule.words->when_text.empty())
        rule.when = compiled(rule.words->when_text, true).value_or(Program{});
      rule.expect = compiled(rule.words->expect_text, true).value_or(Program{});
      std::vector<MessagePart*> parts;
      for (MessagePart& part : rule.words->message) parts.push_back(&part);
      for (MessagePart& part : rule.words->paper) parts.push_back(&part);
      for (MessagePart* of : parts) {
        MessagePart& part = *of;
        if (!part.value) continue;
        SyntaxError error;
        const auto tree = parse_expression(part.value_text, error);
        if (!tree) continue;
        part.value = anew.printable({part.value_text, *tree, {rule.each, rule.table}, there});
      }
      if (found.empty()) continue;
      diagnostics_.add(messages::replaced_table, place,
                       {table.id, rule.id, text::sentence(found.in_order().front())});
    }
  }
}

Ruleset RulesetBuilder::finish(const catalogue::Catalogue& catalogue, bool built_in) {
  catalogue_ = &catalogue;
  built_in_ = built_in;
  // names of the base may mean more than they did
  for (Named& named : ruleset_.pool.named) {
    Named now = find_named(named.word, catalogue);
    if (!now.materials.empty() || !now.substances.empty()) named = std::move(now);
  }
  Compiler compiler(ruleset_, catalogue, diagnostics_);
  compiler_ = &compiler;
  compile_measures();
  use_new_tables(catalogue);
  compile_rules();
  if (training_) check_training(*training_);
  compiler_ = nullptr;
  return std::move(ruleset_);
}

}  // namespace sudsmark::rules
