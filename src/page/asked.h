// What the page asks for, read from the JSON that it sends.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/rulesets.h>

namespace sudsmark::page {

struct Asked {
  std::string what;     ///< "report", "margin", "names", …: a row of answers.cpp
  std::string command;  ///< of a report: "check"
  std::string format;   ///< of a report: "json"
  FormulaText card;
  std::optional<FormulaText> base;           ///< of a comparison
  std::map<std::string, std::string> files;  ///< what may be included, by path
  std::vector<RulesetText> rules;            ///< the reader's own
  std::string name;   ///< of what is explained, swapped or practised, or of a step of an exercise
  std::string typed;  ///< the answer to an exercise
  std::size_t number = 0;  ///< of an answer from 0, of an exercise from 1
  unsigned deal = 1;       ///< the seed of exercises
  bool verbose = false;
  CheckOptions options;  ///< market, day, batch, rounded; what is read comes from `files`
};

/// None, with what is wrong, if the text is no such JSON.
[[nodiscard]] Result<Asked> read_asked(std::string_view json);

}  // namespace sudsmark::page
