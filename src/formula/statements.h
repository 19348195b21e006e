// The register of statements: a row for each, and whatever must know all of them walks the rows.
//
// A row says which words open a statement, which field of its section it fills, and in which form
// its value is written. Reading, printing, tweaks, what can be left out of a tweak, and the tests'
// pictures of a file go from row to row; none of them keeps a list of its own. A field that no row
// fills, a form that nobody can read or print, and an edit without a row do not compile.
//
//     each_field<Task>([&](const auto& row) { show(row.full, task.*(row.field), row.form); });
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include "formula/card.h"
#include "formula/figure.h"
#include "formula/vocabulary.h"

namespace sudsmark::formula {

// Forms: what stands behind the words of a statement. `words` says what is expected there.

/// A name.
struct NameForm {
  std::string_view words;
};
/// Names with commas between them.
struct NamesForm {
  std::string_view words;
};
/// One of a few fixed words.
struct ChoiceForm {
  const Choice& choice;
  std::string_view words{};  ///< what is expected, where it is not the choice's own words
};
/// Fixed words with commas between them, each once; and, where that is taken, texts in quotes.
struct ChoicesForm {
  const Choice& choice;
  bool or_text = false;
};
/// Names with commas or `and` between them.
struct JoinedForm {
  std::string_view words;
};
/// A figure of a measure, or a range of them.
struct FigureForm {
  const Measure& measure;
};
/// A figure that ends in two words: `1.5 per hour`.
struct RateForm {
  const Measure& measure;
  std::string_view words;     ///< "a rate, such as 1.5 per hour"
  std::string_view per;       ///< "hour"
  std::string_view per_unit;  ///< "'per hour'"
};
/// One text in double quotes.
struct TextForm {
  std::string_view words;
};
/// Texts in double quotes with commas between them.
struct TextsForm {
  std::string_view words;
};
/// A day of the calendar.
struct DayForm {};
/// Nothing: the words alone say it.
struct FlagForm {};
/// `below 0.1 % citral`, `above 5 % limonene`.
struct HalfOpenForm {
  bool below = false;
};
/// `none` or `may contain anything`.
struct UndeclaredForm {};
struct CasForm {};
struct HazardsForm {};
/// A grammar and a print of its own, chosen by the type of the field.
struct OwnForm {};

/// Whether a statement may stand more than once in its section.
enum class Times : unsigned char { once, many };

/// A statement that fills a field of its section.
template <typename Owner, typename Field, typename Form>
struct Row {
  using FieldType = Field;

  constexpr Row(std::string_view words, Field Owner::*filled, Form how_written,
                Times how_often = Times::once)
      : full(words), field(filled), form(how_written), times(how_often) {}

  std::string_view full;  ///< all words that open it: "looks like food"
  Field Owner::*field;
  Form form;
  Times times;
};

/// An edit of a tweak: it is one more item of the tweak's edits.
template <typename Edited>
struct EditRow {
  using EditType = Edited;

