// Rules: what each of them says of itself, and in whose name.
//
//     for (const auto& rule : sudsmark::Rulesets::built_in().rules()) {
//       std::cout << rule.id << ": " << rule.title << '\n';
//     }
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark {

/// One file of rules: a subject under one authority.
struct RulesetInfo {
  std::string name;                  ///< of the file without folder and ending: "surfactant-load"
  std::string subject;               ///< "Surfactant load"
  std::string edition;               ///< "2026-11"; empty: none is stated
  std::string authority;             ///< "law", "standard", "craft"
  std::vector<std::string> markets;  ///< of a law
};

/// A rule. Expressions are as they are written in its file.
struct RuleInfo {
  std::string id;
  std::string title;  ///< what must hold
  std::string why;
  std::string remedy;
  Level level = Level::warning;   ///< of a finding where it does not hold
  Level undecided = Level::note;  ///< where that is not known
  std::string when;               ///< asked when this holds; empty: always
  std::string expect;      ///< what must hold; empty: `decided_by` says what it is held against
  std::string decided_by;  ///< "label", "reading": no expression decides it; empty: `expect`
  std::string paper;       ///< what has to be asked for, where a paper alone shows it
  bool of_tweaks = false;  ///< asked of a tweak and its base
  std::vector<SourceNote> sources;
  std::string ruleset;  ///< RulesetInfo::name of the file that it stands in
  std::string subject;
  std::string authority;
  std::vector<std::string> markets;
};

/// How the examples of all rules fared.
struct ExampleRun {
  std::size_t ran = 0;
  std::vector<Problem> problems;  ///< one for each that does not do as it should
};

}  // namespace sudsmark
