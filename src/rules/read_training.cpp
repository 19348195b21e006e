// What exercises are drawn from: `cards`, `breakages`, `harmless`, `chapters` and `cautions`.
#include <utility>

#include "rules/builder.h"
#include "rules/messages.h"

namespace sudsmark::rules {
namespace {

ModelCard read_card(text::Fields& fields) {
  return {fields.needed_text("name"), fields.needed_text("formula") + "\n"};
}

HarmlessLine read_harmless(text::Fields& fields) {
  return {fields.needed_text("line"), fields.needed_text("under")};
}

Caution read_caution(text::Fields& fields) {
  return {fields.needed_text("name"), fields.needed_text("words"), fields.text("first aid"),
          fields.text("source")};
}

Chapter read_chapter(text::Fields& fields) {
  Chapter chapter;
  chapter.name = fields.needed_text("name");
  chapter.title = fields.needed_text("title");
  chapter.what = fields.needed_text("what");
  chapter.why = fields.needed_text("why");
  chapter.card = fields.needed_text("card");
  chapter.sum = fields.needed_text("sum");
  chapter.working = fields.strings("working");
  chapter.subjects = fields.strings("subjects");
  chapter.practice = fields.strings("practice");
  chapter.assessor = fields.needed_text("assessor");
  chapter.cautions = fields.strings("cautions");
  return chapter;
}

}  // namespace

void RulesetBuilder::add_training(text::Fields& file) {
  const auto each = [&](std::string_view key, auto& list, auto&& read) {
    for (const text::Node& node : file.list(key)) {
      text::Fields fields(node, diagnostics_);
      if (!fields.valid()) continue;
      training_ = file.node().span;
      list.push_back(read(fields));
      fields.refuse_others();
    }
  };
  Training& training = *ruleset_.training;
  each("cards", training.cards, read_card);
  each("breakages", training.breakages,
       [&](text::Fields& fields) { return read_breakage(fields); });
  each("harmless", training.harmless, read_harmless);
  each("chapters", training.chapters, read_chapter);
  each("cautions", training.cautions, read_caution);
}

Breakage RulesetBuilder::read_breakage(text::Fields& fields) {
  Breakage out;
  out.rule = fields.needed_text("rule");
  out.cards = fields.strings("cards");
  out.line = fields.text("line");
  out.becomes = fields.text("becomes");
  const std::string added = fields.text("add");
  const std::string gone = fields.text("leave out");
  const std::string edit = fields.text("tweak");
  const int ways = (out.becomes.empty() ? 0 : 1) + (added.empty() ? 0 : 1) +
                   (gone.empty() ? 0 : 1) + (edit.empty() ? 0 : 1);
  if (ways != 1 || out.becomes.empty() != out.line.empty()) {
    diagnostics_.add(messages::breakage_way, fields.node().span);
  }
  if (!added.empty()) {
    out.kind = Breakage::Kind::add;
    out.becomes = added;
    out.under = fields.needed_text("under");
  } else if (!gone.empty()) {
    out.kind = Breakage::Kind::remove;
    out.line = gone;
  } else if (!edit.empty()) {
    out.kind = Breakage::Kind::tweak;
    out.becomes = edit;
  }
  return out;
}

/// What exercises name has to be there, once all files of all layers are read.
void RulesetBuilder::check_training(const text::Span& place) {
  const Training& training = *std::as_const(ruleset_).training;
  const auto is_card = [&](const std::string& name) {
    for (const ModelCard& card : training.cards) {
      if (card.name == name) return true;
    }
    return false;
  };
  const auto unknown = [&](const std::string& what, const std::string& name) {
    diagnostics_.add(messages::training_unknown, place, {what, name});
  };
  for (const Breakage& one : training.breakages) {
    if (!ruleset_.find_rule(one.rule)) unknown("rule", one.rule);
    for (const std::string& card : one.cards) {
      if (!is_card(card)) unknown("model card", card);
    }
  }
  for (const Chapter& chapter : training.chapters) {
    if (!is_card(chapter.card)) unknown("model card", chapter.card);
  }
}

}  // namespace sudsmark::rules
