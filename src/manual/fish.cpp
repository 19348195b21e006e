#include "manual/completion.h"

namespace sudsmark::manual {
namespace {

constexpr const char* begin = R"(# Completion of sudsmark's command lines, for fish.

# The command that was typed is the first of these.
function __sudsmark_command
    set -l words (commandline -opc)
    test (count $words) -ge 2; and contains -- $words[2] $argv
end

function __sudsmark_no_command
    test (count (commandline -opc)) -eq 1
end

# Formulas, and folders that may hold some.
function __sudsmark_formulas
    set -l typed (commandline -ct)
    __fish_complete_directories $typed
    for file in $typed*.formula
        echo $file
    end
end

complete -c sudsmark -f
complete -c sudsmark -n __sudsmark_no_command -l help -d 'the short help'
complete -c sudsmark -n __sudsmark_no_command -l version -d 'the version of the program'
complete -c sudsmark -n __sudsmark_no_command -a help -d 'what a command can do'
)";

std::string quoted(const std::string& words) {
  std::string out = "'";
  for (const char c : words) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

/// What is offered, as arguments of `complete`.
std::string offer(Value value, const std::vector<std::string>& choices, const Names& names) {
  switch (value) {
    case Value::nothing:
      return {};
    case Value::words:
    case Value::words_with_path:
      return " -a " + quoted(in_a_row(choices));
    case Value::rules:
      return " -a " + quoted("(__fish_append , " + in_a_row(names.rules) + ")");
    case Value::markets:
      return " -a " + quoted("(__fish_append , " + in_a_row(names.markets) + ")");
    case Value::file:
      return " -F";
    case Value::formula:
      return " -a " + quoted("(__sudsmark_formulas)");
    case Value::topic:
      break;
  }
  return " -a " + quoted(in_a_row(names.topics));
}

}  // namespace

std::string fish_completion(const std::vector<cli::Declaration>& commands, const Names& names) {
  std::string out = begin;
  for (const cli::Declaration& command : commands) {
    out += "complete -c sudsmark -n __sudsmark_no_command -a " + command.command + " -d " +
           quoted(command.help) + "\n";
    out += "complete -c sudsmark -n '__sudsmark_command help' -a " + command.command + " -d " +
           quoted(command.help) + "\n";
    const std::string line =
        "complete -c sudsmark -n " + quoted("__sudsmark_command " + command.command);
    out += line + " -l help -d 'this help'\n";
    for (const cli::DeclaredOption& option : command.options) {
      out += line + " -l " + option.name.substr(2);
      const Value value = value_of(option);
      // whatever is no file keeps files from being offered
      const bool path = value == Value::file || value == Value::words_with_path;
      if (!option.shape.empty())
        out += (path ? " -r" : " -x") + offer(value, option.choices, names);
      out += " -d " + quoted(option.help) + "\n";
    }
    if (!command.words.empty()) out += line + offer(value_of_words(command), {}, names) + "\n";
  }
  return out;
}

}  // namespace sudsmark::manual
