// What mends a formula that breaks a rule: `mends:`, a list of ways.
#include <array>
#include <string>

#include "rules/builder.h"
#include "rules/grammar.h"
#include "rules/messages.h"
#include "rules/words.h"

namespace sudsmark::rules {
namespace {

using Change = Mend::Change;
constexpr std::array changes{Change::piece, Change::batch,  Change::scale,
                             Change::dose,  Change::warmth, Change::mask};
// a paper is asked for, in words of its own
static_assert(changes.size() == catalogue::enum_size<Change> - 1);

struct Way {
  std::string_view key;
  Mend::Kind kind;
};
constexpr std::string_view asks = "ask";
constexpr std::array ways{Way{"lower", Mend::Kind::lower},   Way{"raise", Mend::Kind::raise},
                          Way{"add", Mend::Kind::add},       Way{"swap", Mend::Kind::swap},
                          Way{"change", Mend::Kind::change}, Way{asks, Mend::Kind::change}};
static_assert(ways.size() == catalogue::enum_size<Mend::Kind> + 1);

}  // namespace

void RulesetBuilder::read_mends(text::Fields& fields, Rule& rule) {
  for (const text::Node& node : fields.list("mends")) {
    Mend mend;
    if (read_mend(node, rule, mend)) {
      rule.words->mends.push_back(std::move(mend));
    } else {
      failed_ = true;
    }
  }
}

bool RulesetBuilder::read_mend(const text::Node& node, const Rule& rule, Mend& mend) {
  text::Fields fields(node, diagnostics_);
  if (!fields.valid()) return false;
  const text::Node* value = nullptr;
  int found = 0;
  bool paper = false;
  for (const Way& way : ways) {
    const text::Node* of_way = fields.find(way.key);
    if (of_way == nullptr) continue;
    value = of_way;
    mend.kind = way.kind;
    paper = way.key == asks;
    ++found;
  }
  if (mend.kind == Mend::Kind::add && found == 1) mend.phase = text::trimmed(fields.text("to"));
  fields.refuse_others();
  if (found != 1) {
    diagnostics_.add(messages::mend_kind, node.span);
    return false;
  }
  if (mend.kind == Mend::Kind::swap) return read_swap(*value, rule, mend);
  const auto text = text::text_of(*value, diagnostics_);
  if (!text) return false;
  mend.text = text::trimmed(*text);
  switch (mend.kind) {
    case Mend::Kind::lower:
    case Mend::Kind::raise: {
      const auto selection = read_selection(*value, rule);
      mend.selection = selection.value_or(0);
      return selection.has_value();
    }
    case Mend::Kind::add: {
      const auto material = read_material(*value);
      mend.material = material.value_or(0);
      return material.has_value();
    }
    case Mend::Kind::change:
      if (paper) {
        mend.change = Change::paper;
        if (mend.text.empty()) diagnostics_.add(messages::mend_kind, value->span);
        return !mend.text.empty();
      }
      for (const Change change : changes) {
        if (change_word(change) != mend.text) continue;
        mend.change = change;
        return true;
      }
      diagnostics_.add(messages::mend_change, value->span, {mend.text});
      return false;
    case Mend::Kind::swap:
      break;
  }
  return false;
}

bool RulesetBuilder::read_swap(const text::Node& node, const Rule& rule, Mend& mend) {
  if (node.kind != text::Node::Kind::list || node.items.size() != 2) {
    diagnostics_.add(messages::mend_pair, node.span);
    return false;
  }
  const auto out = text::text_of(node.items[0], diagnostics_);
  const auto in = text::text_of(node.items[1], diagnostics_);
  if (!out || !in) return false;
  mend.text = text::trimmed(*out);
  const auto selection = read_selection(node.items[0], rule);
  const auto material = read_material(node.items[1]);
  if (!selection || !material) return false;
  mend.selection = *selection;
  mend.material = *material;
  return true;
}

/// A selection as in `share(…)`, or the word of what the rule goes over: `material`, `row`.
std::optional<std::uint32_t> RulesetBuilder::read_selection(const text::Node& node,
                                                            const Rule& rule) {
  const bool has_subject = rule.each == Each::material || rule.each == Each::row;
  if (has_subject && text::trimmed(node.text) == each_word(rule.each)) {
    return compiler_->subject_selection();
  }
  const auto tree = parse(node, node.text, 0, true);
  if (!tree) return std::nullopt;
  const Placing places = placing(node, 0);
  return compiler_->selection({node.text, *tree, {rule.each, rule.table}, places});
}

std::optional<catalogue::MaterialIndex> RulesetBuilder::read_material(const text::Node& node) {
  const std::string name(text::trimmed(node.text));
  const auto meaning = catalogue_->find_material(name);
  if (meaning.materials.size() == 1) return meaning.materials.front();
  std::vector<std::string> known;
  const bool several = meaning.materials.size() > 1;
  for (const catalogue::Material& material : catalogue_->materials) known.push_back(material.name);
  diagnostics_.add(
      messages::mend_material, node.span,
      {name, several ? std::string(" alone: it means several") : text::hint(name, known)});
  return std::nullopt;
}

}  // namespace sudsmark::rules
