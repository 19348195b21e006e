#include "science/mixture_classification.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <iterator>
#include <utility>

#include "science/hazard_statement.h"
#include "science/slack.h"
#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

// CLP 3.2.3.3.1 and 3.3.3.3.1 (read): smaller shares do not count for skin and eyes.
constexpr double relevant_share = 0.01;

// CLP 3.2.3.1.2 and 3.3.3.1.2 (read).
constexpr double extreme_acid = 2.0;
constexpr double extreme_base = 11.5;

/// What a component with `statement` needs to have, alone, to bring the mix to a rule's statement.
struct Contribution {
  std::string_view statement;
  double limit;  // fraction of the mix
};

/// A rule whose contributions are added as share over limit.
struct SumRule {
  std::string_view statement;
  std::array<Contribution, 3> contributions;  // unused ones have no statement
  bool only_relevant;
  Provenance source;
};

// A component that counts ten times has a tenth of the limit: 10 x H314 + H315 >= 10 %.
const std::array<SumRule, 6> sum_rules{{
    {"H314", {{{"H314", 0.05}}}, true, sources::clp_skin},
    {"H315", {{{"H314", 0.01}, {"H315", 0.10}}}, true, sources::clp_skin},
    {"H318", {{{"H314", 0.03}, {"H318", 0.03}}}, true, sources::clp_eye},
    {"H319", {{{"H314", 0.01}, {"H318", 0.01}, {"H319", 0.10}}}, true, sources::clp_eye},
    {"H335", {{{"H335", 0.20}}}, false, sources::clp_airways},
    {"H336", {{{"H336", 0.20}}}, false, sources::clp_airways},
}};

// Limits for components whose effects do not add up, CLP Table 3.3.4 (from memory).
constexpr double not_additive_eye_damage = 0.01;
constexpr double not_additive_eye_irritation = 0.03;

// CLP Table 3.4.5 (from memory).
constexpr double sensitiser_one_a = 0.001;
constexpr double sensitiser_one_b = 0.01;

constexpr std::array<std::string_view, 7> decided_codes{"H314", "H315", "H317", "H318",
                                                        "H319", "H335", "H336"};

bool reaches(double of_limit) {
  return of_limit >= 1 - slack;
}

bool has(const MixtureComponent& component, std::string_view code) {
  return std::any_of(component.statements.begin(), component.statements.end(),
                     [code](std::string_view s) { return plain_code(s) == code; });
}

std::optional<double> specific_limit(const MixtureComponent& component, std::string_view code) {
  for (const SpecificLimit& limit : component.limits) {
    if (plain_code(limit.statement) == code) {
      assert(limit.share > 0);
      return limit.share;
    }
  }
  return std::nullopt;
}

/// One component for each name, its shares added up and at most the whole.
std::vector<MixtureComponent> merged(std::span<const MixtureComponent> components) {
  std::vector<MixtureComponent> result;
  for (const MixtureComponent& component : components) {
    const auto same = std::find_if(
        result.begin(), result.end(),
        [&component](const MixtureComponent& other) { return other.name == component.name; });
    if (same == result.end()) {
      result.push_back(component);
      continue;
    }
    same->share.low += component.share.low;
    same->share.high += component.share.high;
    for (const std::string_view statement : component.statements) {
      if (!has(*same, plain_code(statement))) same->statements.push_back(statement);
    }
    same->limits.insert(same->limits.end(), component.limits.begin(), component.limits.end());
    same->not_additive = same->not_additive || component.not_additive;
    if (component.sensitiser == SensitiserCategory::one_a) same->sensitiser = component.sensitiser;
  }
  for (MixtureComponent& component : result) {
    component.share.low = std::clamp(component.share.low, 0.0, 1.0);
    component.share.high = std::clamp(component.share.high, 0.0, 1.0);
  }
  return result;
}

class Classifier {
 public:
  explicit Classifier(std::vector<MixtureComponent> components)
      : components_(std::move(components)) {}

  [[nodiscard]] MixtureClassification classify(const std::optional<Interval>& ph) {
    for (const SumRule& rule : sum_rules) apply(rule);
    for (const MixtureComponent& component : components_) {
      apply_exception(component);
      apply_sensitiser(component);
      collect_undecided(component);
    }
    if (ph) apply_ph(*ph);
    drop_if_graver("H315", "H314");
    drop_if_graver("H319", "H318");
    std::sort(result_.statements.begin(), result_.statements.end(),
              [](const auto& a, const auto& b) { return a.code < b.code; });
    return std::move(result_);
  }

 private:
  /// The least share of a component that alone fulfils a rule, or none if it adds nothing.
  static std::optional<double> limit_in(const SumRule& rule, const MixtureComponent& component) {
    if (const auto own = specific_limit(component, rule.statement)) return own;
    std::optional<double> least;
    for (const Contribution& contribution : rule.contributions) {
      if (contribution.statement.empty() || !has(component, contribution.statement)) continue;
      least = std::min(least.value_or(contribution.limit), contribution.limit);
    }
    return least;
  }

