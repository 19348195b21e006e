#include "drill/sums.h"

#include <array>
#include <cmath>
#include <functional>
#include <string>

#include "drill/faults.h"
#include "quantity/number.h"

namespace sudsmark::drill {
namespace {

using quantity::machine_number;
using quantity::printed;

/// A person works with a pocket calculator and rounds on the way.
constexpr double usual_tolerance = 0.02;

/// A figure between two, in whole steps: what stands on a scale or a card.
double stepped(Draws& draws, double low, double high, double step) {
  const auto steps = static_cast<std::size_t>(std::lround((high - low) / step)) + 1;
  const double figure = low + step * static_cast<double>(draws.below(steps));
  constexpr double finest = 1e6;
  return std::round(figure * finest) / finest;
}

std::string in(double figure, std::string_view unit) {
  return machine_number(figure) + " " + std::string(unit);
}

std::string about(double figure, std::string_view unit) {
  return printed(figure) + " " + std::string(unit);
}

class Sums {
 public:
  Sums(const front::Parts& parts, const Checker& checker, Draws& draws)
      : parts_(parts), checker_(checker), draws_(draws) {}

  Sum made() {
    const std::array ways{&Sums::emulsifier, &Sums::bicarbonate, &Sums::active,
                          &Sums::scent,      &Sums::smallest,    &Sums::pieces,
                          &Sums::dilution,   &Sums::dose,        &Sums::dough};
    Sum sum = (this->*ways[draws_.below(ways.size())])();
    if (sum.tolerance == 0) sum.tolerance = usual_tolerance * sum.answer;
    return sum;
  }

 private:
  /// The limit that a rule holds a sound card against.
  [[nodiscard]] std::optional<double> limit_of(const std::string& rule) const {
    for (const rules::ModelCard& card : parts_.ruleset.training->cards) {
      Sheet sheet = read_sheet(card.formula);
      take_middles(sheet);
      const RunResult run = checker_.in_full({write(sheet, Style::fills).text, {}});
      for (const FormulaResult& formula : run.formulas) {
        for (const Finding& finding : formula.findings) {
          if (finding.rule != rule || !finding.limit) continue;
          return finding.limit->low ? finding.limit->low : finding.limit->high;
        }
      }
    }
    return std::nullopt;
  }

  /// Molar mass of a material's active substance. [g/mol]
  [[nodiscard]] const catalogue::Chemistry& chemistry(std::string_view material) const {
    static const catalogue::Chemistry none;
    const auto meaning = parts_.catalogue.find_material(material);
    if (meaning.materials.empty()) return none;
    const auto& found = parts_.catalogue.materials[meaning.materials.front()].chemistry;
    return found ? *found : none;
  }

  Sum emulsifier() {
    const double ratio = limit_of("emulsifier-to-oil").value_or(0);
    const double oil = stepped(draws_, 30, 180, 5);
    const double scent = stepped(draws_, 10, 60, 2);
    Sum out{"emulsifier", {}, ratio * (oil + scent), 0, "g", {}, {}};
    out.question = "A batch of a fizzy without foamer holds " + in(oil, "g") +
                   " of liquid oil and " + in(scent, "g") +
                   " of scent. The rule emulsifier-to-oil asks for at least " +
                   machine_number(ratio) +
                   " parts of emulsifier to one part of oil and scent together. How many grams of "
                   "polysorbate 80 does it need at least?";
    out.working = {"oil and scent together: " + machine_number(oil) + " + " +
                       machine_number(scent) + " = " + in(oil + scent, "g"),
                   machine_number(ratio) + " parts to one: " + machine_number(ratio) + " x " +
                       in(oil + scent, "g") + " = " + about(out.answer, "g")};
    out.given = {{"oil", oil}, {"scent", scent}, {"ratio", ratio}};
    return out;
  }

