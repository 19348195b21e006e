#include <algorithm>
#include <set>

#include "drill/choices.h"
#include "drill/statements.h"

namespace sudsmark::drill {
namespace {

bool is_there(const Line& line) {
  return line.amount.has_value() || !line.words.empty();
}

/// Checks of wrong changes before fewer than three have to do.
constexpr int most_checks = 26;
/// Wrong changes that three are chosen among.
constexpr std::size_t most_wrong = 10;
/// Of them, on the line itself: what stands there can be mended by all that it could say.
constexpr std::size_t most_on_the_line = 16;
constexpr std::size_t most_elsewhere = 8;

/// Who has found the line looks for changes of it, and where a material is to be another, for
/// others.
constexpr double closeness_of_the_line = 6;
constexpr double closeness_of_a_material = 14;

/// A change of the broken card: this line there, or none.
struct Change {
  Place place;
  Line line;
};

class Mends {
 public:
  Mends(const rules::Training& training, const Checker& checker, const Fault& fault,
        std::uint32_t before, Draws& draws)
      : training_(training), checker_(checker), fault_(fault), before_(before), draws_(draws) {}

  std::vector<Choice> made() {
    std::vector<Candidate> pool;
    std::set<std::string> said;
    const std::string right = words_of({fault_.place, fault_.was});
    said.insert(right);
    std::vector<Change> wrong = on_the_line();
    draws_.shuffle(wrong);
    if (wrong.size() > most_on_the_line) wrong.resize(most_on_the_line);
    // what is left out or put back is said in other words than a change: so are others then
    const std::vector<Change> elsewhere = on_other_lines();
    const bool changes = is_there(fault_.was) && is_there(fault_.is);
    const auto end = static_cast<std::ptrdiff_t>(std::min(elsewhere.size(), most_elsewhere));
    wrong.insert(changes ? wrong.end() : wrong.begin(), elsewhere.begin(), elsewhere.begin() + end);
    int checks = 0;
    for (const Change& change : wrong) {
      if (pool.size() == most_wrong || ++checks > most_checks) break;
      std::string words = words_of(change);
      if (said.contains(words) || !still_broken(change)) continue;
      said.insert(words);
      const bool there = change.place == fault_.place;
      const bool other = there && change.line.amount && fault_.is.amount &&
                         change.line.amount->name != fault_.is.amount->name;
      pool.push_back({std::move(words), other   ? closeness_of_a_material
                                        : there ? closeness_of_the_line
                                                : 0});
    }
    const Line& line = is_there(fault_.is) ? fault_.is : fault_.was;
    return balanced(right, pool, words_in(fault_.sheet, line, fault_.style), fault_.written.text,
                    draws_);
  }

 private:
  /// The broken card with a change.
  [[nodiscard]] TrialText changed(const Change& change) const {
    if (change.place == fault_.place) {
      return {FaultMaker::written(fault_, change.line).text, fault_.broken.base};
    }
    Fault other = fault_;
    if (is_there(change.line)) {
      const double order = other.sheet.at(change.place).order;
      other.sheet.at(change.place) = change.line;
      other.sheet.at(change.place).order = order;
      return {FaultMaker::written(other, fault_.is).text, fault_.broken.base};
    }
    auto& lines = other.sheet.sections[change.place.section].lines;
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(change.place.line));
    const bool shifts =
        change.place.section == fault_.place.section && change.place.line < fault_.place.line;
    if (shifts) --other.place.line;
    return {FaultMaker::written(other, fault_.is).text, fault_.broken.base};
  }

  /// Whether some rule, this or another, still says more than of the sound card. What cannot be
  /// read would be no riddle.
  [[nodiscard]] bool still_broken(const Change& change) const {
    const auto more = worse(fault_.before, checker_.verdicts(changed(change)));
    const bool reads = fault_.key.rule == reading_rule ||
                       std::none_of(more.begin(), more.end(),
                                    [](const auto& one) { return one.first.rule == reading_rule; });
    return reads && !more.empty();
  }

  /// Of a line as it is shown, where one that is left out is not counted.
  [[nodiscard]] std::uint32_t number_of(Place place) const {
    const bool behind = place.section == fault_.place.section && place.line > fault_.place.line;
    if (behind && !is_there(fault_.is)) --place.line;
    return fault_.written.number(place);
  }

