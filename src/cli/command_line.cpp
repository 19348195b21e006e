// The one file that knows the library for command lines.
#include "cli/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>
#include <iostream>
#include <optional>
#include <sstream>

#include <sudsmark/results.h>

#include "text/name.h"

namespace sudsmark::cli {
namespace {

/// The usage as a command gave it.
class Usage : public CLI::Formatter {
 public:
  std::string words;

  std::string make_usage(const CLI::App* app, std::string name) const override {
    if (words.empty()) return CLI::Formatter::make_usage(app, std::move(name));
    return "\nUsage: " + (name.empty() ? app->get_name() : name) + " [OPTIONS] " + words + "\n";
  }
  std::string make_option_opts(const CLI::Option* option) const override {
    if (option->get_type_size() == 0) return {};
    const std::string usual = option->get_default_str();
    return " " + option->get_type_name() + (usual.empty() ? "" : " [" + usual + "]");
  }
  std::string make_footer(const CLI::App* app) const override {
    const std::string footer = app->get_footer();
    return footer.empty() ? footer : footer + "\n";
  }
};

std::string hint(std::string_view word, const std::vector<std::string>& known) {
  const std::vector<std::string> near = text::nearest(word, known);
  return near.empty() ? std::string() : "; perhaps " + text::listed(near);
}

class CommandLine {
 public:
  /// Options are declared of the commands that the words name alone: each costs as much as a good
  /// part of a check.
  CommandLine(const std::vector<Subcommand>& commands, const std::vector<std::string>& words) {
    const auto usage = std::make_shared<Usage>();
    usage->words = "COMMAND";
    app_.formatter(usage);
    app_.set_version_flag("--version", std::string("sudsmark ") + SUDSMARK_VERSION);
    app_.get_formatter()->column_width(26);
    for (const Subcommand& command : commands) {
      CLI::App* sub = app_.add_subcommand(std::string(command.word), std::string(command.help));
      sub->group("Commands");
      sub->formatter(std::make_shared<Usage>());
      if (std::find(words.begin(), words.end(), command.word) != words.end()) {
        Options options(*sub);
        sub->callback([this, run = command.declare(options)] { run_ = run; });
      }
      known_.emplace_back(command.word);
    }
    app_.footer("`sudsmark help COMMAND` tells what a command can do.\n" + std::string(reminder));
  }

  Exit run(const std::vector<std::string>& words) {
    if (words.empty()) {
      std::cerr << app_.help();
      return Exit::unusable;
    }
    if (words.front() == "help") return help(words);
    if (!words.front().starts_with('-') && !is_known(words.front())) return unknown(words.front());
    if (!read(words)) return Exit::unusable;
    if (run_) return run_();
    return done_ ? *done_ : refused("a command is missing: one of " + text::listed(known_));
  }

 private:
  [[nodiscard]] bool is_known(const std::string& word) const {
    return std::find(known_.begin(), known_.end(), word) != known_.end();
  }

  [[nodiscard]] Exit unknown(const std::string& word) const {
    return refused("'" + word + "' is no command" + hint(word, known_) +
                   "; `sudsmark help` tells them all");
  }

  /// `help` alone, or of a command.
  Exit help(const std::vector<std::string>& words) {
    if (words.size() == 1) return print(app_.help());
    if (!is_known(words[1])) return unknown(words[1]);
    return print(app_.get_subcommand(words[1])->help("sudsmark"));
  }

  static Exit print(const std::string& words) {
    std::cout << words << std::flush;
    return std::cout ? Exit::fine : refused("standard output cannot be written");
  }

  /// Whether the words could be read. Help and version are printed here.
  bool read(const std::vector<std::string>& words) {
    try {
      app_.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (const CLI::Success& wish) {
      std::ostringstream out;
      app_.exit(wish, out, out);
      done_ = print(out.str());
    } catch (const CLI::ParseError& error) {
      explain(error);
      return false;
    }
    return true;
  }

  /// An unknown option is the reason for whatever else is wrong, so it is told first.
  void explain(const CLI::ParseError& error) const {
    const auto subs = app_.get_subcommands();
    const bool of_program = subs.empty() || !app_.remaining().empty();
    const CLI::App& app = of_program ? app_ : *subs.front();
    const std::string name = of_program ? std::string("sudsmark") : app.get_name();
    const std::string more = "; `sudsmark help" + (of_program ? "" : " " + name) + "` tells more";
    const std::vector<std::string> left = app_.remaining(true);
    const auto option = std::find_if(left.begin(), left.end(), [](const std::string& word) {
      return word.size() > 1 && word.starts_with('-') && word != "--";
    });
    if (option != left.end()) {
      const std::string typed = option->substr(0, option->find('='));
      complain("'" + typed + "' is no option of " + name + hint(typed, options_of(app)) + more);
    } else if (!left.empty()) {
      complain("'" + left.front() + "' is one word too many for " + name + more);
    } else {
      complain(name + ": " + error.what() + more);
    }
  }

  static std::vector<std::string> options_of(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : app.get_options()) {
      for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    }
    return names;
  }

