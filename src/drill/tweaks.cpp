// Faults that only a tweak and its base show together: one of several edits is one.
#include "drill/faults.h"

#include <algorithm>

namespace sudsmark::drill {
namespace {

/// Edits beside the fault.
constexpr std::size_t harmless_edits = 4;
constexpr int most_tries = 10;

/// Edits that leave amounts inside their windows, in the order of the card.
std::vector<Line> small_edits(const Sheet& sheet, Draws& draws) {
  std::vector<Line> out;
  for (const Section& section : sheet.sections) {
    if (!section.heading.starts_with("phase")) continue;
    for (const Line& line : section.lines) {
      if (!line.amount || line.fills || line.amount->unit != "%") continue;
      const Amount& amount = *line.amount;
      Line moved = line;
      moved.amount->drawn = rounded(draws.between(amount.low, amount.high));
      if (moved.amount->drawn == amount.drawn) continue;
      const std::string edit = words(moved);
      const std::string figure = edit.substr(0, edit.find('%') + 1);
      out.push_back({"set " + amount.name + " to " + figure, {}, false, 0});
    }
  }
  draws.shuffle(out);
  if (out.size() > harmless_edits) out.resize(harmless_edits);
  return out;
}

}  // namespace

std::optional<Fault> FaultMaker::tweak(const std::string& rule, Draws& draws) const {
  std::vector<const rules::Breakage*> ways;
  for (const rules::Breakage& one : ruleset_.training->breakages) {
    if (one.rule == rule && one.kind == rules::Breakage::Kind::tweak) ways.push_back(&one);
  }
  for (int at = 0; at < most_tries && !ways.empty(); ++at) {
    const rules::Breakage& breakage = *ways[draws.below(ways.size())];
    const rules::ModelCard& model = card_of(breakage, draws);
    auto card = sound(model, draws);
    if (!card) continue;
    Fault out;
    out.card = model.name;
    out.original = std::move(card->original);
    out.sound.base = out.broken.base = write(card->sheet, Style::fills).text;
    // the edits are a sheet of their own: one section, one line an edit
    Sheet edits;
    edits.sections.push_back({std::string("tweak \"Next batch\" of \"") + base_path + "\"", {}, 0});
    auto& lines = edits.sections.front().lines;
    lines = small_edits(card->sheet, draws);
    // a tweak of the same material would be said twice
    const std::string& edit = breakage.becomes;
    lines.erase(std::remove_if(lines.begin(), lines.end(),
                               [&](const Line& line) {
                                 const std::size_t to = line.words.rfind(" to ");
                                 return edit.find(line.words.substr(4, to - 4)) != edit.npos;
                               }),
                lines.end());
    out.is.words = edit;
    out.place = {0, lines.size()};
    lines.push_back(out.is);
    lay_out(edits, out.place, draws);
    out.sheet = std::move(edits);
    out.sound.formula = written(out, out.was).text;
    out.before = checker_.verdicts(out.sound);
    if (!out.before.clean()) continue;
    out.written = written(out, out.is);
    out.broken.formula = out.written.text;
    const auto more = worse(out.before, checker_.verdicts(out.broken));
    if (more.size() != 1 || more.front().first.rule != rule) continue;
    out.key = more.front().first;
    out.weighed = more.front().second;
    return out;
  }
  return std::nullopt;
}

}  // namespace sudsmark::drill
