// A draft of an edge: an example with some of its lines changed.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "proof/example.h"

namespace sudsmark::proof {

class Draft {
 public:
  Draft(const rules::Rule& rule, bool of_pass, std::size_t number);
  /// As an edge has it, whose lines are all there.
  Draft(const rules::Rule& rule, const Edge& edge);

  /// A line that stands in the words now.
  struct Line {
    std::size_t origin = 0;  ///< of the example's lines
    std::size_t part = 0;    ///< among those that stand in its place
    std::string text;
  };
  [[nodiscard]] std::vector<Line> lines() const;

  void replace(const Line& line, std::string text);
  /// Puts one more line behind a line; a draft has room for this at one place alone.
  [[nodiscard]] bool may_add(const Line& line) const;
  void add_behind(const Line& line, std::string text);
  void remove(const Line& line);

  /// What it changes, for a file of edges; its verdict is not in it yet.
  [[nodiscard]] Edge edge() const;
  /// The whole of it.
  [[nodiscard]] Words words() const;

 private:
  Words example_;
  bool of_pass_;
  std::size_t number_;
  std::vector<std::string> original_;
  std::map<std::size_t, std::vector<std::string>> changed_;  ///< by line: what stands there
};

}  // namespace sudsmark::proof
