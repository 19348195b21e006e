#include "formula/parse.h"

#include <algorithm>
#include <map>
#include <string>
#include <type_traits>
#include <utility>

#include "formula/grammar.h"
#include "formula/lines.h"
#include "formula/meant.h"
#include "formula/messages.h"
#include "formula/scan.h"
#include "formula/statements.h"
#include "formula/words.h"
#include "text/name.h"
#include "text/utf8.h"

namespace sudsmark::formula {
namespace {

constexpr std::size_t largest_file = std::size_t{1} << 20U;
constexpr std::size_t most_lines = 2000;

/// The word that stands behind the first of a line.
std::string_view first_word_of(Rest rest) {
  return first_word({skip_blanks(rest.first, rest.last), rest.last});
}

std::string in_section(Section section) {
  if (section == Section::label) return "the label";
  if (section == Section::formula) return "the formula";
  return "a " + std::string(section_word(section));
}

/// Reads a file line by line. What a section holds goes to `target_`: to the document, or, after a
/// heading that could not be read, to a document that nobody looks at.
class FileReader {
 public:
  FileReader(std::string_view text, text::FileIndex file, text::Diagnostics& diagnostics)
      : text_(text), reading_(file, text), diagnostics_(diagnostics) {
    document_.file = file;
  }

  Document read() {
    Iterator at = text_.data();
    const Iterator last = at + text_.size();
    if (text::starts_with_mark(text_)) at += text::mark_size;
    while (at != last && errors_ < text::Diagnostics::most) {
      Rest line = next_line(at, last);
      if (!trim_line(line, reading_)) {
        skip_line(line);
      } else if (line.first != line.last) {
        read_line_of_section(line);
        report();
      }
    }
    close_section();
    return std::move(document_);
  }

 private:
  void report() {
    if (!reading_.refused()) return;
    ++errors_;
    document_.whole = false;
    reading_.report(diagnostics_);
  }

  /// A line whose characters are refused. If it opens a section, then what follows belongs there.
  void skip_line(Rest line) {
    line.first = skip_blanks(line.first, line.last);
    if (const auto section = section_of(first_word(line))) {
      open_guessed(*section, line, {line.last, line.last});
    } else {
      report();
    }
  }

  void read_line_of_section(Rest line) {
    const std::string_view word = first_word(line);
    const Rest rest{line.first + word.size(), line.last};
    if (const auto section = section_of(word)) {
      open_section(*section, line, rest);
    } else if (word == "include") {
      Include include{{}, reading_.span(line.first, line.last)};
      if (read_include(rest, reading_, include)) document_.includes.push_back(std::move(include));
    } else if (section_ != Section::unknown) {
      read_content(word, line, rest);
    }
  }

  /// A colon behind the first word: it is refused, and the rest of the line is not looked at.
  bool refuse_colon(std::string_view word, Rest rest) {
    if (rest.first == rest.last || *rest.first != ':') return false;
    return !reading_.refuse(messages::colon, reading_.span(rest.first, rest.first + 1),
                            {std::string(word)});
  }

  // Sections

  void open_section(Section section, Rest line, Rest rest) {
    if (refuse_colon(section_word(section), rest)) {
      const Iterator behind = skip_blanks(rest.first + 1, rest.last);
      open_guessed(section, line, {behind, rest.last});
      return;
    }
    close_section();
    section_ = section;
    section_place_ = reading_.span(line.first, line.last);
    first_places_.clear();
    complained_ = false;
    if (section == Section::formula || section == Section::tweak) {
      open_formula(section, rest);
      return;
    }
    Document heading;
    open_in(heading, rest);
    target_ = reading_.refused() ? &discarded_ : &document_;
    move_section(heading, *target_);
  }

  void open_formula(Section section, Rest rest) {
    const Span first = document_.formula_name ? document_.formula_place
                       : document_.tweak      ? document_.tweak->place
                                              : broken_formula_;
    Word title;
    Tweak tweak;
    if (section == Section::formula) {
      read_title("the name of the formula", rest, reading_, title);
    } else {
      tweak.place = section_place_;
      read_tweak(rest, reading_, tweak);
    }
    target_ = &document_;
    if (reading_.refused() || first.somewhere()) target_ = &discarded_;
    if (first.somewhere()) {
      reading_.refuse_as({&messages::second_formula, {}, {section_place_, first}});
    } else if (reading_.refused()) {
      broken_formula_ = section_place_;
    }
    target_->statements = {};
    if (section == Section::formula) {
      target_->formula_name = std::move(title);
      target_->formula_place = section_place_;
    } else {
      target_->tweak = std::move(tweak);
    }
  }

