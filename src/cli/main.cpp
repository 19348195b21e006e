// The program: reads the command line and calls one command.
#include <CLI/CLI.hpp>
#include <exception>
#include <functional>
#include <iostream>
#include <map>

#include <sudsmark/report.h>

#include "cli/commands.h"
#include "cli/terminal.h"

namespace {

using sudsmark::Level;
using sudsmark::cli::Arguments;
using sudsmark::cli::Exit;

void take_files(CLI::App& command, Arguments& arguments) {
  command.add_option("FILE", arguments.files, "formula files or folders; - is standard input")
      ->required();
}

void take_rules(CLI::App& command, Arguments& arguments) {
  command
      .add_option("--rules", arguments.rules,
                  "a folder or file of rulesets that adds to the built-in ones")
      ->type_name("DIR")
      ->allow_extra_args(false);
  command.add_flag("--bare", arguments.bare, "leave the built-in rules out; the catalogue stays");
}

void take_output(CLI::App& command, Arguments& arguments) {
  command.add_option("--output", arguments.output, "write the report to this file")
      ->type_name("FILE");
}

void take_ascii(CLI::App& command, Arguments& arguments) {
  command.add_flag("--ascii", arguments.ascii, "write ASCII characters alone");
}

void take_format(CLI::App& command, Arguments& arguments, const std::string& formats) {
  command
      .add_option("--format", arguments.formats,
                  formats + "; several times with =PATH to write files beside standard output")
      ->allow_extra_args(false)
      ->type_name("FORMAT[=PATH]");
  take_ascii(command, arguments);
}

void take_baseline(CLI::App& command, Arguments& arguments) {
  command
      .add_option("--baseline", arguments.baseline,
                  "count only what is not in this file of earlier findings")
      ->type_name("FILE");
  command
      .add_option("--write-baseline", arguments.write_baseline,
                  "write what is found to this file, for later runs to compare with")
      ->type_name("FILE");
}

void take_checking(CLI::App& command, Arguments& arguments) {
  command
      .add_option("--market", arguments.markets, "check for these markets, not the formula's own")
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name("MARKET");
  command.add_option("--on", arguments.on, "the day whose law holds, as 2026-11-01; else today")
      ->type_name("DATE");
  command.add_option("--jobs", arguments.jobs, "threads; 0 is one for each processor")
      ->type_name("N");
  command.add_flag("--rounded", arguments.rounded,
                   "take every mass as the scales of the workshop show it");
  command.add_option("--batch", arguments.batch, "make this much, in the same shares, as 6kg")
      ->type_name("MASS");
  command.add_flag("--allow-outside", arguments.allow_outside,
                   "includes may leave the folder of the formula");
}

void take_color(CLI::App& command, std::string& color) {
  command.add_option("--color", color, "auto, always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}));
}

void take_verdicts(CLI::App& command, Arguments& arguments, std::string& color) {
  static const std::map<std::string, Level> levels{
      {"error", Level::error}, {"warning", Level::warning}, {"note", Level::note}};
  command
      .add_option_function<std::string>(
          "--fail-on", [&](const std::string& word) { arguments.fail_on = levels.at(word); },
          "least level that ends with status 1")
      ->check(CLI::IsMember({"error", "warning", "note"}))
      ->type_name("LEVEL");
  command.add_option("--only", arguments.only, "ask these rules alone")
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name("RULE");
  command.add_option("--without", arguments.without, "leave these rules out")
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name("RULE");
  take_color(command, color);
  command.add_flag("--verbose", arguments.verbose, "passes, margins and sources too");
}

void take_suggesting(CLI::App& command, Arguments& arguments) {
  command
      .add_option("--write", arguments.write,
                  "write an answer to this new file, as a tweak with its reasons")
      ->type_name("NEWFILE");
  command.add_option("--answer", arguments.answer, "which answer to write; else the first")
      ->type_name("N");
  command.add_flag("--replace", arguments.replace, "what is written may replace a file");
  command
      .add_option("--swap", arguments.swap,
                  "rank what could stand in the place of this material instead")
      ->type_name("MATERIAL");
}

}  // namespace

int main(int count, char** values) {
  try {
    Arguments arguments;
    std::string color = "auto";
    CLI::App app{"Checks formulas of solid bath products before the powder flies.", "sudsmark"};
    app.set_version_flag("--version", std::string("sudsmark ") + SUDSMARK_VERSION);
    app.require_subcommand(1);
    app.footer(sudsmark::reminder);

    std::function<Exit(const Arguments&)> run;
    CLI::App* check = app.add_subcommand("check", "what every rule says of one or more formulas");
    take_files(*check, arguments);
    take_format(*check, arguments, "text, json, sarif or html");
    take_output(*check, arguments);
    take_rules(*check, arguments);
    take_checking(*check, arguments);
    take_verdicts(*check, arguments, color);
    take_baseline(*check, arguments);
    check->add_flag("--base-as-reference", arguments.base_as_reference,
                    "of a tweak, count only what is worse than in its base");
    check->callback([&] { run = sudsmark::cli::check; });

    CLI::App* compare = app.add_subcommand(
        "compare", "what a tweak changes, what got worse, and which edit did it");
    compare
        ->add_option("FILE", arguments.files,
                     "a base and its tweak, two formulas, or a tweak alone")
        ->required()
        ->expected(1, 2);
    take_format(*compare, arguments, "text, json or html");
    take_output(*compare, arguments);
    take_rules(*compare, arguments);
    take_checking(*compare, arguments);
    take_verdicts(*compare, arguments, color);
    compare->add_flag("--base-as-reference", arguments.base_as_reference,
                      "report only what is worse than in the base");
    compare->callback([&] { run = sudsmark::cli::compare; });

    CLI::App* measure =
        app.add_subcommand("measure", "every measure with its range and what it came from");
    take_files(*measure, arguments);
    take_format(*measure, arguments, "text or json; with --sheet text or html");
    take_output(*measure, arguments);
    take_rules(*measure, arguments);
    take_checking(*measure, arguments);
    take_color(*measure, color);
    measure->add_flag("--sheet", arguments.sheet, "the weighing and bag sheet for the bench");
    measure->callback([&] { run = sudsmark::cli::measure; });

    CLI::App* label = app.add_subcommand(
        "label", "ingredient list, words and papers of a formula, market by market");
    take_files(*label, arguments);
    take_format(*label, arguments, "text or json");
    take_output(*label, arguments);
    take_rules(*label, arguments);
    take_checking(*label, arguments);
    take_color(*label, color);
    label->add_flag("--verbose", arguments.verbose, "sources, and names that are undecided, too");
    label->callback([&] { run = sudsmark::cli::label; });

    CLI::App* suggest = app.add_subcommand(
        "suggest", "the smallest changes of amounts that mend what a check finds");
    suggest->add_option("FILE", arguments.files, "a formula file; - is standard input")
        ->required()
        ->expected(1);
    take_format(*suggest, arguments, "text or json");
    take_output(*suggest, arguments);
    take_rules(*suggest, arguments);
    take_checking(*suggest, arguments);
    take_verdicts(*suggest, arguments, color);
    take_suggesting(*suggest, arguments);
    suggest->callback([&] { run = sudsmark::cli::suggest; });

    CLI::App* explain =
        app.add_subcommand("explain", "a rule, measure, material or kind of product in full");
    explain->add_option("NAME", arguments.names, "its id or name; `measures` lists the measures")
        ->required();
    take_output(*explain, arguments);
    take_ascii(*explain, arguments);
    take_color(*explain, color);
    take_rules(*explain, arguments);
    explain->callback([&] { run = sudsmark::cli::explain; });

    CLI::App* drill = app.add_subcommand(
        "drill", "exercises for new staff: what is wrong with a formula, and why");
    drill->add_option("NAME", arguments.names, "rules or subjects to be asked about; else all");
    drill->add_option("--count", arguments.count, "how many exercises")
        ->check(CLI::Range(1, 1000))
        ->type_name("N");
    drill->add_option("--deal", arguments.deal, "which exercises: another number, others")
        ->type_name("N");
    drill->add_flag("--answers", arguments.answers,
                    "print exercises and solutions instead of asking");
    drill->add_option("--on", arguments.on, "the day whose law holds, as 2026-11-01; else today")
        ->type_name("DATE");
    take_output(*drill, arguments);
    take_ascii(*drill, arguments);
    take_color(*drill, color);
    take_rules(*drill, arguments);
    drill->callback([&] { run = sudsmark::cli::drill; });

    CLI::App* rules = app.add_subcommand("rules", "the rulesets in use");
    rules->add_flag("--verify", arguments.verify, "run the examples of every rule");
    rules->add_flag("--verbose", arguments.verbose, "with the reason of each rule");
    take_output(*rules, arguments);
    take_ascii(*rules, arguments);
    take_color(*rules, color);
    take_rules(*rules, arguments);
    rules->callback([&] { run = sudsmark::cli::rules; });

    try {
      app.parse(count, values);
    } catch (const CLI::ParseError& error) {
      const int status = app.exit(error);
      return status == 0 ? 0 : static_cast<int>(Exit::unusable);
    }
    arguments.color = arguments.output.empty() && sudsmark::cli::wants_color(color);
    return static_cast<int>(run(arguments));
  } catch (const std::exception& error) {
    std::cerr << "sudsmark: the program failed: " << error.what() << "\n";
    return static_cast<int>(Exit::broken);
  }
}
