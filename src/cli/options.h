// How a command declares its options. The library that reads the command line stands behind it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "cli/declaration.h"

namespace CLI {
class App;
}

namespace sudsmark::cli {

/// The options of one command. What a user types is read into the variables named here, which have
/// to outlive the reading; what a user leaves out leaves them as they are, and the help shows that.
class Options {
 public:
  Options(CLI::App& app, Declaration& declared) : app_(app), declared_(declared) {}

  /// Words without a dash: "FILE". `most` 0: any number.
  void words(const std::string& name, std::vector<std::string>& into, std::size_t least,
             std::size_t most, const std::string& help);
  /// How they stand in the usage, where that says more than their name: "BASE TWEAK".
  void usage(const std::string& words) { declared_.usage = words; }
  /// The heading of what is declared from here on.
  void heading(const std::string& words) { heading_ = words; }

  void flag(const std::string& name, bool& into, const std::string& help);
  /// `shape` is how a value looks: "FILE".
  void text(const std::string& name, const std::string& shape, std::string& into,
            const std::string& help);
  /// May be given several times.
  void texts(const std::string& name, const std::string& shape, std::vector<std::string>& into,
             const std::string& help);
  /// The same, and commas separate values too.
  void list(const std::string& name, const std::string& shape, std::vector<std::string>& into,
            const std::string& help);
  void number(const std::string& name, std::size_t least, std::size_t most, std::size_t& into,
              const std::string& help);
  /// One of a few words.
  void choice(const std::string& name, const std::vector<std::string>& words, std::string& into,
              const std::string& help);

  /// What holds without an option, in words, where its variable does not tell.
  void usually(const std::string& name, const std::string& words);
  /// Words that a value begins with; what stands behind them is the command's to read.
  void begins(const std::string& name, const std::vector<std::string>& words);

  /// An option that says something only beside another, or never beside it.
  void needs(const std::string& name, const std::string& other);
  void excludes(const std::string& name, const std::string& other);

  /// A command line that the help shows, with what it does.
  void example(const std::string& line, const std::string& does);
  /// When the command ends with status 1: "a rule is broken".
  void found(const std::string& when) { declared_.found = when; }

 private:
  DeclaredOption& declare(const std::string& name, const std::string& shape,
                          const std::string& help);
  [[nodiscard]] DeclaredOption& declared(const std::string& name);

  CLI::App& app_;
  Declaration& declared_;
  std::string heading_ = "Options";
};

}  // namespace sudsmark::cli