  void open_in(Document& into, Rest rest) {
    switch (section_) {
      case Section::phase:
        into.phases.push_back({{}, {}, section_place_});
        read_title("the name of the phase", rest, reading_, into.phases.back().name);
        break;
      case Section::premix:
        into.premixes.emplace_back().place = section_place_;
        read_premix(rest, reading_, into.premixes.back());
        break;
      case Section::portion:
        into.portions.emplace_back().place = section_place_;
        read_portion(rest, reading_, into.portions.back());
        break;
      case Section::fragrance:
        into.fragrances.emplace_back().place = section_place_;
        read_title("the name of the fragrance", rest, reading_, into.fragrances.back().name);
        break;
      case Section::material:
        into.materials.emplace_back().place = section_place_;
        read_material(rest, reading_, into.materials.back());
        break;
      case Section::workshop:
        into.workshops.emplace_back().place = section_place_;
        read_title("the name of the workshop", rest, reading_, into.workshops.back().name);
        break;
      case Section::task:
        into.tasks.emplace_back().place = section_place_;
        read_title("the name of the task", rest, reading_, into.tasks.back().name);
        break;
      default:
        into.labels.emplace_back().place = section_place_;
        if (rest.first != rest.last) {
          const Token token = token_at(rest.first, rest.last);
          reading_.refuse(messages::text_after_end, reading_.span(token.begin, token.end),
                          {shown(token.text())});
        }
    }
  }

  void move_section(Document& from, Document& to) const {
    const auto move_all = [](auto& source, auto& target) {
      std::move(source.begin(), source.end(), std::back_inserter(target));
    };
    switch (section_) {
      case Section::phase:
        return move_all(from.phases, to.phases);
      case Section::premix:
        return move_all(from.premixes, to.premixes);
      case Section::portion:
        return move_all(from.portions, to.portions);
      case Section::fragrance:
        return move_all(from.fragrances, to.fragrances);
      case Section::material:
        return move_all(from.materials, to.materials);
      case Section::workshop:
        return move_all(from.workshops, to.workshops);
      case Section::task:
        return move_all(from.tasks, to.tasks);
      default:
        return move_all(from.labels, to.labels);
    }
  }

  void close_section() {
    const bool nameless =
        section_ == Section::formula && target_ == &document_ && !seen("product").somewhere();
    if (!nameless) return;
    reading_.refuse(messages::product_missing, document_.formula_place);
    report();
  }

  // What stands in a section

  /// Where a statement stood first in the section that is open.
  Span& seen(std::string_view full) { return first_places_[full]; }

  void read_content(std::string_view word, Rest line, Rest rest) {
    const char first = *line.first;
    const bool figure = is_digit(first) || word == "q.s.";
    if (holds_ingredients(section_) && (figure || word.empty() || !is_letter(first))) {
      read_ingredient(line);
    } else if (section_ == Section::fragrance && figure) {
      read_constituent(line, reading_, target_->fragrances.back());
    } else if (const StatementWord* statement =
                   find_statement(section_, word, first_word_of(rest))) {
      read_statement_of_section(*statement, line, rest);
    } else {
      refuse_line(word, figure, line, rest);
    }
  }

  void read_ingredient(Rest line) {
    if (++ingredient_lines_ > most_lines) {
      if (ingredient_lines_ == most_lines + 1) {
        reading_.refuse(messages::too_many_lines, reading_.span(line.first, line.last));
      }
      return;
    }
    Line ingredient;
    if (!read_line(line, reading_, ingredient)) return;
    lines_of_section().push_back(std::move(ingredient));
  }

  std::vector<Line>& lines_of_section() {
    if (section_ == Section::phase) return target_->phases.back().lines;
    if (section_ == Section::premix) return target_->premixes.back().lines;
    return target_->portions.back().lines;
  }

