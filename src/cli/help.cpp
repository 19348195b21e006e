#include "cli/help.h"

#include <sudsmark/results.h>

#include "wording/fold.h"

namespace sudsmark::cli {
namespace {

constexpr std::size_t column = 26;  ///< where the words beside an option begin

std::string row(const std::string& label, const std::string& words) {
  std::string out = "  " + label;
  if (out.size() + 2 > column) {
    out += "\n" + std::string(column, ' ');
  } else {
    out.resize(column, ' ');
  }
  return out + words + "\n";
}

std::string words_beside(const DeclaredOption& option) {
  return option.help + (option.usual.empty() ? "" : " (default: " + option.usual + ")");
}

std::string statuses(const Declaration& command) {
  return "Ends with status 0" +
         (command.found.empty() ? std::string() : ", 1 where " + command.found) +
         ", 2 where something cannot be read or used.\n";
}

}  // namespace

std::string with_shape(const DeclaredOption& option) {
  return option.name + (option.shape.empty() ? "" : " " + option.shape);
}

std::string short_help(const std::vector<Declaration>& commands, std::size_t columns) {
  std::string out =
      std::string(program_help) + "\n\nUsage: sudsmark COMMAND [OPTIONS]\n\nCommands:\n";
  for (const Declaration& command : commands) out += row(command.command, command.help);
  out += row("help [COMMAND]", "this, or all that a command can do, with examples");
  out += "\nOptions:\n" + row("--help", "this") + row("--version", "the version of the program");
  out += "\n" + std::string(reminder) + "\n";
  return wording::folded_to(out, columns);
}

std::string command_help(const Declaration& command, std::size_t columns) {
  std::string out = "sudsmark " + command.command + ": " + command.help + "\n\nUsage: sudsmark " +
                    command.command + " [OPTIONS]" +
                    (command.usage.empty() ? "" : " " + command.usage) + "\n";
  if (!command.words.empty()) out += "\n" + row(command.usage, command.words_help);
  const std::string* heading = nullptr;
  for (const DeclaredOption& option : command.options) {
    if (heading == nullptr || *heading != option.heading) out += "\n" + option.heading + ":\n";
    heading = &option.heading;
    out += row(with_shape(option), words_beside(option));
  }
  out += "\n" + row("--help", "this help");
  out += "\n" + statuses(command) + "\nExamples:\n";
  for (const DeclaredExample& example : command.examples) {
    out += "  " + example.line + "\n      " + example.does + "\n";
  }
  return wording::folded_to(out, columns);
}

}  // namespace sudsmark::cli