  /// "line 12: 2 %" where the material stays, "line 12: 2 % lecithin" where it does not, and
  /// "line 31: FFP2" of a statement: a name that stands there already would tell a change of the
  /// faulty line from others.
  [[nodiscard]] std::string words_of(const Change& change) const {
    const bool own = change.place == fault_.place;
    const Line& now = own ? fault_.is : fault_.sheet.at(change.place);
    std::string words = squeezed(words_in(fault_.sheet, change.line, fault_.style));
    if (!is_there(now)) {
      return "add under " + fault_.sheet.sections[change.place.section].heading + ": " + words;
    }
    const std::string line = "line " + std::to_string(before_ + number_of(change.place));
    const Line& to = change.line;
    const bool swapped =
        fault_.was.amount && fault_.is.amount && fault_.was.amount->name != fault_.is.amount->name;
    if (now.amount && to.amount && now.amount->name == to.amount->name && !swapped) {
      words.resize(words.size() - now.amount->name.size() - 1);
    } else if (!now.amount && !to.amount && is_there(to)) {
      words.erase(0, words.find(' ') + 1);
    }
    return is_there(change.line) ? line + ": " + words : line + ": leave it out";
  }

  static std::string squeezed(const std::string& words) {
    std::string out;
    for (const char c : words) {
      if (c != ' ' || out.empty() || out.back() != ' ') out += c;
    }
    return out;
  }

  void scale(std::vector<Change>& out, const Place& place, const Line& line) {
    if (!line.amount || line.fills) return;
    for (const double factor : {0.4, 0.6, 0.8, 0.9, 1.1, 1.3, 1.6, 2.2}) {
      Line other = line;
      other.amount->drawn = rounded(line.amount->drawn * factor);
      out.push_back({place, std::move(other)});
    }
  }

  [[nodiscard]] std::vector<Change> on_the_line() {
    std::vector<Change> out;
    const Line& now = fault_.is;
    scale(out, fault_.place, now);
    if (is_there(now) && is_there(fault_.was)) {
      const bool same =
          now.amount && fault_.was.amount && now.amount->name == fault_.was.amount->name;
      if (!same) scale(out, fault_.place, fault_.was);
    }
    const bool swapped = now.amount && fault_.was.amount;
    if (swapped && now.amount->name != fault_.was.amount->name) add_others(out);
    if (now.amount || now.words.empty()) return out;
    for (std::string& words : said_otherwise(now.words, training_)) {
      if (words == fault_.was.words) continue;
      out.push_back({fault_.place, {std::move(words), {}, false, 0}});
    }
    return out;
  }

  [[nodiscard]] std::vector<Change> on_other_lines() {
    std::vector<Change> out;
    for (std::size_t at = 0; at < fault_.sheet.sections.size(); ++at) {
      const Section& section = fault_.sheet.sections[at];
      for (std::size_t in = 0; in < section.lines.size(); ++in) {
        const Place place{at, in};
        if (place == fault_.place) continue;
        if (is_there(fault_.was) && is_there(fault_.is)) {
          scale(out, place, section.lines[in]);
        } else if (is_there(fault_.is)) {
          out.push_back({place, {}});
        }
      }
    }
    if (!is_there(fault_.is)) add_others(out);
    draws_.shuffle(out);
    return out;
  }

  /// Lines of other cards that could be put in there.
  void add_others(std::vector<Change>& out) {
    constexpr std::size_t cards = 6;
    const std::string& heading = fault_.sheet.sections[fault_.place.section].heading;
    const std::string word = heading.substr(0, heading.find(' '));
    for (std::size_t at = 0; at < cards; ++at) {
      Sheet other = read_sheet(training_.cards[draws_.below(training_.cards.size())].formula);
      draw_amounts(other, draws_);
      const auto section = find_section(other, word);
      if (!section) continue;
      for (const Line& line : other.sections[*section].lines) {
        const bool scent = line.amount && line.amount->name.starts_with('"');
        if (!line.fills && !scent) out.push_back({fault_.place, line});
      }
    }
  }

  const rules::Training& training_;
  const Checker& checker_;
  const Fault& fault_;
  std::uint32_t before_;
  Draws& draws_;
};

}  // namespace

std::vector<Choice> mends(const rules::Training& training, const Checker& checker,
                          const Fault& fault, std::uint32_t before, Draws& draws) {
  return Mends(training, checker, fault, before, draws).made();
}

}  // namespace sudsmark::drill
