#include "mending/outside.h"

#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "formula/print_figure.h"
#include "mending/slopes.h"
#include "wording/words.h"

namespace sudsmark::mending {
namespace {

using Change = rules::Mend::Change;

std::vector<Outside> masks(const formula::Card& card) {
  std::vector<Outside> out;
  for (const std::string_view mask : {"FFP2", "FFP3"}) {
    Outside one;
    one.words = "mask " + std::string(mask);
    one.card = card;
    for (formula::Workshop& workshop : one.card->workshops) {
      workshop.mask = formula::Word{std::string(mask), workshop.place, false};
    }
    out.push_back(std::move(one));
  }
  return out;
}

/// Scales with steps of a tenth, a hundredth … of a gram, finer than what is there.
std::vector<Outside> scales(const Facts& facts, const formula::Card& card) {
  std::vector<Outside> out;
  constexpr std::array steps{0.1, 0.01, 0.001};
  constexpr double tens = 10;
  for (const double step : steps) {
    if (facts.step && step > *facts.step / tens * (1 + 1e-9)) continue;
    Outside one;
    // in grams, as scales are sold
    one.words = "scale " + formula::printed_number(step) + " g";
    one.card = card;
    // what shows so little seldom bears more
    constexpr double bears = 5000;
    for (formula::Workshop& workshop : one.card->workshops) {
      formula::Scale scale;
      scale.step.value = step;
      scale.most = formula::Figure{step * bears * tens, {}};
      scale.place = workshop.place;
      workshop.scales.push_back(scale);
    }
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

std::vector<Outside> outside_of(const rules::Mend& mend, const Finding& finding, const Facts& facts,
                                const formula::Card& card) {
  if (mend.change == Change::paper) {
    auto paper = asking_for(finding, mend.text);
    return paper ? std::vector<Outside>{std::move(*paper)} : std::vector<Outside>{};
  }
  if (card.workshops.empty()) return {};
  if (mend.change == Change::mask) return masks(card);
  if (mend.change == Change::scale) return scales(facts, card);
  return {};
}

std::optional<Outside> asking_for(const Finding& finding, std::string words) {
  if (!finding.missing.empty()) {
    return Outside{"ask for " + wording::joined(finding.missing), {}};
  }
  constexpr std::string_view hole = "{it}";
  const auto at = words.find(hole);
  if (at != std::string::npos) words.replace(at, hole.size(), "'" + finding.subject + "'");
  if (words.empty()) return std::nullopt;
  return Outside{"ask for " + words, {}};
}

std::optional<std::vector<VerdictKey>> broken_with(const Outside& outside, const Trials& trials,
                                                   const Trial& before, Level threshold) {
  const auto trial = trials.of(*outside.card);
  if (!trial) return std::nullopt;
  std::vector<VerdictKey> out;
  for (const Trialled& one : trial->verdicts) {
    if (!is_broken(one, threshold)) continue;
    const Trialled* was = before.find(one.key);
    if (was == nullptr || was->weight < one.weight) return std::nullopt;
    out.push_back(one.key);
  }
  return out;
}

}  // namespace sudsmark::mending
