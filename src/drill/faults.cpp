#include "drill/faults.h"

#include <algorithm>
#include <cmath>

namespace sudsmark::drill {
namespace {

/// Cards that are tried for one fault before it is given up.
constexpr int most_cards = 10;

bool is_there(const Line& line) {
  return line.amount.has_value() || !line.words.empty();
}

/// An amount between the end of a window that is nearest to what was there, and the other.
double between_ends(const Amount& window, double was, double far) {
  const bool low_is_near = std::abs(window.low - was) <= std::abs(window.high - was);
  const double near_end = low_is_near ? window.low : window.high;
  const double far_end = low_is_near ? window.high : window.low;
  return near_end + (far_end - near_end) * far;
}

/// Where a breakage strikes, and what stood there; the line is on the sheet in any case.
struct Struck {
  Place place;
  Line was;
  Line is;
};

std::optional<Struck> strike(Sheet& sheet, const rules::Breakage& breakage) {
  using Kind = rules::Breakage::Kind;
  Struck out;
  if (breakage.kind == Kind::add) {
    const auto section = find_section(sheet, breakage.under);
    if (!section) return std::nullopt;
    auto& lines = sheet.sections[*section].lines;
    out.place = {*section, lines.size()};
    out.is = read_line(breakage.becomes);
    if (!sheet.sections[*section].holds_amounts()) out.is = {breakage.becomes, {}, false, 0};
    lines.push_back(out.is);
    return out;
  }
  const auto place = find_line(sheet, breakage.line);
  if (!place) return std::nullopt;
  out.place = *place;
  out.was = sheet.at(*place);
  if (breakage.kind == Kind::remove) return out;
  out.is = read_line(breakage.becomes);
  if (!sheet.sections[place->section].holds_amounts()) out.is = {breakage.becomes, {}, false, 0};
  return out;
}

/// The sheet with a line in a place, or without any there.
Sheet with_line(Sheet sheet, const Place& place, const Line& line) {
  auto& lines = sheet.sections[place.section].lines;
  const double order = lines[place.line].order;
  if (is_there(line)) {
    lines[place.line] = line;
    lines[place.line].order = order;
  } else {
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(place.line));
  }
  return sheet;
}

bool has_statement(const Section& section, std::string_view line) {
  const std::string_view word = line.substr(0, line.find(' '));
  return std::any_of(section.lines.begin(), section.lines.end(), [&](const Line& one) {
    return std::string_view(one.words).substr(0, one.words.find(' ')) == word;
  });
}

}  // namespace

Written FaultMaker::written(const Fault& fault, const Line& line) {
  return write(with_line(fault.sheet, fault.place, line), fault.style);
}

void FaultMaker::add_harmless(Sheet& sheet, Draws& draws) const {
  for (const rules::HarmlessLine& one : ruleset_.training->harmless) {
    if (!draws.once_in(4)) continue;
    const auto section = find_section(sheet, one.under);
    if (!section || has_statement(sheet.sections[*section], one.line)) continue;
    sheet.sections[*section].lines.push_back({one.line, {}, false, 0});
  }
}

std::optional<SoundCard> FaultMaker::sound(const rules::ModelCard& card, Draws& draws) const {
  SoundCard out;
  Sheet middle = read_sheet(card.formula);
  out.sheet = middle;
  take_middles(middle);
  out.original = write(middle, Style::fills).text;
  const std::size_t notes = checker_.verdicts({out.original, {}}).notes();
  constexpr int tries = 4;
  for (int at = 0; at < tries; ++at) {
    Sheet sheet = out.sheet;
    draw_amounts(sheet, draws);
    if (at + 1 < tries) add_harmless(sheet, draws);
    const auto ways = styles(sheet);
    out.style = ways[draws.below(ways.size())];
    const Section& first = sheet.sections.front();
    lay_out(sheet, {0, draws.below(first.lines.size())}, draws);
    out.verdicts = checker_.verdicts({write(sheet, out.style).text, {}});
    if (!out.verdicts.clean() || out.verdicts.notes() > notes) continue;
    out.sheet = std::move(sheet);
    return out;
  }
  return std::nullopt;
}

const rules::ModelCard& FaultMaker::card_of(const rules::Breakage& breakage, Draws& draws) const {
  const std::string& name = breakage.cards[draws.below(breakage.cards.size())];
  const auto& cards = ruleset_.training->cards;
  return *std::find_if(cards.begin(), cards.end(),
                       [&](const rules::ModelCard& card) { return card.name == name; });
}

std::optional<Fault> FaultMaker::broken(const rules::Breakage& breakage, bool near,
                                        Draws& draws) const {
  const rules::ModelCard& model = card_of(breakage, draws);
  auto card = sound(model, draws);
  if (!card) return std::nullopt;
  Fault out;
  out.card = model.name;
  out.sheet = std::move(card->sheet);
  out.style = card->style;
  out.original = std::move(card->original);
  auto struck = strike(out.sheet, breakage);
  if (!struck) return std::nullopt;
  out.place = struck->place;
  out.was = std::move(struck->was);
  out.is = std::move(struck->is);
  lay_out(out.sheet, out.place, draws);
  out.sound.formula = written(out, out.was).text;
  out.before = checker_.verdicts(out.sound);
  if (!out.before.clean()) return std::nullopt;
  const bool window = out.is.amount && out.is.amount->high > out.is.amount->low;
  const double was = out.was.amount ? out.was.amount->drawn : 0;
  double far = near ? draws.between(0, 0.1) : draws.between(0.2, 1);
  for (;; far = std::min(1.0, far + 0.3)) {
    if (window) out.is.amount->drawn = rounded(between_ends(*out.is.amount, was, far));
    out.written = written(out, out.is);
    out.broken.formula = out.written.text;
    const auto more = worse(out.before, checker_.verdicts(out.broken));
    if (more.size() == 1 && more.front().first.rule == breakage.rule) {
      out.key = more.front().first;
      out.weighed = more.front().second;
      out.near = near && window && far < 0.2;
      return out;
    }
    if (!window || !more.empty() || far >= 1) return std::nullopt;
  }
}

std::optional<Fault> FaultMaker::fault(const std::string& rule, bool near, Draws& draws) const {
  std::vector<const rules::Breakage*> ways;
  for (const rules::Breakage& one : ruleset_.training->breakages) {
    if (one.rule == rule && one.kind != rules::Breakage::Kind::tweak) ways.push_back(&one);
  }
  if (ways.empty()) return std::nullopt;
  for (int at = 0; at < most_cards; ++at) {
    if (auto made = broken(*ways[draws.below(ways.size())], near, draws)) return made;
  }
  return std::nullopt;
}

}  // namespace sudsmark::drill