  void read_statement_of_section(const StatementWord& statement, Rest line, Rest rest) {
    const Span place = reading_.span(line.first, line.last);
    Span& first = seen(statement.full);
    if (!statement.repeats && first.somewhere()) {
      reading_.refuse_as({&messages::given_twice, {shown(statement.full)}, {place, first}});
      return;
    }
    if (!first.somewhere()) first = place;
    if (refuse_colon(statement.word, rest)) return;
    if (!pass_words(statement.full.substr(statement.word.size()), rest)) return;
    const StatementLine behind{place, rest};
    switch (section_) {
      case Section::formula:
        return read_row(statement, behind, target_->statements);
      case Section::tweak:
        return statement.edit ? read_edit_row(statement, behind)
                              : read_row(statement, behind, target_->tweak->statements);
      case Section::fragrance:
        return read_row(statement, behind, target_->fragrances.back());
      case Section::material:
        return read_row(statement, behind, target_->materials.back());
      case Section::workshop:
        return read_row(statement, behind, target_->workshops.back());
      case Section::task:
        return read_row(statement, behind, target_->tasks.back());
      case Section::label:
        return read_row(statement, behind, target_->labels.back());
      case Section::none:
      case Section::phase:
      case Section::premix:
      case Section::portion:
      case Section::unknown:
        break;  // these have no statements
    }
  }

  /// Reads the words that follow the first of a statement.
  bool pass_words(std::string_view words, Rest& rest) {
    while (!words.empty()) {
      words.remove_prefix(1);
      const std::string_view word = words.substr(0, words.find(' '));
      rest.first = skip_blanks(rest.first, rest.last);
      if (!scan_keyword(rest.first, rest.last, word)) {
        return reading_.expected("'" + std::string(words) + "'", rest.first, rest.last);
      }
      words.remove_prefix(word.size());
    }
    return true;
  }

  template <typename Owner>
  void read_row(const StatementWord& statement, StatementLine line, Owner& owner) {
    std::size_t index = 0;
    each_row<Owner>([&](const auto& row) {
      if (index++ == statement.index) read_value(row.form, line, reading_, owner.*(row.field));
    });
  }

  void read_edit_row(const StatementWord& statement, StatementLine line) {
    std::size_t index = 0;
    each_edit([&](const auto& row) {
      if (index++ != statement.index) return;
      typename std::remove_cvref_t<decltype(row)>::EditType edit{};
      if (read_edit(line, reading_, edit)) target_->tweak->edits.emplace_back(std::move(edit));
    });
  }

  // Lines that are nothing

  void refuse_line(std::string_view word, bool figure, Rest line, Rest rest) {
    if (figure) {
      refuse_figure(line);
      return;
    }
    const Token token = token_at(line.first, line.last);
    const Span place = word.empty() ? reading_.span(token.begin, token.end)
                                    : reading_.span(line.first, line.first + word.size());
    const std::string as_shown = word.empty() ? shown(token.text()) : shown(word);
    if (refuse_other_case(word, place, line, rest)) return;
    if (guess_section(word, place, line, rest)) return;
    if (const auto said = meant_statement(section_, word)) {
      reading_.refuse(
          messages::meant_statement, place,
          {as_shown, in_section(section_), std::string(said->hint), std::string(said->instead)});
      return;
    }
    const bool takes_statements = section_ == Section::formula || section_ == Section::tweak;
    if (takes_statements &&
        ((word == "first" && first_word_of(rest) == "sold") || text::fold(word) == "first sold")) {
      reading_.refuse(messages::first_sold, place);
      return;
    }
    if (section_ == Section::none) {
      if (!std::exchange(complained_, true)) {
        const std::string hint = word.empty() ? std::string() : section_hint(section_, word, false);
        reading_.refuse(messages::no_section, place, {as_shown, hint});
      }
      return;
    }
    if (const auto owner = owner_of(word); owner && *owner != section_) {
      reading_.refuse(messages::other_section, place,
                      {as_shown, std::string(section_word(*owner)), in_section(section_)});
    } else if (holds_ingredients(section_)) {
      reading_.refuse(messages::ingredient_needs_amount, place, {as_shown});
    } else {
      // a statement that is only misspelled is not missing
      for (const StatementWord& one : statements_of(section_)) {
        if (text::edit_distance(word, one.word, 2) <= 2) seen(one.full) = place;
      }
      std::string hint = section_hint(section_, word, true);
      if (hint.empty() && section_ == Section::fragrance) {
        hint = "; a constituent begins with its share, such as 5 %";
      }
      if (hint.empty()) hint = ": it knows " + known_statements(section_);
      reading_.refuse(
          messages::unknown_statement, place,
          {as_shown, in_section(section_), std::move(hint), only_statement(section_, word)});
    }
  }