  Sum bicarbonate() {
    const auto& acid = chemistry("citric acid");
    const auto& base = chemistry("sodium bicarbonate");
    const double acid_mass = acid.molar_mass.low;
    const double base_mass = base.molar_mass.low;
    const double citric = stepped(draws_, 50, 900, 10);
    Sum out{"bicarbonate", {}, citric / acid_mass * acid.acid_protons * base_mass, 0, "g", {}, {}};
    out.question = "How many grams of sodium bicarbonate does " + in(citric, "g") +
                   " of citric acid (without crystal water) use up when all of it fizzes? Citric "
                   "acid has " +
                   in(acid_mass, "g/mol") + " and gives " + machine_number(acid.acid_protons) +
                   " protons; bicarbonate has " + in(base_mass, "g/mol") + " and takes one.";
    const double moles = citric / acid_mass;
    out.working = {"moles of acid: " + in(citric, "g") + " / " + in(acid_mass, "g/mol") + " = " +
                       about(moles, "mol"),
                   "moles of bicarbonate: " + machine_number(acid.acid_protons) + " x " +
                       about(moles, "mol") + " = " + about(moles * acid.acid_protons, "mol"),
                   "grams: " + about(moles * acid.acid_protons, "mol") + " x " +
                       in(base_mass, "g/mol") + " = " + about(out.answer, "g")};
    out.given = {{"citric", citric}};
    return out;
  }

  Sum active() {
    const double powder = stepped(draws_, 100, 900, 10);
    const double strength = stepped(draws_, 28, 95, 1);
    const double batch = stepped(draws_, 1000, 4000, 250);
    Sum out{"active", {}, powder * strength / batch, 0, "%", {}, {}};
    out.question = in(powder, "g") + " of a foamer of " + in(strength, "%") +
                   " active matter go into a batch of " + in(batch, "g") +
                   ". How many per cent of active matter has the batch?";
    const double active = powder * strength / 100;
    out.working = {"active matter: " + in(powder, "g") + " x " + machine_number(strength) +
                       " / 100 = " + about(active, "g"),
                   "share of the batch: " + about(active, "g") + " / " + in(batch, "g") +
                       " x 100 = " + about(out.answer, "%")};
    out.given = {{"powder", powder}, {"strength", strength}, {"batch", batch}};
    return out;
  }

  Sum scent() {
    const double limit = stepped(draws_, 0.4, 4.8, 0.1);
    const double batch = stepped(draws_, 0.5, 6, 0.25);
    constexpr double grams = 1000;
    Sum out{"scent", {}, batch * grams * limit / 100, 0, "g", {}, {}};
    out.question = "The certificate of a scent allows " + in(limit, "%") +
                   " in this kind of product. How many grams of it may a batch of " +
                   in(batch, "kg") + " hold at most?";
    out.working = {"the batch in grams: " + in(batch, "kg") + " = " + in(batch * grams, "g"),
                   in(limit, "%") + " of it: " + in(batch * grams, "g") + " x " +
                       machine_number(limit) + " / 100 = " + about(out.answer, "g")};
    out.given = {{"limit", limit}, {"batch", batch}};
    return out;
  }

  Sum smallest() {
    constexpr std::array steps{0.01, 0.1, 0.5, 1.0, 5.0};
    const double step = steps[draws_.below(steps.size())];
    const double error = limit_of("weighing-too-coarse").value_or(0);
    Sum out{"smallest", {}, step / error * 100, 0, "g", {}, {}};
    out.question = "A scale shows steps of " + in(step, "g") +
                   ". A preservative is to be weighed so that one step is no more than " +
                   in(error, "%") + " of it. How many grams is the smallest dose for this scale?";
    out.working = {"one step is " + machine_number(error) + " / 100 of the dose: " + in(step, "g") +
                       " = dose x " + machine_number(error / 100),
                   "dose = " + in(step, "g") + " / " + machine_number(error / 100) + " = " +
                       about(out.answer, "g")};
    out.given = {{"step", step}, {"error", error}};
    return out;
  }

