// `rules`: the rulesets in use, and whether their examples do as they should.
#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Rules {
 public:
  void declare(Options& options) {
    options.flag("--verify", verify_, "run the examples of every rule");
    rules_.declare(options);
    output_.declare(options, Command::rules);
    options.flag("--verbose", verbose_, "with the reason of each rule");
    options.excludes("--verbose", "--verify");
    options.found("an example does not do as it should");
    options.example("sudsmark rules", "every rule by subject");
    options.example("sudsmark rules --verify --rules house/", "the examples of your own rules too");
  }

  Exit run() {
    Inputs inputs;
    ReportOptions look;
    look.verbose = verbose_;
    const auto outputs = Outputs::read(output_, Command::rules, look);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    if (!outputs || !rulesets) return Exit::unusable;
    if (!verify_) return outputs->write(&*rulesets, *rulesets, inputs, Exit::fine);
    const auto [ran, problems] = verify_examples(*rulesets);
    tell(problems, output_.ascii);
    const std::string words = std::to_string(ran) + " examples ran, " +
                              std::to_string(problems.size()) +
                              (problems.size() == 1 ? " does" : " do") + " not do as they should\n";
    return write_words(output_.output == "-" ? std::string() : output_.output, words, true, inputs,
                       problems.empty() ? Exit::fine : Exit::found);
  }

 private:
  RulesOptions rules_;
  OutputOptions output_;
  bool verify_ = false;
  bool verbose_ = false;
};

}  // namespace

Subcommand rules_command() {
  return {"rules", "the rulesets in use", declared<Rules>};
}

}  // namespace sudsmark::cli