  /// Amounts where none can stand: said once for a stretch of them.
  void refuse_figure(Rest line) {
    if (std::exchange(complained_, true)) return;
    const Span place = reading_.span(line.first, line.last);
    if (section_ == Section::none) {
      reading_.refuse(messages::formula_missing, place, {found(line.first, line.last)});
    } else {
      reading_.refuse(messages::amount_out_of_place, place, {in_section(section_)});
    }
  }

  bool refuse_other_case(std::string_view word, Span place, Rest line, Rest rest) {
    const std::string folded = text::fold(word);
    if (holds_ingredients(section_) && (folded == "qs" || folded == "q.s" || folded == "q.s.")) {
      return !reading_.refuse(messages::write_qs, place, {shown(word), "q.s."});
    }
    const auto section = section_of(folded);
    const StatementWord* statement = find_statement(section_, folded);
    const bool known = section || folded == "include" || statement != nullptr;
    if (!known || folded == word) return false;
    reading_.refuse(messages::lower_case, place, {shown(word), folded});
    if (statement != nullptr) seen(statement->full) = place;
    if (section) open_guessed(*section, line, rest);
    return true;
  }

  /// A misspelled section: said, and opened all the same, so that its lines are not errors too. One
  /// that cannot be guessed is passed over with all its lines.
  bool guess_section(std::string_view word, Span place, Rest line, Rest rest) {
    const Iterator title = skip_blanks(rest.first, rest.last);
    const bool titled = title != rest.last && *title == '"';
    if (word.size() < 4 || (!titled && rest.first != rest.last)) return false;
    const auto section = nearest_section(section_, word, titled ? 2 : 1);
    const bool hopeless = titled && statements_of(section_).empty() && !owner_of(word);
    if (!section && !hopeless) return false;
    reading_.refuse(messages::unknown_section, place,
                    {shown(word), section_hint(section_, word, false),
                     section ? std::string(section_word(*section)) : std::string()});
    if (section) {
      open_guessed(*section, line, rest);
    } else {
      report();
      close_section();
      section_ = Section::unknown;
    }
    return true;
  }

  /// Opens a section of whose heading one thing was refused already; no more is said of it.
  void open_guessed(Section section, Rest line, Rest rest) {
    report();
    open_section(section, line, rest);
    reading_.forget();
  }

  std::string_view text_;
  Reading reading_;
  text::Diagnostics& diagnostics_;
  Document document_;
  Document discarded_;
  Document* target_ = &document_;
  Section section_ = Section::none;
  Span section_place_;
  Span broken_formula_;  ///< of a formula or tweak heading that could not be read
  std::map<std::string_view, Span> first_places_;  ///< by all words of the statement
  std::size_t ingredient_lines_ = 0;
  std::size_t errors_ = 0;
  bool complained_ = false;
};

}  // namespace

Document parse(const text::Sources& sources, text::FileIndex file, text::Diagnostics& diagnostics) {
  const std::string_view text = sources[file].text();
  const auto refused = [&](const text::Message& message, std::size_t at,
                           std::vector<text::Argument> arguments) {
    const auto offset = static_cast<std::uint32_t>(at);
    diagnostics.add(message, {file, offset, offset}, std::move(arguments));
    Document none;
    none.file = file;
    none.whole = false;
    return none;
  };
  if (text.size() > largest_file) {
    return refused(messages::file_too_large, 0, {std::to_string(text.size())});
  }
  if (const auto bad = text::first_bad_byte(text)) return refused(messages::not_utf8, *bad, {});
  return FileReader(text, file, diagnostics).read();
}

}  // namespace sudsmark::formula
