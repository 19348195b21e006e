// The program: reads the command line and runs one command.
#include <exception>
#include <string>
#include <vector>

#include "cli/command_line.h"
#include "cli/exit.h"

int main(int count, char** values) {
  using sudsmark::cli::Exit;
  Exit exit = Exit::broken;
  try {
    const std::vector<std::string> words(values + (count > 0 ? 1 : 0), values + count);
    exit = sudsmark::cli::run_command_line(words, sudsmark::cli::commands());
  } catch (const std::exception& error) {
    sudsmark::cli::complain(std::string("the program failed: ") + error.what());
  }
  return static_cast<int>(exit);
}
