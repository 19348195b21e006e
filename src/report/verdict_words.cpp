#include "report/verdict_words.h"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>

#include "report/prose.h"

namespace sudsmark::report {
namespace {

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return in_words(count) + " " + (count == 1 ? one : many);
}

std::string broken(const Tally& tally) {
  if (tally.must == 0 && tally.should == 0) return "Nothing that was decided asks for a change.";
  std::string out;
  if (tally.must > 0) out = counted(tally.must, "thing must change", "things must change");
  if (tally.should > 0) {
    out += tally.must == 0 ? counted(tally.should, "thing should change", "things should change")
                           : " and " + counted(tally.should, "should", "should");
  }
  return capital(out) + " before this is made.";
}

}  // namespace

std::string_view change_word(Level level) {
  return level == Level::error     ? "must change"
         : level == Level::warning ? "should change"
                                   : "worth knowing";
}

std::string_view verdict_word(const Finding& finding) {
  if (finding.allowed) return "allowed";
  switch (finding.kind) {
    case Kind::fail:
      return change_word(finding.level);
    case Kind::review:
      return finding.met_from_memory ? "kept" : "depends";
    case Kind::open:
      return "not known";
    case Kind::pass:
      return "kept";
    case Kind::not_applicable:
      break;
  }
  return "does not apply";
}

std::string_view message_under_heading(const Finding& finding) {
  constexpr std::array<std::string_view, 3> told{
      "it depends on the true figures: ", "the limit is from memory and is to be looked up: ",
      "not known: "};
  std::string_view message = finding.message;
  for (const std::string_view words : told) {
    const bool said = finding.kind == Kind::review || finding.kind == Kind::open;
    if (said && message.starts_with(words)) message.remove_prefix(words.size());
  }
  return message;
}

int gravity(const Finding& finding) {
  constexpr int kinds = 4;
  const bool weighs = finding.kind == Kind::fail || finding.kind == Kind::open ||
                      (finding.kind == Kind::review && !finding.met_from_memory);
  if (!weighs || finding.allowed) return 0;
  const int kind = finding.kind == Kind::fail ? 3 : finding.kind == Kind::review ? 2 : 1;
  return kinds * static_cast<int>(finding.level) + kind;
}

Tally tally(const FormulaResult& formula) {
  Tally out;
  for (const Finding& finding : formula.findings) {
    if (finding.standing == Standing::fresh) ++out.fresh;
    if (finding.allowed) {
      ++out.allowed;
      continue;
    }
    switch (finding.kind) {
      case Kind::pass:
        ++out.kept;
        break;
      case Kind::fail:
        ++(finding.level == Level::error     ? out.must
           : finding.level == Level::warning ? out.should
                                             : out.noted);
        break;
      case Kind::review:
        ++(finding.met_from_memory ? out.from_memory : out.perhaps);
        break;
      case Kind::open:
        ++out.undecided;
        break;
      case Kind::not_applicable:
        ++out.outside;
        break;
    }
  }
  return out;
}

std::string verdict_in_short(const FormulaResult& formula) {
  return broken(tally(formula));
}

std::string verdict_words(const FormulaResult& formula) {
  const Tally of = tally(formula);
  std::string out = broken(of);
  if (of.perhaps > 0) {
    out += " " + capital(counted(of.perhaps, "thing depends", "things depend")) +
           " on the true figures.";
  }
  if (of.undecided > 0) {
    std::vector<std::string> things;
    for (const Undecided& one : undecided(formula)) {
      things.insert(things.end(), one.missing.begin(), one.missing.end());
    }
    std::sort(things.begin(), things.end());
    const auto different =
        static_cast<std::size_t>(std::unique(things.begin(), things.end()) - things.begin());
    out += " " +
           capital(different == 0 ? "something is not known"
                                  : counted(different, "thing is", "things are") + " not known") +
           ", and " + counted(of.undecided, "check waits", "checks wait") + " for " +
           (different > 1 ? "them." : "it.");
  }
  if (of.noted > 0) {
    out += " " + capital(counted(of.noted, "thing is", "things are")) + " worth knowing.";
  }
  if (of.allowed > 0) {
    out += " " + capital(counted(of.allowed, "finding is", "findings are")) +
           " allowed by the maker, with a reason.";
  }
  return out;
}

std::vector<Undecided> undecided(const FormulaResult& formula) {
  std::map<std::vector<std::string>, Undecided> gathered;
  for (const Finding& finding : formula.findings) {
    if (finding.kind != Kind::open || finding.allowed) continue;
    Undecided& one = gathered[finding.missing];
    one.missing = finding.missing;
    one.level = std::max(one.level, finding.level);
    one.findings.push_back(&finding);
  }
  std::vector<Undecided> out;
  for (auto& [missing, one] : gathered) out.push_back(std::move(one));
  std::stable_sort(out.begin(), out.end(), [](const Undecided& a, const Undecided& b) {
    return std::pair(a.level, a.findings.size()) > std::pair(b.level, b.findings.size());
  });
  return out;
}

std::string in_words(std::size_t count) {
  constexpr std::array<std::string_view, 13> words{"no",   "one",    "two",   "three", "four",
                                                   "five", "six",    "seven", "eight", "nine",
                                                   "ten",  "eleven", "twelve"};
  return count < words.size() ? std::string(words[count]) : std::to_string(count);
}

}  // namespace sudsmark::report
