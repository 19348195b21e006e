#include "manual/completion.h"

namespace sudsmark::manual {
namespace {

// What is typed after `=` or a comma is completed by itself. Bash itself takes `=` for a word.
constexpr const char* before_commands = R"(
_sudsmark_among() {
  mapfile -t COMPREPLY < <(compgen -P "$before" -W "$1" -- "$typed")
}

_sudsmark_list() {
  if [[ $typed == *,* ]]; then
    before+=${typed%,*},
    typed=${typed##*,}
  fi
  _sudsmark_among "$1"
}

_sudsmark_files() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -P "$before" -f -- "$typed")
}

_sudsmark_formulas() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -d -- "$typed"; compgen -f -X '!*.formula' -- "$typed")
}

_sudsmark() {
  local typed=${COMP_WORDS[COMP_CWORD]} option=${COMP_WORDS[COMP_CWORD-1]} before='' options
  COMPREPLY=()
  if [[ $typed == = ]]; then
    typed=''
  elif [[ $option == = ]]; then
    option=${COMP_WORDS[COMP_CWORD-2]}
  elif [[ $typed == --*=* ]]; then
    option=${typed%%=*}
    before=$option=
    typed=${typed#*=}
  fi
  if ((COMP_CWORD == 1)); then
    _sudsmark_among "$_sudsmark_commands help --help --version"
    return
  fi
  if [[ ${COMP_WORDS[COMP_CWORD-1]} == = && $option != -* ]]; then
    _sudsmark_files
    return
  fi
  case ${COMP_WORDS[1]} in
    help)
      _sudsmark_among "$_sudsmark_commands"
      return
      ;;
)";

constexpr const char* after_commands = R"(    *)
      return
      ;;
  esac
}

complete -F _sudsmark sudsmark
)";

std::string answer(Value value, const std::vector<std::string>& choices) {
  switch (value) {
    case Value::nothing:
      return ":";
    case Value::words:
    case Value::words_with_path:
      return "_sudsmark_among '" + in_a_row(choices) + "'";
    case Value::rules:
      return "_sudsmark_list \"$_sudsmark_rules\"";
    case Value::markets:
      return "_sudsmark_list \"$_sudsmark_markets\"";
    case Value::file:
      return "_sudsmark_files";
    case Value::formula:
      return "_sudsmark_formulas";
    case Value::topic:
      break;
  }
  return "_sudsmark_among \"$_sudsmark_topics\"";
}

std::string branch(const cli::Declaration& command) {
  std::string options = "--help";
  std::string cases;
  for (const cli::DeclaredOption& option : command.options) {
    options += " " + option.name;
    if (option.shape.empty()) continue;
    cases += "        " + option.name + ")\n          " + answer(value_of(option), option.choices) +
             "\n          return\n          ;;\n";
  }
  return "    " + command.command + ")\n      options='" + options + "'\n" +
         "      case $option in\n" + cases + "      esac\n" +
         "      if [[ $typed == -* ]]; then\n        _sudsmark_among \"$options\"\n      else\n" +
         "        " + answer(value_of_words(command), {}) + "\n      fi\n      ;;\n";
}

}  // namespace

std::string bash_completion(const std::vector<cli::Declaration>& commands, const Names& names) {
  std::string words;
  std::string branches;
  for (const cli::Declaration& command : commands) {
    words += (words.empty() ? "" : " ") + command.command;
    branches += branch(command);
  }
  return "# Completion of sudsmark's command lines, for bash.\n_sudsmark_commands='" + words +
         "'\n_sudsmark_rules='" + in_a_row(names.rules) + "'\n_sudsmark_topics='" +
         in_a_row(names.topics) + "'\n_sudsmark_markets='" + in_a_row(names.markets) + "'\n" +
         before_commands + branches + after_commands;
}

}  // namespace sudsmark::manual