  std::string_view full;
  Times times = Times::many;
};
template <typename Edited>
constexpr EditRow<Edited> edit_row(std::string_view full, Times times = Times::many) {
  return {full, times};
}

/// The rows of a section, in the order in which they are printed; and how many of the section's
/// fields are filled by its heading and by lines that are no statements.
template <typename Owner>
struct Register;

template <>
struct Register<Statements> {
  static constexpr std::size_t other_fields = 0;
  static constexpr std::tuple rows{
      Row("product", &Statements::product, NameForm{"a kind of product"}),
      Row("forming", &Statements::forming, ChoiceForm{choice::forming}),
      Row("market", &Statements::markets, ChoicesForm{choice::market}),
      Row("batch", &Statements::batch, FigureForm{measure::mass_above_zero}),
      Row("piece", &Statements::piece, FigureForm{measure::mass_above_zero}),
      Row("bath", &Statements::bath, OwnForm{}),
      Row("water", &Statements::water, OwnForm{}),
      Row("users", &Statements::users, ChoicesForm{choice::users}),
      Row("claims", &Statements::claims, ChoicesForm{choice::claims, true}),
      Row("dried", &Statements::dried, OwnForm{}),
      Row("batch made", &Statements::batch_made, DayForm{}),
      Row("on sale since", &Statements::on_sale_since, DayForm{}),
      Row("looks like food", &Statements::looks_like_food, FlagForm{}),
      Row("made in", &Statements::made_in, NameForm{"the name of a workshop"}),
      Row("keep", &Statements::keeps, OwnForm{}, Times::many),
      Row("allow", &Statements::allows, OwnForm{}, Times::many),
  };
};

template <>
struct Register<Tweak> {
  static constexpr std::tuple edits{
      edit_row<SetEdit>("set"),
      edit_row<SwapEdit>("swap"),
      edit_row<AddEdit>("add"),
      edit_row<RemoveEdit>("remove"),
      edit_row<ScaleEdit>("scale batch", Times::once),
      edit_row<FillEdit>("fill with", Times::once),
  };
};

template <>
struct Register<Fragrance> {
  static constexpr std::size_t other_fields = 2;  // name, place
  static constexpr std::tuple rows{
      Row("limit", &Fragrance::limit, FigureForm{measure::share}),
      Row("category", &Fragrance::categories, JoinedForm{"a category, such as 9"}),
      Row("below", &Fragrance::constituents, HalfOpenForm{.below = true}, Times::many),
      Row("above", &Fragrance::constituents, HalfOpenForm{.below = false}, Times::many),
      Row("undeclared", &Fragrance::undeclared_none, UndeclaredForm{}),
      Row("flash point", &Fragrance::flash_point, FigureForm{measure::temperature}),
  };
};

template <>
struct Register<UserMaterial> {
  static constexpr std::size_t other_fields = 3;  // name, like, place
  static constexpr std::tuple rows{
      Row("active", &UserMaterial::active, FigureForm{measure::share}),
      Row("water", &UserMaterial::water, FigureForm{measure::share}),
      Row("density", &UserMaterial::density, FigureForm{measure::density}),
      Row("inci", &UserMaterial::inci, NameForm{"an INCI name"}),
      Row("cas", &UserMaterial::cas, CasForm{}),
      Row("supplier limit", &UserMaterial::supplier_limit, FigureForm{measure::share}),
      Row("traces", &UserMaterial::traces, OwnForm{}, Times::many),
      Row("role", &UserMaterial::roles, NamesForm{"a role"}),
      Row("form", &UserMaterial::form, NameForm{"a form"}),
      Row("hazards", &UserMaterial::hazards, HazardsForm{}),
  };
};

template <>
struct Register<Workshop> {
  static constexpr std::size_t other_fields = 2;  // name, place
  static constexpr std::tuple rows{
      Row("room", &Workshop::room, FigureForm{measure::room}),
      Row("air changes", &Workshop::air_changes,
          RateForm{measure::hourly, "a rate, such as 1.5 per hour", "hour", "'per hour'"}),
      Row("humidity", &Workshop::humidity, FigureForm{measure::humidity}),
      Row("temperature", &Workshop::temperature, FigureForm{measure::temperature}),
      Row("scale", &Workshop::scales, OwnForm{}, Times::many),
      Row("mask", &Workshop::mask, ChoiceForm{choice::mask}),
      Row("extraction", &Workshop::extraction, ChoiceForm{choice::answer, "yes or no"}),
      Row("goggles", &Workshop::goggles, ChoiceForm{choice::answer, "yes or no"}),
      Row("air speed", &Workshop::air_speed, FigureForm{measure::speed}),
  };
};

template <>
struct Register<Task> {
  static constexpr std::size_t other_fields = 2;  // name, place
  static constexpr std::tuple rows{
      Row("handles", &Task::handles, OwnForm{}),
      Row("takes", &Task::takes, FigureForm{measure::time}),
      Row("times", &Task::times,
          RateForm{measure::daily, "a number of times, such as 4 per day", "day", "'per day'"}),
      Row("in", &Task::in, FigureForm{measure::room}),
      Row("raises", &Task::raises, FigureForm{measure::dustiness}),
      Row("measured", &Task::measured, OwnForm{}, Times::many),
  };
};

template <>
struct Register<Label> {
  static constexpr std::size_t other_fields = 1;  // place
  static constexpr std::tuple rows{
      Row("ingredients", &Label::ingredients, TextForm{"the list in double quotes"}),
      Row("warning", &Label::warnings, TextsForm{"the warning in double quotes"}),
  };
};

/// Calls use(row) for each statement of a section.
template <typename Owner, typename Use>
constexpr void each_row(const Use& use) {
  std::apply([&](const auto&... row) { (use(row), ...); }, Register<Owner>::rows);
}

/// Whether a row is the first that fills its field: `below` and `above` fill one list.
template <typename Owner, std::size_t index>
constexpr bool first_of_field() {
  constexpr auto row = std::get<index>(Register<Owner>::rows);
  bool first = true;
  [&]<std::size_t... before>(std::index_sequence<before...>) {
    [[maybe_unused]] const auto differs = [&](const auto& other) {
      if constexpr (std::is_same_v<decltype(other.field), decltype(row.field)>) {
        first = first && other.field != row.field;
      }
    };
    (differs(std::get<before>(Register<Owner>::rows)), ...);
  }
  (std::make_index_sequence<index>{});
  return first;
}

/// Calls use(row) for each field of a section that statements fill, once.
template <typename Owner, typename Use>
constexpr void each_field(const Use& use) {
  constexpr std::size_t count = std::tuple_size_v<decltype(Register<Owner>::rows)>;
  [&]<std::size_t... index>(std::index_sequence<index...>) {
    const auto once = [&]<std::size_t one>(std::integral_constant<std::size_t, one>) {
      if constexpr (first_of_field<Owner, one>()) use(std::get<one>(Register<Owner>::rows));
    };
    (once(std::integral_constant<std::size_t, index>{}), ...);
  }
  (std::make_index_sequence<count>{});
}

/// Calls use(row) for each edit of a tweak.
template <typename Use>
constexpr void each_edit(const Use& use) {
  std::apply([&](const auto&... row) { (use(row), ...); }, Register<Tweak>::edits);
}

/// How many fields of a section its statements fill.
template <typename Owner>
constexpr std::size_t field_count() {
  std::size_t count = 0;
  each_field<Owner>([&](const auto& /*row*/) { ++count; });
  return count;
}

/// The words of an edit of this type.
template <typename Edited>
constexpr std::string_view edit_words() {
  std::string_view words;
  each_edit([&](const auto& row) {
    if constexpr (std::is_same_v<EditRow<Edited>, std::remove_cvref_t<decltype(row)>>) {
      words = row.full;
    }
  });
  return words;
}

}  // namespace sudsmark::formula
