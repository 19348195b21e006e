#include "manual/completion.h"

namespace sudsmark::manual {
namespace {

/// Words in a specification between brackets, inside single quotes.
std::string specified(const std::string& words) {
  std::string out;
  for (const char c : words) {
    if (c == '\'') {
      out += "'\\''";
      continue;
    }
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string action(Value value, const std::vector<std::string>& choices) {
  switch (value) {
    case Value::nothing:
      return " ";
    case Value::words:
      return "(" + in_a_row(choices) + ")";
    case Value::words_with_path:
      return "_sudsmark_formats " + in_a_row(choices);
    case Value::rules:
      return "_sequence compadd - $sudsmark_rules";
    case Value::markets:
      return "_sequence compadd - $sudsmark_markets";
    case Value::file:
      return "_files";
    case Value::formula:
      return "_files -g \"*.formula(-.)\"";
    case Value::topic:
      break;
  }
  return "compadd - $sudsmark_topics";
}

std::string branch(const cli::Declaration& command) {
  std::string out = "        " + command.command + ")\n          _arguments \\\n" +
                    "            '--help[this help]'";
  for (const cli::DeclaredOption& option : command.options) {
    out += " \\\n            '" + std::string(option.repeats ? "*" : "") + option.name;
    out += (option.shape.empty() ? "[" : "=[") + specified(option.help) + "]";
    if (!option.shape.empty()) {
      out += ":" + specified(option.shape) + ":" + action(value_of(option), option.choices);
    }
    out += "'";
  }
  if (!command.words.empty()) {
    out += " \\\n            '*:" + specified(command.words) + ":" +
           action(value_of_words(command), {}) + "'";
  }
  return out + "\n          ;;\n";
}

constexpr const char* begin = R"(#compdef sudsmark
# Completion of sudsmark's command lines, for zsh.

# One of the formats, or one with a path behind it.
_sudsmark_formats() {
  if compset -P '*='; then
    _files
  else
    compadd -- ${@:#-*}
  fi
}

_sudsmark() {
  local curcontext=$curcontext state state_descr line
  local -a sudsmark_commands sudsmark_rules sudsmark_topics sudsmark_markets
  typeset -A opt_args
)";

constexpr const char* middle = R"(  _arguments -C \
    '(- *)--help[the short help]' \
    '(- *)--version[the version of the program]' \
    '1:command:->command' \
    '*::argument:->rest'
  case $state in
    command)
      _describe -t commands command sudsmark_commands
      ;;
    rest)
      case $words[1] in
        help)
          _describe -t commands command sudsmark_commands
          ;;
)";

constexpr const char* end = R"(      esac
      ;;
  esac
}

_sudsmark "$@"
)";

}  // namespace

std::string zsh_completion(const std::vector<cli::Declaration>& commands, const Names& names) {
  std::string words;
  std::string branches;
  for (const cli::Declaration& command : commands) {
    words += "    '" + command.command + ":" + specified(command.help) + "'\n";
    branches += branch(command);
  }
  words += "    'help:what a command can do'\n";
  return begin + std::string("  sudsmark_commands=(\n") + words + "  )\n  sudsmark_rules=(" +
         in_a_row(names.rules) + ")\n  sudsmark_topics=(" + in_a_row(names.topics) +
         ")\n  sudsmark_markets=(" + in_a_row(names.markets) + ")\n" + middle + branches + end;
}

}  // namespace sudsmark::manual
