// A command: a word, what it is for, and how it declares its options.
#pragma once

#include <functional>
#include <memory>
#include <string_view>
#include <vector>

#include "cli/exit.h"
#include "cli/options.h"

namespace sudsmark::cli {

struct Subcommand {
  std::string_view word;
  std::string_view help;
  /// Declares the options; what it returns runs the command once they are read.
  std::function<Exit()> (*declare)(Options& options);
};

/// For a class that has `void declare(Options&)` and `Exit run()`.
template <class Command>
std::function<Exit()> declared(Options& options) {
  const auto command = std::make_shared<Command>();
  command->declare(options);
  return [command] { return command->run(); };
}

/// All commands, in the order of the help.
[[nodiscard]] std::vector<Subcommand> commands();

}  // namespace sudsmark::cli
