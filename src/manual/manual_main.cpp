// sudsmark_manual FOLDER: writes the manual pages and the completion of three shells, made of what
// the commands declare, so that neither can tell of an option that is not there.
#include <cstdio>
#include <exception>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "cli/command_line.h"
#include "manual/completion.h"
#include "manual/page.h"
#include "text/written_file.h"

namespace {

using namespace sudsmark;

void write(const std::filesystem::path& path, const std::string& text) {
  if (const auto wrong = text::make_folder(path.parent_path().string())) {
    throw std::runtime_error(*wrong);
  }
  if (const auto wrong = text::write_file(path.string(), text)) throw std::runtime_error(*wrong);
}

void write_all(const std::filesystem::path& folder) {
  const auto commands = cli::declarations(cli::commands());
  const manual::Names names = manual::built_in_names();
  const std::string version = std::string("sudsmark ") + SUDSMARK_VERSION;
  // the page of a command that is no more must not stay
  std::filesystem::remove_all(folder / "man1");
  write(folder / "man1" / "sudsmark.1", manual::program_page(commands, version));
  for (const cli::Declaration& command : commands) {
    write(folder / "man1" / ("sudsmark-" + command.command + ".1"),
          manual::command_page(command, version));
  }
  write(folder / "completion" / "sudsmark.bash", manual::bash_completion(commands, names));
  write(folder / "completion" / "_sudsmark", manual::zsh_completion(commands, names));
  write(folder / "completion" / "sudsmark.fish", manual::fish_completion(commands, names));
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) {
    std::fprintf(stderr, "sudsmark_manual FOLDER\n");
    return 2;
  }
  try {
    write_all(words[1]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "sudsmark_manual: %s\n", error.what());
    return 1;
  }
  return 0;
}