  void apply(const SumRule& rule) {
    Reason reason;
    reason.source = rule.source;
    for (const MixtureComponent& component : components_) {
      const auto limit = limit_in(rule, component);
      if (!limit) continue;
      // A specific limit below 1 % makes smaller shares count as well.
      const double from = rule.only_relevant ? std::min(relevant_share, *limit) : 0.0;
      const auto counted = [from](double share) {
        return share >= from * (1 - slack) ? share : 0.0;
      };
      reason.of_limit.low += counted(component.share.low) / *limit;
      reason.of_limit.high += counted(component.share.high) / *limit;
      if (counted(component.share.high) > 0) reason.components.emplace_back(component.name);
    }
    add(rule.statement, std::move(reason));
  }

  void apply_exception(const MixtureComponent& component) {
    if (!component.not_additive) return;
    if (has(component, "H318") || has(component, "H314")) {
      add_single("H318", component, not_additive_eye_damage, Ground::not_additive,
                 sources::clp_eye_non_additive);
    }
    if (has(component, "H319")) {
      add_single("H319", component, not_additive_eye_irritation, Ground::not_additive,
                 sources::clp_eye_non_additive);
    }
  }

  void apply_sensitiser(const MixtureComponent& component) {
    constexpr std::string_view code = "H317";
    if (!has(component, code)) return;
    const auto limit =
        component.sensitiser == SensitiserCategory::one_a ? sensitiser_one_a : sensitiser_one_b;
    if (component.sensitiser != SensitiserCategory::unknown || specific_limit(component, code)) {
      add_single(code, component, limit, Ground::single, sources::clp_skin_sensitiser);
      return;
    }
    // Nobody says whether it is 1A or 1B: above the lower limit it may count, above the higher it
    // does.
    Reason reason;
    reason.ground = Ground::single;
    reason.of_limit = {component.share.low / sensitiser_one_b,
                       component.share.high / sensitiser_one_a};
    reason.components.emplace_back(component.name);
    reason.source = sources::clp_skin_sensitiser;
    add(code, std::move(reason));
  }

  void apply_ph(const Interval& ph) {
    const auto add_extreme = [this](bool definite) {
      for (const std::string_view code : {"H314", "H318"}) {
        Reason reason;
        reason.ground = Ground::extreme_ph;
        reason.of_limit = {definite ? 1.0 : 0.0, 1.0};
        reason.source = sources::clp_extreme_ph;
        add(code, std::move(reason));
      }
    };
    const bool acid = ph.low <= extreme_acid;
    const bool base = ph.high >= extreme_base;
    if (acid || base) add_extreme(ph.high <= extreme_acid || ph.low >= extreme_base);
  }

  /// A component that reaches a limit of its own; the supplier's limit comes first.
  void add_single(std::string_view code, const MixtureComponent& component, double generic,
                  Ground ground, const Provenance& source) {
    const auto own = specific_limit(component, code);
    if (own && ground == Ground::not_additive) return;  // its sum rule has judged it already
    const double limit = own.value_or(generic);
    Reason reason;
    reason.ground = ground;
    reason.of_limit = {component.share.low / limit, component.share.high / limit};
    reason.components.emplace_back(component.name);
    reason.source = source;
    add(code, std::move(reason));
  }

  void add(std::string_view code, Reason reason) {
    if (!reaches(reason.of_limit.high)) return;
    reason.definite = reaches(reason.of_limit.low);
    auto same =
        std::find_if(result_.statements.begin(), result_.statements.end(),
                     [code](const MixtureStatement& statement) { return statement.code == code; });
    if (same == result_.statements.end()) {
      result_.statements.push_back({code, false, {}});
      same = std::prev(result_.statements.end());
    }
    same->definite = same->definite || reason.definite;
    same->reasons.push_back(std::move(reason));
  }

  void collect_undecided(const MixtureComponent& component) {
    if (component.share.high <= 0) return;
    for (const std::string_view statement : component.statements) {
      const std::string_view code = plain_code(statement);
      if (code.empty() ||
          std::find(decided_codes.begin(), decided_codes.end(), code) != decided_codes.end()) {
        continue;
      }
      result_.undecided.push_back({std::string(statement), std::string(component.name)});
    }
  }

  void drop_if_graver(std::string_view code, std::string_view graver) {
    const MixtureStatement* found = result_.find(graver);
    if (found == nullptr || !found->definite) return;
    std::erase_if(result_.statements,
                  [code](const MixtureStatement& statement) { return statement.code == code; });
  }

  std::vector<MixtureComponent> components_;
  MixtureClassification result_;
};

}  // namespace

const MixtureStatement* MixtureClassification::find(std::string_view code) const {
  const auto found =
      std::find_if(statements.begin(), statements.end(),
                   [code](const MixtureStatement& statement) { return statement.code == code; });
  return found == statements.end() ? nullptr : &*found;
}

MixtureClassification classify_mixture(std::span<const MixtureComponent> components,
                                       std::optional<Interval> ph) {
  return Classifier(merged(components)).classify(ph);
}

}  // namespace sudsmark::science
