#include "manual/page.h"

#include <sudsmark/results.h>

#include "cli/help.h"

namespace sudsmark::manual {
namespace {

/// Words as they stand, whatever their characters mean to the typesetter.
std::string plain(const std::string& words) {
  std::string out;
  for (const char c : words) {
    switch (c) {
      case '\\':
        out += "\\e";
        break;
      case '-':
        out += "\\-";
        break;
      case '`':
        out += "\\(ga";
        break;
      case '\'':
        out += "\\(aq";
        break;
      case '^':
        out += "\\(ha";
        break;
      case '~':
        out += "\\(ti";
        break;
      default:
        out += c;
    }
  }
  // a line that begins with a dot would be a request
  return out.starts_with('.') ? "\\&" + out : out;
}

std::string bold(const std::string& words) {
  return "\\fB" + plain(words) + "\\fR";
}

std::string italic(const std::string& words) {
  return "\\fI" + plain(words) + "\\fR";
}

std::string title(const std::string& name, const std::string& version) {
  return ".TH " + name + " 1 \"\" \"" + version + "\" \"User commands\"\n";
}

std::string section(const std::string& name) {
  return ".SH " + name + "\n";
}

/// A label with its words beneath.
std::string item(const std::string& label, const std::string& words) {
  return ".TP\n" + label + "\n" + words + "\n";
}

std::string option(const cli::DeclaredOption& one) {
  std::string words = plain(one.help);
  if (!one.usual.empty()) words += "\n(default: " + plain(one.usual) + ")";
  return item(bold(one.name) + (one.shape.empty() ? "" : " " + italic(one.shape)), words);
}

std::string example(const cli::DeclaredExample& one) {
  return item(bold(one.line), plain(one.does));
}

std::string sentence(std::string words) {
  if (words.front() >= 'a' && words.front() <= 'z') words.front() += 'A' - 'a';
  return words + ".";
}

std::string page_of(const std::string& command) {
  return "\\%" + bold("sudsmark-" + command) + "(1)";
}

}  // namespace

std::string program_page(const std::vector<cli::Declaration>& commands,
                         const std::string& version) {
  std::string out = title("SUDSMARK", version) + section("NAME") +
                    "sudsmark \\- check formulas of solid bath products\n" + section("SYNOPSIS") +
                    bold("sudsmark") + " " + italic("COMMAND") + " [" + italic("OPTIONS") + "]\n" +
                    section("DESCRIPTION") + plain(cli::program_help) + "\n.PP\n" +
                    plain(std::string(reminder)) + "\n" + section("COMMANDS");
  for (const cli::Declaration& command : commands) {
    out += item(bold(command.command) + (command.usage.empty() ? "" : " " + italic(command.usage)),
                plain(command.help) + "; see " + page_of(command.command));
  }
  out += item(bold("help") + " [" + italic("COMMAND") + "]",
              "the commands, or all that one of them can do");
  out += section("OPTIONS") + item(bold("--help"), "the short help");
  out += item(bold("--version"), "the version of the program");
  out += section("EXIT STATUS") + item("0", "nothing that counts was found");
  out += item("1", "something was found; each command's page tells what counts");
  out += item("2", "something cannot be read or used; all that can is checked nonetheless");
  out += item("3", "the program failed");
  out += section("ENVIRONMENT") + item(bold("NO_COLOR"), "set to anything: no colours");
  out += item(bold("TERM"), "no colours where it is " + bold("dumb"));
  out += item(bold("COLUMNS"), "how wide the terminal is, in place of what it says itself");
  out += section("EXAMPLES");
  for (const cli::Declaration& command : commands) {
    if (!command.examples.empty()) out += example(command.examples.front());
  }
  out += section("SEE ALSO");
  for (const cli::Declaration& command : commands) {
    out += page_of(command.command) + (&command == &commands.back() ? "\n" : ",\n");
  }
  return out;
}

std::string command_page(const cli::Declaration& command, const std::string& version) {
  const std::string name = "sudsmark-" + command.command;
  std::string out = title("SUDSMARK-" + command.command, version) + section("NAME") + plain(name) +
                    " \\- " + plain(command.help) + "\n" + section("SYNOPSIS") +
                    bold("sudsmark " + command.command) + " [" + italic("OPTIONS") + "]" +
                    (command.usage.empty() ? "" : " " + italic(command.usage)) + "\n" +
                    section("DESCRIPTION") + plain(sentence(command.help)) + "\n";
  if (!command.words.empty()) out += item(italic(command.usage), plain(command.words_help));
  out += ".PP\n" + plain(std::string(reminder)) + "\n" + section("OPTIONS");
  const std::string* heading = nullptr;
  for (const cli::DeclaredOption& one : command.options) {
    if (heading == nullptr || *heading != one.heading) out += ".SS " + one.heading + "\n";
    heading = &one.heading;
    out += option(one);
  }
  out += ".SS Help\n" + item(bold("--help"), "what this page says, in short");
  out += section("EXIT STATUS") + item("0", "all is well");
  if (!command.found.empty()) out += item("1", plain(command.found));
  out += item("2", "something cannot be read or used") + section("EXAMPLES");
  for (const cli::DeclaredExample& one : command.examples) out += example(one);
  out += section("SEE ALSO") + bold("sudsmark") + "(1)\n";
  return out;
}

}  // namespace sudsmark::manual
