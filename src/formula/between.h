// Between two formulas: what differs line by line, and the formulas that lie half-way, where some
// of the differences are there and the others are not yet.
//
// Lines belong together that name one thing in sections of one kind and name, in whatever order
// they stand. A difference that is left out leaves a gap or an excess, which the lines that do not
// differ make up for, as in a tweak. All differences together are the other formula to the letter.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formula/assemble.h"
#include "formula/card.h"
#include "formula/draft.h"
#include "formula/switches.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula {

class Between {
 public:
  /// Both cards are whole and of one Sources.
  Between(const Card& from, const Card& to, const SameName& same_name,
          const text::Sources& sources);

  [[nodiscard]] const std::vector<Switch>& switches() const { return switches_; }
  /// The formula with those differences that are on; what cannot be made is in `diagnostics`.
  [[nodiscard]] Card with(const std::vector<bool>& on, text::Diagnostics& diagnostics) const;

 private:
  enum class What : unsigned char { line, statement, section, portions, label };
  struct Change {
    What what = What::line;
    PartKind kind = PartKind::phase;  ///< of a line: its section
    std::string part;                 ///< of a line: its section's name, folded
    std::optional<Line> old_line;
    std::optional<Line> new_line;
    std::string name;  ///< of a statement its words; of a section its name, folded
  };

  [[nodiscard]] std::string key(const std::string& name) const;
  void add(Change change, const Span& old_place, const Span& new_place);
  template <typename Section>
  void compare_lines(PartKind kind, const std::vector<Section>& from,
                     const std::vector<Section>& to);
  void compare_part(PartKind kind, const Word& name, const std::vector<Line>& from,
                    const std::vector<Line>& to);
  void compare_statements();
  void compare_sections();
  void change_line(const Change& change, std::vector<DraftPart*>& disturbed, Draft& draft) const;
  void change_lines(const std::vector<bool>& on, Card& card, text::Diagnostics& diagnostics) const;
  void change_rest(const Change& change, Card& card) const;

  const Card& from_;
  const Card& to_;
  const SameName& same_name_;
  const text::Sources& sources_;
  bool portions_by_line_ = false;
  std::vector<Change> changes_;
  std::vector<Switch> switches_;
};

}  // namespace sudsmark::formula
