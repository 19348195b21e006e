// Workshops, tasks and labels.
#include <array>

#include "formula/amount.h"
#include "formula/choice.h"
#include "formula/grammar.h"

namespace sudsmark::formula {
namespace {

constexpr std::array<std::string_view, 6> masks{"none", "FFP1", "FFP2", "FFP3", "N95", "P100"};
constexpr std::array<std::string_view, 2> yes_or_no{"yes", "no"};
constexpr Choice mask_choice{"a mask", masks};
constexpr Choice extraction_choice{"an answer", yes_or_no};

/// A figure that ends in two words: `1.5 per hour`.
auto rate(std::string_view unit, std::string_view per_unit, std::string_view words,
          std::optional<Figure>& field) {
  return need(words, figure(measure::count))[into(field)] >>
         need(per_unit, keyword("per", "") >> keyword(unit, ""));
}

/// A single mass: what follows `to` is another one, not the end of a range.
constexpr auto load =
    term<Figure>(measure::mass_above_zero.words,
                 [](Iterator& first, Iterator last, Reading& reading, Figure& value) {
                   return read_single_figure(first, last, reading, measure::mass_above_zero, value);
                 });

bool read_scale(Rest rest, Reading& reading, std::vector<Scale>& scales) {
  Scale scale;
  const bool read =
      run(reading, rest,
          need(load)[into(scale.step)] >> -(keyword("to", "'to'") >> need(load)[into(scale.most)]));
  if (!read) return false;
  scale.place = scale.step.place;
  if (scale.most) scale.place.end = scale.most->place.end;
  if (scale.most && scale.most->value.low < scale.step.value.low) {
    return reading.refuse(messages::scale_upside_down, scale.place);
  }
  scales.push_back(std::move(scale));
  return true;
}

bool read_handles(Rest rest, Reading& reading, std::optional<Handled>& field) {
  Handled handled;
  const auto amount =
      term<Amount>("", [](Iterator& first, Iterator last, Reading& line, Amount& value) {
        if (!read_amount(first, last, line, value)) return false;
        const bool weighable = value.kind == AmountKind::mass || value.kind == AmountKind::units ||
                               value.kind == AmountKind::volume;
        return weighable || line.refuse(messages::handles_no_mass, value.place);
      });
  const auto all_of_phase = [&](const auto&) { handled.phase = true; };
  const bool read = run(
      reading, rest,
      (need("phase and its name, or an amount, such as 1.2 kg",
            keyword("phase", "")[all_of_phase] | amount[into(handled.amount)]) >>
       -keyword("of", "'of'") >> need(name("the name of what is handled"))[into(handled.name)]));
  if (read) field = std::move(handled);
  return read;
}

}  // namespace

bool read_statement(Statement statement, Rest rest, Reading& reading, Workshop& to) {
  switch (statement) {
    case Statement::room:
      return run_into(to.room, reading, rest, need(figure(measure::room))[into(to.room)]);
    case Statement::air_changes:
      return run_into(
          to.air_changes, reading, rest,
          need(keyword("changes", "'changes'")) >>
              rate("hour", "'per hour'", "a rate, such as 1.5 per hour", to.air_changes));
    case Statement::humidity:
      return run_into(to.humidity, reading, rest,
                      need(figure(measure::humidity))[into(to.humidity)]);
    case Statement::temperature:
      return run_into(to.temperature, reading, rest,
                      need(figure(measure::temperature))[into(to.temperature)]);
    case Statement::scale:
      return read_scale(rest, reading, to.scales);
    case Statement::mask:
      return run_into(to.mask, reading, rest, need(one_of(mask_choice))[into(to.mask)]);
    case Statement::extraction:
      return run_into(to.extraction, reading, rest,
                      need("yes or no", one_of(extraction_choice)[into(to.extraction)]));
    default:
      return reading.expected("a statement of a workshop", rest.first, rest.last);
  }
}

bool read_statement(Statement statement, Rest rest, Reading& reading, Task& to) {
  switch (statement) {
    case Statement::handles:
      return read_handles(rest, reading, to.handles);
    case Statement::takes:
      return run_into(to.takes, reading, rest, need(figure(measure::time))[into(to.takes)]);
    case Statement::times:
      return run_into(to.times, reading, rest,
                      rate("day", "'per day'", "a number of times, such as 4 per day", to.times));
    case Statement::in:
      return run_into(to.in, reading, rest, need(figure(measure::room))[into(to.in)]);
    case Statement::raises:
      return run_into(to.raises, reading, rest, need(figure(measure::dustiness))[into(to.raises)]);
    default:
      return reading.expected("a statement of a task", rest.first, rest.last);
  }
}

bool read_statement(Statement statement, Rest rest, Reading& reading, Label& to) {
  switch (statement) {
    case Statement::ingredients:
      return run_into(to.ingredients, reading, rest,
                      need(quoted_text("the list in double quotes"))[into(to.ingredients)]);
    case Statement::warning: {
      constexpr auto warning = quoted_text("the warning in double quotes");
      if (run(reading, rest,
              need(warning)[onto(to.warnings)] >> *(comma >> need(warning)[onto(to.warnings)]))) {
        return true;
      }
      to.warnings.clear();
      return false;
    }
    default:
      return reading.expected("a statement of a label", rest.first, rest.last);
  }
}

}  // namespace sudsmark::formula
