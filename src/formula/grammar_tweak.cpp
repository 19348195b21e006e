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

}  // namespace

bool read_tweak(Rest rest, Reading& reading, Tweak& tweak) {
  return run(reading, rest,
             need(name("the name of the tweak", {.keyword = "of"}))[into(tweak.name)] >>
                 need(keyword("of", "'of' and the path of the base")) >>
                 need(quoted_text("the path of the base in double quotes"))[into(tweak.of)]);
}

bool read_edit(StatementLine line, Reading& reading, SetEdit& edit) {
  edit.place = line.place;
  return run(reading, line.rest,
             need(name("the name of a material", {.keyword = "to"}))[into(edit.name)] >>
                 need(keyword("to", "'to'")) >> need(amount)[into(edit.amount)]);
}

bool read_edit(StatementLine line, Reading& reading, SwapEdit& edit) {
  edit.place = line.place;
  return run(
      reading, line.rest,
      need(name("the name of a material", {.keyword = "for"}))[into(edit.old_name)] >>
          need(keyword("for", "'for'")) >>
          need(name("the name of the material that comes in its place"))[into(edit.new_name)]);
}

bool read_edit(StatementLine line, Reading& reading, AddEdit& edit) {
  edit.place = edit.line.place = line.place;
  return run(
      reading, line.rest,
      need(amount)[into(edit.line.amount)] >> -keyword("of", "'of'") >>
          need(name("the name of a material",
                    {.keyword = "to", .comma = true}))[into(edit.line.name)] >>
          -dries_off(edit.line.dries_off) >>
          -(keyword("to", "'to'") >> need(name("the name of a phase, premix or portion",
                                               {.keyword = {}, .comma = true}))[into(edit.to)] >>
            -dries_off(edit.line.dries_off)));
}

bool read_edit(StatementLine line, Reading& reading, RemoveEdit& edit) {
  edit.place = line.place;
  return run(reading, line.rest, need(name("the name of a material"))[into(edit.name)]);
}

bool read_edit(StatementLine line, Reading& reading, ScaleEdit& edit) {
  edit.place = line.place;
  return run(
      reading, line.rest,
      need(keyword("to", "'to'")) >> need(figure(measure::mass_above_zero))[into(edit.batch)]);
}

bool read_edit(StatementLine line, Reading& reading, FillEdit& edit) {
  edit.place = line.place;
  return run(reading, line.rest, need(name("the name of a material"))[into(edit.name)]);
}

}  // namespace sudsmark::formula
