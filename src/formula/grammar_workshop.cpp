// Workshops and tasks: scales, and what a task handles.

#include "formula/amount.h"
#include "formula/choice.h"
#include "formula/grammar.h"

namespace sudsmark::formula {
namespace {

/// A single mass: what follows `to` is another one, not the end of a range.
constexpr auto load =
    term<Figure>(measure::mass_above_zero.words,
                 [](Iterator& first, Iterator last, Reading& reading, Figure& value) {
                   return read_single_figure(first, last, reading, measure::mass_above_zero, value);
                 });

}  // namespace

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::vector<Scale>& scales) {
  Scale scale;
  const bool read =
      run(reading, line.rest,
          need(load)[into(scale.step)] >> -(keyword("to", "'to'") >> need(load)[into(scale.most)]));
  if (!read) return false;
  scale.place = scale.step.place;
  if (scale.most) scale.place.end = scale.most->place.end;
  if (scale.most && scale.most->value.low < scale.step.value.low) {
    return reading.refuse(messages::scale_upside_down, scale.place);
  }
  scales.push_back(scale);
  return true;
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Handled>& field) {
  Handled handled;
  const auto amount =
      term<Amount>("", [](Iterator& first, Iterator last, Reading& hearing, Amount& value) {
        if (!read_amount(first, last, hearing, value)) return false;
        const bool weighable = value.kind == AmountKind::mass || value.kind == AmountKind::units ||
                               value.kind == AmountKind::volume;
        return weighable || hearing.refuse(messages::handles_no_mass, value.place);
      });
  const auto all_of_phase = [&](const auto&) { handled.phase = true; };
  const bool read = run(
      reading, line.rest,
      (need("phase and its name, or an amount, such as 1.2 kg",
            keyword("phase", "")[all_of_phase] | amount[into(handled.amount)]) >>
       -keyword("of", "'of'") >> need(name("the name of what is handled"))[into(handled.name)]));
  if (read) field = std::move(handled);
  return read;
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::vector<Sampled>& samples) {
  Sampled sampled;
  Figure dust;
  const bool read =
      run(reading, line.rest,
          need(figure(measure::dust))[into(dust)] >>
              need(one_of(choice::dust_fraction, "over"))[into(sampled.fraction)] >>
              need(keyword("over", "'over'")) >> need(figure(measure::time))[into(sampled.over)]);
  if (!read) return false;
  if (!sampled.over.value.exact()) {
    return reading.refuse(messages::sampled_range, sampled.over.place);
  }
  sampled.dust = dust.value;
  sampled.place = line.place;
  samples.push_back(std::move(sampled));
  return true;
}

}  // namespace sudsmark::formula
