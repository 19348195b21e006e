#include "cli/checking_options.h"

#include "cli/exit.h"
#include "quantity/number.h"
#include "quantity/unit.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t most_ruleset = std::size_t{8} << 20U;

/// Digits alone, as many as there have to be.
std::optional<int> read_digits(std::string_view digits) {
  int value = 0;
  for (const char c : digits) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + (c - '0');
  }
  return value;
}

std::optional<std::chrono::year_month_day> read_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = read_digits(text.substr(0, 4));
  const auto month = read_digits(text.substr(5, 2));
  const auto day = read_digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  if (!date.ok()) return std::nullopt;
  return date;
}

/// "6kg", "6 kg", "500 g" [g].
std::optional<double> read_batch(const std::string& typed) {
  const std::size_t end = typed.find_first_not_of("0123456789.");
  if (end == std::string::npos) return std::nullopt;
  const std::size_t word = typed.find_first_not_of(' ', end);
  if (word == std::string::npos) return std::nullopt;
  const auto number = quantity::read_number(std::string_view(typed).substr(0, end));
  const auto unit = quantity::find_unit(std::string_view(typed).substr(word));
  const auto gram = quantity::find_unit("g");
  constexpr double largest = 1e12;  // as of any number in a formula
  if (!number || !unit || unit->dimension != gram->dimension) return std::nullopt;
  if (!(*number > 0) || *number > largest) return std::nullopt;
  return unit->to_base(*number);
}

/// The files that one word after `--rules` stands for; none if it cannot be read.
std::optional<std::vector<std::string>> files_of(const std::string& named) {
  if (!text::is_folder(named)) return std::vector<std::string>{named};
  const text::FilesBelow below = text::files_below(named, ".yaml");
  for (const auto& [path, reason] : below.unread) {
    complain("'" + path + "' of the rules folder cannot be read: " + reason);
  }
  for (const std::string& link : below.linked_folders) {
    remark("'" + link + "' is a link to a folder, and is not followed");
  }
  if (!below.unread.empty()) return std::nullopt;
  if (!below.files.empty()) return below.files;
  complain("no *.yaml stands in the rules folder '" + named + "'");
  return std::nullopt;
}

}  // namespace

void RulesOptions::declare(Options& options) {
  options.heading("Rules");
  options.texts("--rules", "DIR", rules,
                "a folder or file of rulesets that adds to the built-in ones");
  options.usually("--rules", "the built-in ones alone");
  options.flag("--bare", bare, "leave the built-in rules out; the catalogue stays");
}

std::optional<std::vector<RulesetText>> RulesOptions::read(Inputs& inputs) const {
  std::vector<RulesetText> texts;
  bool sound = true;
  for (const std::string& named : rules) {
    const auto files = files_of(named);
    sound = sound && files;
    if (!files) continue;
    for (const std::string& file : *files) {
      text::FileBytes bytes = inputs.read(file, most_ruleset);
      if (bytes.bytes) {
        texts.push_back({file, std::move(*bytes.bytes)});
        continue;
      }
      complain("the rules file '" + file + "' cannot be read: " + bytes.reason);
      sound = false;
    }
  }
  if (!sound) return std::nullopt;
  return texts;
}

std::optional<Rulesets> RulesOptions::with(const std::vector<RulesetText>& texts,
                                           bool ascii) const {
  // kept to the end of the process, which is near: taking a catalogue apart costs as much as a
  // check
  static const auto* const kept = new Rulesets(Rulesets::built_in());
  const Rulesets& built_in = *kept;
  if (texts.empty() && !bare) return built_in;
  const Result<Rulesets> all = built_in.with(texts, bare);
  tell(all.problems, ascii);
  return all.value;
}

std::optional<Rulesets> RulesOptions::load(Inputs& inputs, bool ascii) const {
  const auto texts = read(inputs);
  return texts ? with(*texts, ascii) : std::nullopt;
}

void DayOption::declare(Options& options) {
  options.text("--on", "DATE", on, "the day whose law holds, for example 2026-11-01");
  options.usually("--on", "today");
}

bool DayOption::read_into(std::optional<std::chrono::year_month_day>& day) const {
  if (on.empty()) return true;
  day = read_date(on);
  if (!day) complain("'" + on + "' is no day: write --on 2026-11-01");
  return day.has_value();
}

void FormulaOptions::declare(Options& options) {
  options.heading("Formulas");
  options.list("--market", "MARKET", markets, "the markets whose law holds, for example EU,GB");
  options.usually("--market", "the formula's own");
  day.declare(options);
  options.text("--batch", "MASS", batch, "make this much, in the same shares, for example 6kg");
  options.usually("--batch", "the formula's own");
  options.flag("--allow-outside", allow_outside,
               "includes and links may leave the folder of the formula");
}

bool FormulaOptions::read_into(CheckOptions& options) const {
  options.allow_outside = allow_outside;
  options.markets = markets;
  const bool day_sound = day.read_into(options.on);
  if (batch.empty()) return day_sound;
  options.batch = read_batch(batch);
  if (!options.batch) complain("'" + batch + "' is no batch: write --batch 6kg");
  return day_sound && options.batch;
}

void RoundedOption::declare(Options& options) {
  options.flag("--rounded", rounded, "take every mass as the scales of the workshop show it");
}

void VerdictOptions::declare(Options& options) {
  options.heading("Verdicts");
  options.choice("--fail-on", {"error", "warning", "note"}, fail_on,
                 "least level that ends with status 1; error is what must change, warning what "
                 "should, note what is worth knowing");
  options.list("--only", "RULE", only, "ask these rules alone");
  options.usually("--only", "all rules");
  options.list("--without", "RULE", without, "leave these rules out");
  options.usually("--without", "none");
}

void VerdictOptions::read_into(CheckOptions& options) const {
  options.only = only;
  options.without = without;
}

Level VerdictOptions::threshold() const {
  return fail_on == "error" ? Level::error : fail_on == "note" ? Level::note : Level::warning;
}

bool fits(const CheckOptions& options, const Rulesets& rulesets) {
  const std::vector<Problem> wrong = wrong_options(options, rulesets);
  for (const Problem& one : wrong) complain(one.message);
  for (const std::string& words : renamed_rules(options, rulesets)) complain(words);
  return wrong.empty();
}

}  // namespace sudsmark::cli
