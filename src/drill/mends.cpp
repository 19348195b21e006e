#include <algorithm>
#include <set>

#include "drill/choices.h"

namespace sudsmark::drill {
namespace {

bool is_there(const Line& line) {
  return line.amount.has_value() || !line.words.empty();
}

/// Checks of wrong changes before fewer than three have to do.
constexpr int most_checks = 24;
/// Wrong changes that three are chosen among.
constexpr std::size_t most_wrong = 10;
/// Of them, on the line itself: what stands there can be mended by all that it could say.
constexpr std::size_t most_on_the_line = 12;
constexpr std::size_t most_elsewhere = 5;

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
    wrong.insert(wrong.begin(), elsewhere.begin(),
                 elsewhere.begin() +
                     static_cast<std::ptrdiff_t>(std::min(elsewhere.size(), most_elsewhere)));
    int checks = 0;
    for (const Change& change : wrong) {
      if (pool.size() == most_wrong || ++checks > most_checks) break;
      std::string words = words_of(change);
      if (said.contains(words) || !still_broken(change)) continue;
      said.insert(words);
      pool.push_back({std::move(words), 0});
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

  [[nodiscard]] bool still_broken(const Change& change) const {
    const auto more = worse(fault_.before, checker_.verdicts(changed(change)));
    return std::any_of(more.begin(), more.end(), [&](const auto& one) {
      return one.first.rule == fault_.key.rule && one.second.weight >= fault_.weighed.weight;
    });
  }

  /// Of a line as it is shown, where one that is left out is not counted.
  [[nodiscard]] std::uint32_t number_of(Place place) const {
    const bool behind = place.section == fault_.place.section && place.line > fault_.place.line;
    if (behind && !is_there(fault_.is)) --place.line;
    return fault_.written.number(place);
  }

  /// "line 12: 2 % polysorbate 80".
  [[nodiscard]] std::string words_of(const Change& change) const {
    const bool own = change.place == fault_.place;
    const Line& now = own ? fault_.is : fault_.sheet.at(change.place);
    std::string words = squeezed(words_in(fault_.sheet, change.line, fault_.style));
    if (!is_there(now)) {
      return "add under " + fault_.sheet.sections[change.place.section].heading + ": " + words;
    }
    const std::string line = "line " + std::to_string(before_ + number_of(change.place));
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
    // other things that this statement can say
    const std::string word = now.words.substr(0, now.words.find(' '));
    for (const rules::Breakage& other : training_.breakages) {
      if (!other.becomes.starts_with(word + " ") || other.becomes == now.words) continue;
      out.push_back({fault_.place, {other.becomes, {}, false, 0}});
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