  CLI::App app_{"Checks formulas of solid bath products before the powder flies.", "sudsmark"};
  std::vector<std::string> known_;
  std::function<Exit()> run_;
  std::optional<Exit> done_;  ///< where help or the version was all that was wished for
};

}  // namespace

void Options::words(const std::string& name, std::vector<std::string>& into, std::size_t least,
                    std::size_t most, const std::string& help) {
  CLI::Option* option = app_.add_option(name, into, help)->type_name("");
  option->required(least > 0);
  const int many = CLI::detail::expected_max_vector_size;
  option->expected(static_cast<int>(std::max<std::size_t>(least, 1)),
                   most == 0 ? many : static_cast<int>(most));
  usage(least == 0 ? "[" + name + "...]" : most == 1 ? name : name + "...");
}

void Options::usage(const std::string& words) {
  std::dynamic_pointer_cast<Usage>(app_.get_formatter())->words = words;
}

void Options::flag(const std::string& name, bool& into, const std::string& help) {
  app_.add_flag(name, into, help)->group(heading_);
}

void Options::text(const std::string& name, const std::string& shape, std::string& into,
                   const std::string& help) {
  app_.add_option(name, into, help)->type_name(shape)->group(heading_);
}

void Options::texts(const std::string& name, const std::string& shape,
                    std::vector<std::string>& into, const std::string& help) {
  app_.add_option(name, into, help)->allow_extra_args(false)->type_name(shape)->group(heading_);
}

void Options::list(const std::string& name, const std::string& shape,
                   std::vector<std::string>& into, const std::string& help) {
  app_.add_option(name, into, help)
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name(shape)
      ->group(heading_);
}

void Options::number(const std::string& name, std::size_t least, std::size_t most,
                     std::size_t& into, const std::string& help) {
  const auto read = [&into, name, least, most](const std::string& typed) {
    std::size_t value = 0;
    const char* end = typed.data() + typed.size();
    const auto [stop, error] = std::from_chars(typed.data(), end, value);
    if (error != std::errc() || stop != end || value < least || value > most) {
      throw CLI::ValidationError(name, "'" + typed + "' is no number from " +
                                           std::to_string(least) + " to " + std::to_string(most));
    }
    into = value;
  };
  app_.add_option_function<std::string>(name, read, help)
      ->type_name("N")
      ->default_str(std::to_string(into))
      ->group(heading_);
}

void Options::choice(const std::string& name, const std::vector<std::string>& words,
                     std::string& into, const std::string& help) {
  const auto read = [&into, name, words](const std::string& typed) {
    if (std::find(words.begin(), words.end(), typed) == words.end()) {
      throw CLI::ValidationError(name, "'" + typed + "' is none of " + text::listed(words));
    }
    into = typed;
  };
  std::string shape;
  for (const std::string& word : words) shape += (shape.empty() ? "" : "|") + word;
  app_.add_option_function<std::string>(name, read, help)
      ->type_name(shape)
      ->default_str(into)
      ->group(heading_);
}

void Options::needs(const std::string& name, const std::string& other) {
  app_.get_option(name)->needs(app_.get_option(other));
}

void Options::excludes(const std::string& name, const std::string& other) {
  app_.get_option(name)->excludes(app_.get_option(other));
}

void Options::example(const std::string& line, const std::string& does) {
  const std::string before = app_.get_footer();
  app_.footer((before.empty() ? "Examples:" : before) + "\n  " + line + "\n      " + does);
}

Exit run_command_line(const std::vector<std::string>& words,
                      const std::vector<Subcommand>& commands) {
  return CommandLine(commands, words).run(words);
}

}  // namespace sudsmark::cli
