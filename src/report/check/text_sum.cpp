#include "report/check/text_sum.h"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

#include "report/text_lines.h"

namespace sudsmark::report {
namespace {

/// Findings that ask for something, by what they are.
struct Weighty {
  std::size_t must = 0;
  std::size_t should = 0;
  std::size_t depends = 0;
  std::size_t unknown = 0;
};

bool known_before(const Finding& finding) {
  return finding.standing == Standing::unchanged;
}

Weighty weighty(const FormulaResult& formula) {
  Weighty out;
  for (const Finding& finding : formula.findings) {
    if (finding.allowed || known_before(finding) || finding.level <= Level::note) continue;
    if (finding.kind == Kind::fail) {
      ++(finding.level == Level::error ? out.must : out.should);
    } else if (finding.kind == Kind::review) {
      ++out.depends;
    } else if (finding.kind == Kind::open) {
      ++out.unknown;
    }
  }
  return out;
}

}  // namespace

std::string sum_of(const FormulaResult& formula) {
  const Weighty of = weighty(formula);
  std::string out;
  const auto add = [&](std::size_t count, std::string_view words) {
    if (count == 0) return;
    if (!out.empty()) out += ", ";
    out += std::to_string(count) + " " + std::string(words);
  };
  add(of.must, "must change");
  add(of.should, of.must > 0 ? "should" : "should change");
  add(of.depends, of.depends == 1 ? "depends" : "depend");
  add(of.unknown, "not known");
  return out.empty() ? "nothing to change" : out;
}

void Sum::add(const FormulaResult& formula) {
  const Weighty of = weighty(formula);
  ++formulas_;
  if (of.must > 0) {
    ++must_;
  } else if (of.should > 0) {
    ++should_;
  } else if (of.depends > 0) {
    ++depends_;
  } else if (of.unknown > 0) {
    ++unknown_;
  }
  std::set<std::string_view> rules;
  for (const Finding& finding : formula.findings) {
    const bool broken = finding.kind == Kind::fail && finding.level > Level::note;
    if (broken && !finding.allowed && !known_before(finding)) rules.insert(finding.rule);
  }
  for (const std::string_view rule : rules) ++broken_[std::string(rule)];
}

std::string Sum::sum() const {
  std::string out = std::to_string(formulas_) + (formulas_ == 1 ? " formula: " : " formulas: ");
  const std::size_t first = out.size();
  const auto add = [&](std::size_t count, const char* words) {
    if (count > 0) out += (out.size() > first ? ", " : "") + std::to_string(count) + " " + words;
  };
  add(must_, "must change");
  add(should_, "should change");
  add(depends_, depends_ == 1 ? "depends" : "depend");
  add(unknown_, "not known");
  add(formulas_ - must_ - should_ - depends_ - unknown_, "sound");
  return out;
}

std::vector<std::pair<std::string, std::size_t>> Sum::broken_most(std::size_t most) const {
  std::vector<std::pair<std::string, std::size_t>> out(broken_.begin(), broken_.end());
  std::stable_sort(out.begin(), out.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  out.resize(std::min(out.size(), most));
  return out;
}

std::string Sum::words(const RunResult& run, const ReportOptions& options) const {
  TextLines lines(options.columns);
  const auto files = [](std::size_t count) {
    return std::to_string(count) + (count == 1 ? " file is a library" : " files are libraries");
  };
  const std::string libraries = run.libraries == 0 ? "" : "; " + files(run.libraries);
  if (formulas_ == 0) {
    lines.folded(0, "nothing was checked" + libraries);
    return lines.take();
  }
  if (formulas_ > 1 || options.quiet) {
    lines.folded(0, sum() + libraries);
    std::string often;
    constexpr std::size_t most = 5;
    for (const auto& [rule, count] : broken_most(most)) {
      often += (often.empty() ? "" : ", ") + rule + " (" + std::to_string(count) + ")";
    }
    if (formulas_ > 1 && !often.empty()) lines.folded(0, "broken most often: " + often);
    lines.gap();
  }
  if (!run.absent.empty()) {
    const bool one = run.absent.size() == 1;
    lines.folded(
        0, std::to_string(run.absent.size()) +
               (one ? " finding of the baseline is gone" : " findings of the baseline are gone"));
  }
  lines.folded(0, reminder);
  return lines.take();
}

}  // namespace sudsmark::report
