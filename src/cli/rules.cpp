// `rules`: the rulesets in use, whether their examples do as they should, and whether they would
// notice a change.
#include <algorithm>

#include <sudsmark/proof.h>

#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

/// How many of how many, as a line of the table.
std::string tally(const ChangeRun::Kind& kind) {
  const auto right = [](std::size_t number) {
    const std::string digits = std::to_string(number);
    return std::string(digits.size() < 6 ? 6 - digits.size() : 1, ' ') + digits;
  };
  constexpr std::size_t a_word = 30;
  std::string words = kind.words;
  words.resize(std::max(words.size(), a_word), ' ');
  return words + right(kind.made) + " made," + right(kind.noticed) + " noticed," +
         right(kind.explained) + " explained," + right(kind.made - kind.noticed - kind.explained) +
         " not\n";
}

std::string words_of(const ChangeRun& run) {
  std::string out;
  ChangeRun::Kind all{"all", 0, 0, 0};
  for (const ChangeRun::Kind& kind : run.kinds) {
    out += tally(kind);
    all.made += kind.made;
    all.noticed += kind.noticed;
    all.explained += kind.explained;
  }
  out += tally(all);
  for (const ChangeRun::Unnoticed& one : run.unnoticed) {
    if (one.because.empty()) out += one.of + ": " + one.change + "\n";
  }
  for (const std::string& one : run.stale) out += one + ": is said to go unnoticed, and does not\n";
  return out;
}

class Rules {
 public:
  void declare(Options& options) {
    options.flag("--verify", verify_, "run the examples and edges of every rule");
    options.flag(
        "--mutate", mutate_,
        "change each rule in one place at a time, and tell which changes no example notices");
    options.flag("--offer", offer_,
                 "look for edges that would notice them, as YAML to be reviewed");
    options.list("--only", "RULE", only_, "change these rules alone");
    rules_.declare(options);
    output_.declare(options, Command::rules);
    options.flag("--verbose", verbose_, "with the reason of each rule");
    options.excludes("--verbose", "--verify");
    options.needs("--mutate", "--verify");
    options.needs("--offer", "--mutate");
    options.needs("--only", "--mutate");
    options.found("an example does not do as it should, or a change goes unnoticed");
    options.example("sudsmark rules", "every rule by subject");
    options.example("sudsmark rules --verify --rules house/", "the examples of your own rules too");
    options.example("sudsmark rules --verify --mutate --bare --rules house/",
                    "what their examples would not notice");
  }

  Exit run() {
    Inputs inputs;
    ReportOptions look;
    look.verbose = verbose_;
    const auto outputs = Outputs::read(output_, Command::rules, look);
    const auto texts = rules_.read(inputs);
    const auto rulesets = texts ? rules_.with(*texts, output_.ascii) : std::nullopt;
    if (!outputs || !rulesets) return Exit::unusable;
    if (!verify_) return outputs->write(&*rulesets, *rulesets, inputs, Exit::fine);
    CheckOptions chosen;
    chosen.only = only_;
    if (!fits(chosen, *rulesets)) return Exit::unusable;
    const auto verified = verify_examples(*rulesets, *texts);
    tell(verified.problems, output_.ascii);
    if (!verified.value) return Exit::unusable;
    const auto& [ran, problems] = *verified.value;
    tell(problems, output_.ascii);
    std::string words = std::to_string(ran) + " examples ran, " + std::to_string(problems.size()) +
                        (problems.size() == 1 ? " does" : " do") + " not do as they should\n";
    bool found = !problems.empty();
    if (mutate_) {
      const auto run = change_rules(*rulesets, *texts, {only_, offer_, std::nullopt});
      if (!run.value) return Exit::unusable;
      const ChangeRun& changes = *run.value;
      words = offer_ ? changes.edges : words + words_of(changes);
      found = found || !changes.stale.empty() ||
              std::any_of(changes.unnoticed.begin(), changes.unnoticed.end(),
                          [](const auto& one) { return one.because.empty(); });
    }
    return write_words(output_.output == "-" ? std::string() : output_.output, words, !offer_,
                       inputs, found ? Exit::found : Exit::fine);
  }

 private:
  RulesOptions rules_;
  OutputOptions output_;
  std::vector<std::string> only_;
  bool verify_ = false;
  bool mutate_ = false;
  bool offer_ = false;
  bool verbose_ = false;
};

}  // namespace

Subcommand rules_command() {
  return {"rules", "the rulesets in use", declared<Rules>};
}

}  // namespace sudsmark::cli
