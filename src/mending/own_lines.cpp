#include "mending/own_lines.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string_view>

#include "formula/draft.h"
#include "mending/edits.h"
#include "text/digits.h"

namespace sudsmark::mending {
namespace {

using formula::DraftLine;
using formula::DraftPart;
using formula::Line;
using formula::Range;
using text::Span;

bool within(const Span& inner, const Span& outer) {
  return inner.file == outer.file && inner.begin >= outer.begin && inner.end <= outer.end;
}

/// But for the last digits, which scaling there and back may change.
bool alike(const Range& a, const Range& b) {
  constexpr double noticed = 1e-9;
  const auto same = [](double x, double y) {
    return std::abs(x - y) <= noticed * std::max(std::abs(x), std::abs(y));
  };
  return same(a.low, b.low) && same(a.high, b.high);
}

/// What was only scaled with the rest has more digits than a scale.
std::string weighable(formula::Amount amount) {
  constexpr int digits = 5;
  amount.value.low = text::rounded_to_digits(amount.value.low, digits);
  amount.value.high = text::rounded_to_digits(amount.value.high, digits);
  return printed_edit(amount);
}

class Rewriting {
 public:
  Rewriting(const text::Source& file, const formula::Card& card, const formula::Card& wanted)
      : file_(file), text_(file.text()), card_(card), wanted_(wanted) {}

  std::optional<OwnLines> run(const std::vector<std::string>& statements) {
    const formula::Draft was = formula::draft_of(card_);
    const formula::Draft is = formula::draft_of(wanted_);
    for (std::size_t at = 0; at < was.size(); ++at) part(was[at], is[at]);
    for (const std::string& words : statements) state(words);
    if (!sound_) return std::nullopt;
    std::stable_sort(pieces_.begin(), pieces_.end(),
                     [](const Piece& a, const Piece& b) { return a.begin < b.begin; });
    return made();
  }

 private:
  struct Piece {
    std::size_t begin;
    std::size_t end;
    std::string text;
  };

  /// A tweak leaves lines in their order, and what it adds stands behind them.
  void part(const DraftPart& was, const DraftPart& is) {
    auto next = is.lines.begin();
    const Line* last = nullptr;  // of those that stay
    for (const DraftLine& one : was.lines) {
      const bool stays =
          next != is.lines.end() && (is_of(next->line, one.line) || swapped(next->line));
      if (stays) {
        change(one.line, next->line);
        last = &one.line;
        ++next;
      } else {
        remove(one.line);
      }
    }
    for (; next != is.lines.end(); ++next) add(next->line, last);
  }

  [[nodiscard]] bool of_tweak(const Span& place) const { return place.file == wanted_.file; }

  [[nodiscard]] bool is_of(const Line& is, const Line& was) const {
    return !of_tweak(is.name.place) && is.name.place.begin == was.name.place.begin;
  }

  /// A line that is added has all of itself in one statement.
  [[nodiscard]] bool swapped(const Line& is) const {
    return of_tweak(is.name.place) &&
           !(within(is.name.place, is.place) && within(is.amount.place, is.place));
  }

  void change(const Line& was, const Line& is) {
    const bool renamed = of_tweak(is.name.place);
    if (renamed) replace(was.name.place, written(is.name));
    if (is.amount.kind == was.amount.kind && is.amount.unit == was.amount.unit &&
        alike(is.amount.value, was.amount.value)) {
      return;
    }
    std::string amount = weighable(is.amount);
    Span place = was.amount.place;
    // the name stays in its column where there are blanks to take
    const std::string_view gap = between(place.end, was.name.place.begin);
    if (gap.find_first_not_of(' ') == std::string_view::npos && !gap.empty()) {
      const std::size_t width = place.end - place.begin + gap.size();
      place.end = was.name.place.begin;
      amount.append(amount.size() < width ? width - amount.size() : 1, ' ');
    }
    replace(place, std::move(amount));
  }

  void remove(const Line& was) {
    const std::size_t end = std::min(text_.find('\n', was.place.begin), text_.size() - 1);
    put(was.place, {begin_of_line(was.place.begin), end + 1, {}});
  }

  /// Below the line `last`, set as it is; there is no telling where without one.
  void add(const Line& is, const Line* last) {
    if (last == nullptr) {
      sound_ = false;
      return;
    }
    const std::size_t begin = begin_of_line(last->place.begin);
    std::string words = "\n" + std::string(between(begin, last->place.begin));
    std::string amount = weighable(is.amount);
    const std::size_t width = last->name.place.begin - last->place.begin;
    amount.append(amount.size() < width ? width - amount.size() : 1, ' ');
    const std::size_t end = end_of_line(last->place.begin);
    put(last->place, {end, end, words + amount + written(is.name)});
  }

  /// A statement of the tweak in the place of the card's own.
  void state(std::string_view words) {
    const auto behind = [&](std::string_view head) -> std::optional<std::string> {
      if (!words.starts_with(head)) return std::nullopt;
      return std::string(words.substr(head.size()));
    };
    const formula::Statements& stated = card_.statements;
    if (const auto piece = behind("piece "); piece && stated.piece) {
      replace(stated.piece->place, *piece);
    } else if (const auto batch = behind("scale batch to "); batch && stated.batch) {
      replace(stated.batch->place, *batch);
    } else if (words.starts_with("bath ") && stated.bath) {
      replace(stated.bath->place, std::string(words));
    } else {
      sound_ = false;
    }
  }

  void replace(const Span& place, std::string words) {
    put(place, {place.begin, place.end, std::move(words)});
  }

  void put(const Span& place, Piece piece) {
    sound_ = sound_ && place.file == card_.file;
    pieces_.push_back(std::move(piece));
  }

  [[nodiscard]] std::string_view between(std::size_t begin, std::size_t end) const {
    return begin < end ? text_.substr(begin, end - begin) : std::string_view();
  }
  [[nodiscard]] std::size_t begin_of_line(std::size_t at) const {
    return text_.substr(0, at).rfind('\n') + 1;
  }
  /// Where its line end stands, or the text ends.
  [[nodiscard]] std::size_t end_of_line(std::size_t at) const {
    const std::size_t end = std::min(text_.find('\n', at), text_.size());
    return end > at && text_[end - 1] == '\r' ? end - 1 : end;
  }

  [[nodiscard]] OwnLines made() const {
    OwnLines out;
    std::size_t done = 0;
    for (const Piece& piece : pieces_) {
      const text::Position begin = file_.position(piece.begin);
      const text::Position end = file_.position(piece.end);
      out.edits.push_back({begin.line, begin.column, end.line, end.column, piece.text});
      out.text += between(done, piece.begin);
      out.text += piece.text;
      done = piece.end;
    }
    out.text += text_.substr(done);
    return out;
  }

  const text::Source& file_;
  const std::string_view text_;
  const formula::Card& card_;
  const formula::Card& wanted_;
  std::vector<Piece> pieces_;
  bool sound_ = true;
};

}  // namespace

std::optional<OwnLines> own_lines(const text::Source& file, const formula::Card& card,
                                  const formula::Card& wanted,
                                  const std::vector<std::string>& statements) {
  return Rewriting(file, card, wanted).run(statements);
}

}  // namespace sudsmark::mending