  Sum pieces() {
    const double batch = stepped(draws_, 1.5, 8, 0.1);
    const double piece = stepped(draws_, 35, 180, 5);
    const double loss = stepped(draws_, 1, 5, 1);
    constexpr double grams = 1000;
    const double usable = batch * grams * (100 - loss) / 100;
    Sum out{"pieces", {}, std::floor(usable / piece + 1e-9), 0.5, "pieces", {}, {}};
    out.question = "A batch weighs " + in(batch, "kg") + ", and " + in(loss, "%") +
                   " of it stays in bowl and mould. How many whole pieces of " + in(piece, "g") +
                   " does it make?";
    out.working = {"what is left: " + in(batch * grams, "g") + " x " + machine_number(100 - loss) +
                       " / 100 = " + in(usable, "g"),
                   in(usable, "g") + " / " + in(piece, "g") + " = " + printed(usable / piece) +
                       ", so " + in(out.answer, "whole pieces")};
    out.given = {{"batch", batch}, {"piece", piece}, {"loss", loss}};
    return out;
  }

  Sum dilution() {
    const double dye = stepped(draws_, 0.2, 3, 0.1);
    const double strength = stepped(draws_, 2, 10, 1);
    Sum out{"dilution", {}, dye * (100 - strength) / strength, 0, "g", {}, {}};
    out.question = "A batch is to get " + in(dye, "g") +
                   " of a lake, rubbed down in starch: " + in(strength, "%") +
                   " lake in the dilution, the rest starch. How many grams of starch does that "
                   "much dilution take with it?";
    const double whole = dye / strength * 100;
    out.working = {"dilution: " + in(dye, "g") + " / " + machine_number(strength) +
                       " x 100 = " + about(whole, "g"),
                   "starch in it: " + about(whole, "g") + " - " + in(dye, "g") + " = " +
                       about(out.answer, "g")};
    out.given = {{"dye", dye}, {"strength", strength}};
    return out;
  }

  Sum dose() {
    const double piece = stepped(draws_, 40, 160, 5);
    const double share = stepped(draws_, 8, 30, 1);
    const double litres = stepped(draws_, 80, 200, 10);
    constexpr double milligrams = 1000;
    Sum out{"in the bath", {}, piece * share / 100 * milligrams / litres, 0, "mg/l", {}, {}};
    out.question = "A piece of " + in(piece, "g") + " with " + in(share, "%") +
                   " active foamer goes into " + in(litres, "l") +
                   " of water. How many milligrams of active matter are in a litre?";
    const double active = piece * share / 100;
    out.working = {"active matter of a piece: " + in(piece, "g") + " x " + machine_number(share) +
                       " / 100 = " + about(active, "g"),
                   "in a litre: " + about(active * milligrams, "mg") + " / " + in(litres, "l") +
                       " = " + about(out.answer, "mg/l")};
    out.given = {{"piece", piece}, {"share", share}, {"litres", litres}};
    return out;
  }

  Sum dough() {
    const double powders = stepped(draws_, 800, 3000, 50);
    const double ratio = stepped(draws_, 0.05, 0.2, 0.01);
    const double butter = stepped(draws_, 10, 40, 5);
    Sum out{"wet to dry", {}, powders * ratio - butter, 0, "g", {}, {}};
    out.question = in(powders, "g") + " of powders are to be bound at " + machine_number(ratio) +
                   " parts of wet to one of dry. " + in(butter, "g") +
                   " of melted butter count as wet. How many grams of liquids come on top of it?";
    out.working = {"all that is wet: " + machine_number(ratio) + " x " + in(powders, "g") + " = " +
                       about(powders * ratio, "g"),
                   "without the butter: " + about(powders * ratio, "g") + " - " + in(butter, "g") +
                       " = " + about(out.answer, "g")};
    out.given = {{"powders", powders}, {"ratio", ratio}, {"butter", butter}};
    return out;
  }

  const front::Parts& parts_;
  const Checker& checker_;
  Draws& draws_;
};

}  // namespace

Exercise sum_exercise(const front::Parts& parts, const Checker& checker, Draws& draws) {
  Exercise out;
  out.kind = ExerciseKind::sum;
  out.subject = "Sums";
  out.sum = Sums(parts, checker, draws).made();
  return out;
}

}  // namespace sudsmark::drill
