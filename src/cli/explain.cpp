// `explain`: a rule, measure, material or kind of product in full.
#include "cli/checking_options.h"
#include "cli/outputs.h"
#include "cli/subcommand.h"

namespace sudsmark::cli {
namespace {

class Explain {
 public:
  void declare(Options& options) {
    options.words("NAME", words_, 1, 0,
                  "its id or name; `measures` lists the measures, `law` what each market asks for");
    rules_.declare(options);
    output_.declare(options, Command::explain);
    options.example("sudsmark explain emulsifier-to-oil", "a rule: why, limit, sources");
    options.example("sudsmark explain rice bran oil", "a material");
  }

  Exit run() {
    Inputs inputs;
    const auto outputs = Outputs::read(output_, Command::explain);
    const auto rulesets = rules_.load(inputs, output_.ascii);
    if (!outputs || !rulesets) return Exit::unusable;
    std::string name;
    for (const std::string& word : words_) name += (name.empty() ? "" : " ") + word;
    const auto topic = find_topic(name, *rulesets);
    if (topic) return outputs->write(&*topic, *rulesets, inputs, Exit::fine);
    return refused(topic.problems.front().message);
  }

 private:
  std::vector<std::string> words_;
  RulesOptions rules_;
  OutputOptions output_;
};

}  // namespace

Subcommand explain_command() {
  return {"explain", "a rule, measure, material or kind of product in full", declared<Explain>};
}

}  // namespace sudsmark::cli
