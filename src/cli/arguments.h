// What the command line asked for.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/check.h>

namespace sudsmark::cli {

/// Exit statuses of the contract.
enum class Exit : int { fine = 0, found = 1, unusable = 2, broken = 3 };

enum class Format { text, json, sarif, html };

struct Arguments {
  std::vector<std::string> files;    ///< files and folders; "-" is standard input
  std::vector<std::string> names;    ///< of `explain` and `drill`
  std::vector<std::string> formats;  ///< as typed: "json", "sarif=out.sarif"
  std::string output;                ///< empty: standard output
  std::vector<std::string> rules;    ///< folders or files of a user's rulesets
  bool bare = false;
  std::vector<std::string> markets;
  std::string on;
  std::vector<std::string> only;
  std::vector<std::string> without;
  Level fail_on = Level::warning;
  unsigned jobs = 0;   ///< 0: one for each processor
  bool color = false;  ///< of what goes to standard output
  bool ascii = false;
  std::string baseline;        ///< file to compare with; empty: none
  std::string write_baseline;  ///< file to write; empty: none
  std::string write;           ///< of `suggest`: the tweak file to write; empty: none
  bool replace = false;        ///< of `suggest`: it may take the place of a file
  unsigned answer = 1;         ///< of `suggest`: which answer to write
  std::string swap;            ///< of `suggest`: the material to find others for
  bool verbose = false;
  bool allow_outside = false;
  bool verify = false;
  bool rounded = false;
  std::string batch;               ///< as typed: "6kg"; empty: what the formulas state
  bool base_as_reference = false;  ///< only what is worse than the base counts
  bool sheet = false;              ///< of `measure`: the bench sheet in place of the measures
  std::size_t count = 5;           ///< of `drill`: most exercises
  unsigned deal = 1;               ///< of `drill`: which ones
  bool answers = false;            ///< of `drill`: print them with their solutions
};

}  // namespace sudsmark::cli
