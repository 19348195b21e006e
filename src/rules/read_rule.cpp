// One rule of a file: its keys read, its expressions compiled.
#include <algorithm>
#include <array>

#include "catalogue/numbers.h"
#include "measures/registry.h"
#include "rules/builder.h"
#include "rules/grammar.h"
#include "rules/messages.h"
#include "rules/words.h"
#include "text/name.h"
#include "text/shortened.h"

namespace sudsmark::rules {
namespace {

bool is_rule_id(std::string_view id) {
  const auto inner = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); };
  if (id.empty() || !inner(id.front()) || !inner(id.back()) || id.size() > 100) return false;
  for (std::size_t at = 0; at < id.size(); ++at) {
    if (!inner(id[at]) && !(id[at] == '-' && id[at - 1] != '-')) return false;
  }
  return true;
}

std::string one_line(std::string_view text) {
  std::string out;
  for (const char c : text::trimmed(text)) {
    const bool blank = c == ' ' || c == '\n' || c == '\t' || c == '\r';
    if (!blank) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

}  // namespace

std::optional<Rule> RulesetBuilder::read_rule(const text::Node& node, std::uint32_t file) {
  failed_ = false;
  text::Fields fields(node, diagnostics_);
  if (!fields.valid()) return std::nullopt;
  Rule rule;
  rule.file = file;
  rule.built_in = built_in_;
  read_id(fields, rule);
  rule.words->title = one_line(fields.needed_text("title"));
  read_former_ids(fields, rule);
  read_each(fields, rule);
  read_levels(fields, rule);
  rule.words->why = one_line(fields.text("why"));
  rule.words->remedy = one_line(fields.text("remedy"));
  read_telling(fields, rule);
  read_sources(fields, rule);
  read_dates(fields, rule);
  read_mends(fields, rule);
  if (fields.find("decided by") != nullptr) {
    read_decider(fields, rule);
  } else {
    read_place(fields, rule);
    read_expressions(fields, rule);
    read_examples(fields, rule);
  }
  fields.refuse_others();
  if (built_in_) ask_for_everything(fields, rule);
  if (failed_ || rule.id.empty() || rule.words->title.empty()) return std::nullopt;
  return rule;
}

void RulesetBuilder::read_id(text::Fields& fields, Rule& rule) {
  const std::string id = fields.needed_text("id");
  const text::Node* node = fields.find("id");
  if (id.empty()) return;
  if (!is_rule_id(id)) {
    diagnostics_.add(messages::rule_id, node->span, {text::shortened(id)});
    return;
  }
  const auto [known, added] = ids_.emplace(id, node);
  if (!added) {
    diagnostics_.add(messages::duplicate_rule, {node->span, known->second->span}, {id});
    return;
  }
  rule.id = id;
  rule.span = node->span;
}

/// `formerly: [old-id]`: names that makers may still write in `allow` and behind `--only`.
void RulesetBuilder::read_former_ids(text::Fields& fields, Rule& rule) {
  for (const text::Node* node : fields.texts("formerly")) {
    const std::string id(text::trimmed(node->text));
    if (!is_rule_id(id)) {
      diagnostics_.add(messages::rule_id, node->span, {text::shortened(id)});
      continue;
    }
    rule.formerly.push_back(id);
  }
}

void RulesetBuilder::read_each(text::Fields& fields, Rule& rule) {
  const std::string each = one_line(fields.text("each"));
  const text::Node* node = fields.find("each");
  if (each.empty()) return;
  constexpr std::array parts{Each::portion, Each::material, Each::premix, Each::task};
  for (const Each part : parts) {
    if (each_word(part) != each) continue;
    rule.each = part;
    return;
  }
  constexpr std::string_view of_table = "row of ";
  if (!each.starts_with(of_table)) {
    diagnostics_.add(messages::unknown_each, node->span, {each});
    failed_ = true;
    return;
  }
  const std::string id = each.substr(of_table.size());
  if (const catalogue::Table* table = catalogue_->find_table(id)) {
    rule.each = Each::row;
    rule.table = static_cast<std::uint16_t>(table - catalogue_->tables.data());
    return;
  }
  std::vector<std::string> known;
  for (const catalogue::Table& table : catalogue_->tables) known.push_back(table.id);
  diagnostics_.add(messages::unknown_table, node->span, {id, text::hint(id, known)});
  failed_ = true;
}

std::optional<Level> RulesetBuilder::read_level(const text::Node& node, std::string_view levels) {
  const auto word = text::text_of(node, diagnostics_);
  if (!word) return std::nullopt;
  for (const Level level : {Level::note, Level::warning, Level::error}) {
    if (level_word(level) == *word && levels.find(*word) != std::string_view::npos) return level;
  }
  diagnostics_.add(messages::unknown_level, node.span, {*word, std::string(levels)});
  return std::nullopt;
}

void RulesetBuilder::read_levels(text::Fields& fields, Rule& rule) {
  if (const text::Node* node = fields.find("otherwise")) {
    rule.otherwise = read_level(*node, "error, warning or note").value_or(Level::warning);
  }
  if (const text::Node* node = fields.find("undecided")) {
    rule.undecided = read_level(*node, "warning or note").value_or(Level::note);
  }
}

std::optional<Day> RulesetBuilder::read_day(text::Fields& fields, std::string_view key) {
  const std::string word = fields.text(key);
  if (word.empty()) return std::nullopt;
  const auto day = catalogue::read_date(word);
  if (!day) diagnostics_.add(messages::bad_date, fields.find(key)->span, {word});
  return day;
}

void RulesetBuilder::read_dates(text::Fields& fields, Rule& rule) {
  Dates& dates = rule.dates;
  dates.from = read_day(fields, "from");
  dates.shelf = read_day(fields, "shelf");
  dates.until = read_day(fields, "until");
  if (dates.shelf && fields.find("from") == nullptr) {
    diagnostics_.add(messages::shelf_alone, fields.find("shelf")->key_span);
  }
  const auto in_order = [&](const std::optional<Day>& first, const std::optional<Day>& second,
                            std::string_view key) {
    if (!first || !second || *first < *second) return;
    diagnostics_.add(messages::date_order, fields.find(key)->span,
                     {day_words(*first), day_words(*second)});
  };
  in_order(dates.from, dates.shelf, "shelf");
  in_order(dates.shelf ? dates.shelf : dates.from, dates.until, "until");
}

void RulesetBuilder::read_sources(text::Fields& fields, Rule& rule) {
  std::vector<const text::Node*> ids = fields.texts("sources");
  for (const text::Node* id : fields.texts("source")) ids.push_back(id);
  for (const text::Node* id : ids) {
    const std::string word(text::trimmed(id->text));
    if (const auto citation = catalogue_->find_citation(word)) {
      rule.sources.push_back(*citation);
      continue;
    }
    std::vector<std::string> known;
    for (const catalogue::Citation& citation : catalogue_->citations) known.push_back(citation.id);
    diagnostics_.add(messages::unknown_source, id->span, {word, text::hint(word, known)});
  }
}

void RulesetBuilder::read_examples(text::Fields& fields, Rule& rule) {
  const text::Node* node = fields.find("examples");
  if (node == nullptr) return;
  text::Fields examples(*node, diagnostics_);
  const auto read = [&](std::string_view key, std::vector<std::string>& alone,
                        std::vector<PairExample>& pairs) {
    const text::Node* some = examples.find(key);
    if (some == nullptr) return;
    if (some->kind != text::Node::Kind::list) return read_example(*some, rule, alone, pairs);
    for (const text::Node& one : some->items) read_example(one, rule, alone, pairs);
  };
  read("passes", rule.words->passes, rule.words->pair_passes);
  read("fails", rule.words->fails, rule.words->pair_fails);
  examples.refuse_others();
}

/// A formula's text, or `{ base: …, tweak: … }` for a rule over both.
void RulesetBuilder::read_example(const text::Node& node, const Rule& rule,
                                  std::vector<std::string>& alone,
                                  std::vector<PairExample>& pairs) {
  const bool pair = node.kind == text::Node::Kind::map;
  // of a rule that could not be read nobody knows what it asks
  if (!failed_ && rule.pair != pair) {
    diagnostics_.add(rule.pair ? messages::example_pair : messages::example_alone, node.span);
  } else if (!pair) {
    if (text::text_of(node, diagnostics_)) alone.push_back(node.text);
  } else {
    text::Fields both(node, diagnostics_);
    const text::Node* base = both.needed("base");
    const text::Node* tweak = both.needed("tweak");
    both.refuse_others();
    if (base == nullptr || tweak == nullptr) return;
    const bool texts = text::text_of(*base, diagnostics_) && text::text_of(*tweak, diagnostics_);
    if (texts) pairs.push_back({base->text, tweak->text});
  }
}

/// `place: forming`, `place: dose.mass`, `place: lake or dye`: a statement, a measure, or the line
/// of what is selected.
void RulesetBuilder::read_place(text::Fields& fields, Rule& rule) {
  const text::Node* node = fields.find("place");
  if (node == nullptr) return;
  rule.words->place_text = one_line(fields.text("place"));
  const std::string& word = rule.words->place_text;
  if (word.empty()) return;
  for (const StatedInfo& words : stated_words()) {
    if (words.name != word || words.each != Each::product) continue;
    rule.places.push_back({Origin::Kind::words, static_cast<std::uint32_t>(words.id)});
    return;
  }
  if (word == "product") {
    rule.places.push_back({Origin::Kind::product, 0});
  } else if (word == "looks_like_food") {
    const auto flag = static_cast<std::uint32_t>(Flag::looks_like_food);
    rule.places.push_back({Origin::Kind::flag, flag});
  } else if (const auto measure = measures::find(word)) {
    rule.places.push_back({Origin::Kind::measure, *measure});
  } else if (const auto named = ruleset_.find_measure(word)) {
    rule.places = ruleset_.measures[*named].origins;
  } else {
    const auto tree = parse(*node, node->text, 0, true);
    const Placing places = placing(*node, 0);
    const auto origin =
        tree ? compiler_->selection_origin({node->text, *tree, {}, places}) : std::nullopt;
    if (origin) rule.places.push_back(*origin);
    failed_ = failed_ || !origin;
  }
}

std::optional<Program> RulesetBuilder::truth(const text::Node& node, const Rule& rule, bool tests) {
  if (!text::text_of(node, diagnostics_)) return std::nullopt;
  const auto tree = parse(node, node.text, 0);
  if (!tree) return std::nullopt;
  const Placing places = placing(node, 0);
  return compiler_->truth({node.text, *tree, {rule.each, rule.table}, places}, tests);
}

void RulesetBuilder::read_expressions(text::Fields& fields, Rule& rule) {
  const text::Node* when = fields.find("when");
  const text::Node* expect = fields.needed("expect");
  const text::Node* message = fields.needed("message");
  failed_ = failed_ || expect == nullptr || message == nullptr;
  // a table that is not known would make an error of each of its columns
  if (fields.find("each") != nullptr && rule.each == Each::product) return;
  const auto compile = [&](const text::Node* node, std::string& words, Program& into, bool tests) {
    if (node == nullptr) return;
    words = one_line(node->text);
    const auto program = truth(*node, rule, tests);
    if (program) into = *program;
    rule.pair = rule.pair || (program && program->pair);
    failed_ = failed_ || !program;
  };
  compile(when, rule.words->when_text, rule.when, true);
  compile(expect, rule.words->expect_text, rule.expect, true);
  if (message != nullptr) {
    rule.words->message_text = one_line(message->text);
    rule.words->message = read_message(*message, rule);
  }
  if (const text::Node* paper = fields.find("paper"))
    rule.words->paper = read_message(*paper, rule);
}

std::vector<MessagePart> RulesetBuilder::read_message(const text::Node& node, Rule& rule) {
  std::vector<MessagePart> out;
  const auto text = text::text_of(node, diagnostics_);
  failed_ = failed_ || !text;
  if (!text) return out;
  const std::string_view words = node.text;
  const Placing places = placing(node, 0);
  const auto refuse = [&](const text::Message& message, std::size_t at) {
    const auto begin = static_cast<std::uint32_t>(at);
    diagnostics_.add(message, places(begin, begin + 1));
    failed_ = true;
    return out;
  };
  MessagePart part;
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (words[at] == '}') return refuse(messages::hole_closed, at);
    if (words[at] != '{') {
      part.text += words[at] == '\n' ? ' ' : words[at];
      continue;
    }
    std::size_t end = at + 1;
    for (int depth = 1; end < words.size(); ++end) {
      if (words[end] == '{') ++depth;
      if (words[end] == '}' && --depth == 0) break;
    }
    if (end == words.size()) return refuse(messages::hole_open, at);
    const std::string_view inside = words.substr(at + 1, end - at - 1);
    const Placing there = placing(node, at + 1);
    const auto tree = parse(node, inside, at + 1);
    const auto program =
        tree ? compiler_->printable({inside, *tree, {rule.each, rule.table}, there}) : std::nullopt;
    failed_ = failed_ || !program;
    rule.pair = rule.pair || (program && program->pair);
    part.value_text = inside;
    part.value = program;
    out.push_back(std::move(part));
    part = {};
    at = end;
  }
  while (part.text.ends_with(' ')) part.text.pop_back();
  if (!part.text.empty()) out.push_back(std::move(part));
  return out;
}

void RulesetBuilder::ask_for_everything(text::Fields& fields, const Rule& rule) {
  const text::Span place = rule.span.somewhere() ? rule.span : fields.node().span;
  const auto need = [&](bool there, const text::Message& message, std::string words,
                        std::string key) {
    if (there) return;
    diagnostics_.add(message, place, {std::move(words), std::move(key)});
  };
  const bool decided = !rule.decided_by.empty();  // examples are of expressions
  need(decided || !rule.words->passes.empty() || !rule.words->pair_passes.empty(),
       messages::example_needed, "passes", "passes");
  need(decided || !rule.words->fails.empty() || !rule.words->pair_fails.empty(),
       messages::example_needed, "fails", "fails");
  need(!rule.words->why.empty(), messages::text_needed, "why it is there", "why");
  need(!rule.words->remedy.empty(), messages::text_needed, "what a maker can change", "remedy");
  need(fields.find("sources") != nullptr || fields.find("source") != nullptr,
       messages::source_needed, "", "");
}

}  // namespace sudsmark::rules
