// What a command says of itself: its help, its manual page and its completion are made of this
// alone.
#pragma once

#include <string>
#include <vector>

namespace sudsmark::cli {

struct DeclaredOption {
  std::string name;   ///< "--format"
  std::string shape;  ///< how a value looks, "FILE"; empty: it takes none
  std::string help;
  std::string usual;  ///< what holds without it; empty: nothing that needs to be said
  std::string heading;
  bool repeats = false;              ///< may be given several times
  std::vector<std::string> choices;  ///< the words that a value is, or begins with; empty: any
};

struct DeclaredExample {
  std::string line;  ///< the whole command line
  std::string does;
};

/// A command as it is declared; `words` are what it takes beside options.
struct Declaration {
  std::string command;  ///< "check"
  std::string help;
  std::string usage;  ///< the words in the usage, "FILE..."; empty: it takes none
  std::string words;  ///< what each of them is, "FILE"
  std::string words_help;
  std::vector<DeclaredOption> options;  ///< in the order of the help, which is that of headings
  std::vector<DeclaredExample> examples;
  std::string found;  ///< when it ends with status 1; empty: it never does
};

}  // namespace sudsmark::cli
