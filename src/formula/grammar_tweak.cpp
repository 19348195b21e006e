// Tweaks: their heading and their edits.
#include <string>

#include "formula/amount.h"
#include "formula/grammar.h"
#include "formula/terms.h"

namespace sudsmark::formula {
namespace {

constexpr auto amount =
    term<Amount>("an amount, such as 20 % or 500 g",
                 [](Iterator& first, Iterator last, Reading& reading, Amount& value) {
                   return read_amount(first, last, reading, value);
                 });

/// Adds the edit if its line could be read.
template <typename Edited>
bool keep_if(bool read, Tweak& tweak, Edited edit) {
  if (read) tweak.edits.emplace_back(std::move(edit));
  return read;
}

}  // namespace

bool read_tweak(Rest rest, Reading& reading, Tweak& tweak) {
  return run(reading, rest,
             need(name("the name of the tweak", {.keyword = "of"}))[into(tweak.name)] >>
                 need(keyword("of", "'of' and the path of the base")) >>
                 need(quoted_text("the path of the base in double quotes"))[into(tweak.of)]);
}

bool read_edit(Statement statement, Span place, Rest rest, Reading& reading, Tweak& tweak) {
  switch (statement) {
    case Statement::set: {
      SetEdit edit{.name = {}, .amount = {}, .place = place};
      const bool read =
          run(reading, rest,
              need(name("the name of a material", {.keyword = "to"}))[into(edit.name)] >>
                  need(keyword("to", "'to'")) >> need(amount)[into(edit.amount)]);
      return keep_if(read, tweak, std::move(edit));
    }
    case Statement::swap: {
      SwapEdit edit{.old_name = {}, .new_name = {}, .place = place};
      const bool read = run(
          reading, rest,
          need(name("the name of a material", {.keyword = "for"}))[into(edit.old_name)] >>
              need(keyword("for", "'for'")) >>
              need(name("the name of the material that comes in its place"))[into(edit.new_name)]);
      return keep_if(read, tweak, std::move(edit));
    }
    case Statement::add: {
      AddEdit edit{.line = {}, .to = {}, .place = place};
      edit.line.place = place;
      const bool read =
          run(reading, rest,
              need(amount)[into(edit.line.amount)] >> -keyword("of", "'of'") >>
                  need(name("the name of a material", {.keyword = "to"}))[into(edit.line.name)] >>
                  -(keyword("to", "'to'") >>
                    need(name("the name of a phase, premix or portion"))[into(edit.to)]));
      return keep_if(read, tweak, std::move(edit));
    }
    case Statement::remove: {
      RemoveEdit edit{.name = {}, .place = place};
      const bool read = run(reading, rest, need(name("the name of a material"))[into(edit.name)]);
      return keep_if(read, tweak, std::move(edit));
    }
    case Statement::scale_batch: {
      ScaleEdit edit{.batch = {}, .place = place};
      const bool read = run(reading, rest,
                            need(keyword("batch", "'batch'")) >> need(keyword("to", "'to'")) >>
                                need(figure(measure::mass_above_zero))[into(edit.batch)]);
      return keep_if(read, tweak, std::move(edit));
    }
    case Statement::fill_with: {
      FillEdit edit{.name = {}, .place = place};
      const bool read = run(
          reading, rest,
          need(keyword("with", "'with'")) >> need(name("the name of a material"))[into(edit.name)]);
      return keep_if(read, tweak, std::move(edit));
    }
    default:
      return reading.expected("an edit", rest.first, rest.last);
  }
}

}  // namespace sudsmark::formula
