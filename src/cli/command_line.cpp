// Reads the command line. Beside options.cpp the one file that knows the library for it.
#include "cli/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <optional>

#include "cli/help.h"
#include "cli/terminal.h"
#include "text/name.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t usual_columns = 80;
/// Longer lines are hard to read, however wide a terminal is.
constexpr std::size_t most_columns = 100;

std::size_t help_columns() {
  const std::size_t columns = terminal_columns();
  return columns == 0 ? usual_columns : std::min(columns, most_columns);
}

std::string hint(std::string_view word, const std::vector<std::string>& known) {
  const std::vector<std::string> near = text::nearest(word, known);
  return near.empty() ? std::string() : "; perhaps " + text::listed(near);
}

/// What the library says of a word that misses its value or of one too many, in our words.
std::string mismatch(const std::string& said, const Declaration& of) {
  std::string name = said.substr(0, said.find_first_of(": "));
  if (said.find("flag override") != std::string::npos && !name.starts_with("-")) name = "--" + name;
  const auto option = std::find_if(of.options.begin(), of.options.end(),
                                   [&](const DeclaredOption& one) { return one.name == name; });
  if (option == of.options.end()) return "takes no more than " + of.usage;
  if (option->shape.empty()) return name + " takes no value";
  if (said.find("missing") == std::string::npos) return name + " is given more than once";
  return name + " has no " + option->shape.substr(0, option->shape.find(',')) + " behind it";
}

class CommandLine {
 public:
  /// `words`: those that will be read. Options are declared of the commands that they name alone,
  /// unless no command comes first: all of them together cost as much as a good part of a check.
  CommandLine(const std::vector<Subcommand>& commands, const std::vector<std::string>& words) {
    const bool all = words.empty() || words.front() == "help" || words.front().starts_with('-');
    app_.set_version_flag("--version", std::string("sudsmark ") + SUDSMARK_VERSION);
    declared_.reserve(commands.size());
    for (const Subcommand& command : commands) {
      CLI::App* sub = app_.add_subcommand(std::string(command.word));
      Declaration& declared = declared_.emplace_back();
      declared.command = command.word;
      declared.help = command.help;
      if (all || std::find(words.begin(), words.end(), command.word) != words.end()) {
        Options options(*sub, declared);
        sub->callback([this, run = command.declare(options)] { run_ = run; });
      }
      known_.emplace_back(command.word);
    }
  }

  [[nodiscard]] const std::vector<Declaration>& declared() const { return declared_; }

  Exit run(const std::vector<std::string>& words) {
    if (words.empty()) return print(short_help(declared_, help_columns()));
    if (words.front() == "help") return help(words);
    if (!words.front().starts_with('-') && find(words.front()) == nullptr) {
      return unknown(words.front());
    }
    if (!read(words)) return Exit::unusable;
    if (run_) return run_();
    return done_ ? *done_ : refused("a command is missing: one of " + text::listed(known_));
  }

 private:
  [[nodiscard]] const Declaration* find(const std::string& word) const {
    const auto found = std::find_if(declared_.begin(), declared_.end(),
                                    [&](const Declaration& one) { return one.command == word; });
    return found == declared_.end() ? nullptr : &*found;
  }

  [[nodiscard]] Exit unknown(const std::string& word) const {
    return refused("'" + word + "' is no command" + hint(word, known_) +
                   "; `sudsmark help` tells them all");
  }

  /// `help` alone, or of a command.
  [[nodiscard]] Exit help(const std::vector<std::string>& words) const {
    if (words.size() > 2) {
      return refused("'" + words[2] + "' is one word too many for help; it takes one command");
    }
    if (words.size() == 1) return print(short_help(declared_, help_columns()));
    const Declaration* command = find(words[1]);
    return command == nullptr ? unknown(words[1]) : print(command_help(*command, help_columns()));
  }

  static Exit print(const std::string& words) {
    std::cout << words << std::flush;
    return std::cout ? Exit::fine : refused("standard output cannot be written");
  }

  /// The command that was named; none if none was.
  [[nodiscard]] const Declaration* named() const {
    const auto subs = app_.get_subcommands();
    return subs.empty() ? nullptr : find(subs.front()->get_name());
  }

  /// Whether the words could be read. Help and version are printed here.
  bool read(const std::vector<std::string>& words) {
    try {
      app_.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (const CLI::CallForHelp&) {
      const Declaration* command = named();
      done_ = print(command == nullptr ? short_help(declared_, help_columns())
                                       : command_help(*command, help_columns()));
    } catch (const CLI::CallForVersion&) {
      done_ = print(app_.version() + "\n");
    } catch (const CLI::ParseError& error) {
      explain(error);
      return false;
    }
    return true;
  }

  /// An unknown option is the reason for whatever else is wrong, so it is told first.
  void explain(const CLI::ParseError& error) const {
    const Declaration* command = app_.remaining().empty() ? named() : nullptr;
    const std::string name = command == nullptr ? std::string("sudsmark") : command->command;
    const std::string more =
        "; `sudsmark help" + (command == nullptr ? "" : " " + name) + "` tells more";
    const std::vector<std::string> left = app_.remaining(true);
    const auto option = std::find_if(left.begin(), left.end(), [](const std::string& word) {
      return word.size() > 1 && word.starts_with('-') && word != "--";
    });
    if (option != left.end()) {
      const std::string typed = option->substr(0, option->find('='));
      complain("'" + typed + "' is no option of " + name + hint(typed, options_of(command)) + more);
    } else if (!left.empty()) {
      complain("'" + left.front() + "' is one word too many for " + name + more);
    } else {
      complain(name + ": " + reason(error, command) + more);
    }
  }

  static std::string reason(const CLI::ParseError& error, const Declaration* command) {
    if (command == nullptr) return error.what();
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
      return mismatch(error.what(), *command);
    }
    if (dynamic_cast<const CLI::ExcludesError*>(&error) != nullptr) {
      const std::string said = error.what();
      const std::size_t between = said.find(" excludes ");
      return said.substr(0, between) + " does not go with " + said.substr(between + 10);
    }
    if (dynamic_cast<const CLI::RequiresError*>(&error) != nullptr) {
      const std::string said = error.what();
      const std::size_t between = said.find(" requires ");
      return said.substr(0, between) + " says something only beside " + said.substr(between + 10);
    }
    return error.what();
  }

  static std::vector<std::string> options_of(const Declaration* command) {
    std::vector<std::string> names{"--help"};
    if (command == nullptr) names.emplace_back("--version");
    if (command != nullptr) {
      for (const DeclaredOption& option : command->options) names.push_back(option.name);
    }
    return names;
  }

  CLI::App app_;
  std::vector<Declaration> declared_;
  std::vector<std::string> known_;
  std::function<Exit()> run_;
  std::optional<Exit> done_;  ///< where help or the version was all that was wished for
};

}  // namespace

Exit run_command_line(const std::vector<std::string>& words,
                      const std::vector<Subcommand>& commands) {
  return CommandLine(commands, words).run(words);
}

std::vector<Declaration> declarations(const std::vector<Subcommand>& commands) {
  return CommandLine(commands, {}).declared();
}

}  // namespace sudsmark::cli
