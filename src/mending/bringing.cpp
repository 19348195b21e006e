#include "mending/bringing.h"

#include <algorithm>
#include <map>
#include <utility>

#include "mending/rounding.h"

namespace sudsmark::mending {

std::vector<const Trialled*> broken_of(const Aim& aim) {
  std::vector<const Trialled*> out;
  for (const Trialled& verdict : aim.before.verdicts) {
    if (is_broken(verdict, aim.threshold)) out.push_back(&verdict);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const auto* a, const auto* b) { return a->weight > b->weight; });
  return out;
}

std::set<std::size_t> blamed(const Trial& before, Level threshold, const Remedies& remedies,
                             const Dials& dials) {
  std::set<std::size_t> out;
  for (const Trialled& verdict : before.verdicts) {
    if (!is_broken(verdict, threshold)) continue;
    for (const auto& [dial, more] : remedies.all_moves(verdict)) {
      if (!more && !dials.all()[dial].fills) out.insert(dial);
    }
  }
  return out;
}

std::optional<Ready> with(const Variant& variant, const Choices& choices, const Aim& aim,
                          const Original& original, const Answering& answering) {
  constexpr std::size_t for_one_variant = 100;
  Probes probes(aim.trials, *variant.dials, variant.blend->weighings.size());
  probes.allow(for_one_variant);
  const Remedies remedies(original.book, *variant.dials);
  variant.dials->spare(blamed(aim.before, aim.threshold, remedies, *variant.dials));
  const auto guards = guards_of(*variant.dials, *variant.blend);
  std::map<std::size_t, double> brought;
  for (const Brought& one : variant.brought) brought[one.dial] = one.least;
  const Aim varied{aim.trials,    *variant.dials, probes, aim.before,
                   aim.threshold, remedies,       guards, std::move(brought)};
  const auto choose = [&](const std::set<VerdictKey>& ignored) {
    probes.allow(for_one_variant);
    return choose_with(varied, variant.verdict, variant.mend, ignored);
  };
  const auto broken = broken_of(aim);
  std::set<VerdictKey> ignored(choices.unmendable.begin(), choices.unmendable.end());
  ignored.insert(choices.blocked.begin(), choices.blocked.end());
  for (const Trialled* other : broken) {
    if (other->kind == Kind::open) ignored.insert(other->key);
  }
  ignored.erase(variant.verdict);
  auto choice = choose(ignored);
  if (!choice) {
    // beside others that it does not mend, it may still mend its own
    for (const Trialled* other : broken) {
      if (other->key != variant.verdict) ignored.insert(other->key);
    }
    choice = choose(ignored);
  }
  // and with it others, even such as what was there before had no way to mend
  for (const Trialled* other : broken) {
    if (!choice || other->kind == Kind::open || !ignored.contains(other->key)) continue;
    ignored.erase(other->key);
    if (auto more = choose(ignored)) {
      choice = std::move(more);
    } else {
      ignored.insert(other->key);
    }
  }
  if (!choice) return std::nullopt;
  const Rounding rounding(*variant.dials, *variant.blend, variant.brought);
  return answering.made(*choice, varied, rounding, variant.brought);
}

}  // namespace sudsmark::mending
