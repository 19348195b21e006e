// Compiled programs against the plain tree walker, and both against concrete points: whatever the
// true figures within their ranges are, the concrete result lies within the range that the program
// answers, and no truth is claimed that some point denies.
#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <random>

#include "measures/selection.h"
#include "rules/compiler.h"
#include "rules/grammar.h"
#include "rules/machine.h"
#include "rules/tree_walker.h"
#include "rules/workbench.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

/// Expressions of two kinds, shares and truths, over leaves that are known, half known and unknown.
class Generator {
 public:
  /// With `sides`, leaves ask the base or the tweak now and then.
  explicit Generator(unsigned seed, bool sides = false) : random_(seed), sides_(sides) {}

  std::string share(int depth) {
    switch (depth <= 0 ? pick(3) : pick(10)) {
      case 0:
        return side() + one_of({"oils", "scent", "emulsifier", "water", "surfactant", "half"});
      case 1:
        return one_of({"0 %", "1 %", "2.5 %", "7 %", "30 %", "0.1 g per kg"});
      case 2:
        return side() +
               one_of({"share(oil)", "supplied(liquid)", "share(linalool)", "share(citral)",
                       "share(oil and not butter)", "supplied(foam powder or powder)"});
      case 3:
        return "(" + share(depth - 1) + " + " + share(depth - 1) + ")";
      case 4:
        return "(" + share(depth - 1) + " - " + share(depth - 1) + ")";
      case 5:
        return "(" + share(depth - 1) + " * " + ratio(depth - 1) + ")";
      case 6:
        return "min(" + share(depth - 1) + ", " + share(depth - 1) + ")";
      case 7:
        return "max(" + share(depth - 1) + ", " + share(depth - 1) + ")";
      case 8:
        return "abs(" + share(depth - 1) + ")";
      default:
        return "(if " + truth(depth - 1) + " then " + share(depth - 1) + " else " +
               share(depth - 1) + ")";
    }
  }

  std::string ratio(int depth) {
    if (depth <= 0 || pick(2) == 0) return one_of({"2", "0.5", "-1", "10", "1/3"});
    if (pick(2) == 0) return "(mass(oil) / (" + one_of({"2 kg", "batch.mass", "0 g"}) + "))";
    return "(" + share(depth - 1) + " / " + share(depth - 1) + ")";
  }

  std::string truth(int depth) {
    switch (depth <= 0 ? pick(3) : pick(8)) {
      case 0:
        return share(depth - 1) + one_of({" < ", " <= ", " > ", " >= ", " = ", " != "}) +
               share(depth - 1);
      case 1:
        return side() +
               one_of({"forming = pressed", "users = adults", "market = GB", "users != adults",
                       "market != EU", "product = bubble bar", "looks_like_food"});
      case 2:
        return side() + one_of({"holds(oil)", "holds(citral)", "holds(borax)"});
      case 3:
        return "not (" + truth(depth - 1) + ")";
      case 4:
      case 5:
        return "(" + truth(depth - 1) + " and " + truth(depth - 1) + ")";
      case 6:
        return "(" + truth(depth - 1) + " or " + truth(depth - 1) + ")";
      default:
        // two written figures out of order would be refused
        return share(depth - 1) + " between " + share(depth - 1) + " and max(" + share(depth - 1) +
               ", " + share(depth - 1) + ")";
    }
  }

  double within(const Range& range) {
    const double low = std::isfinite(range.low) ? range.low : -2.0;
    const double high = std::isfinite(range.high) ? range.high : std::max(low, 0.0) + 2.0;
    const double at = std::uniform_real_distribution<double>(0.0, 1.0)(random_);
    // the ends themselves are where mistakes are
    if (at < 0.2) return low;
    if (at > 0.8) return high;
    return std::clamp(low + (high - low) * at, low, high);
  }
  bool coin() { return pick(2) == 0; }

 private:
  unsigned pick(unsigned many) { return static_cast<unsigned>(random_() % many); }
  std::string one_of(const std::vector<std::string>& list) {
    return list[pick(static_cast<unsigned>(list.size()))];
  }
  std::string side() { return sides_ ? one_of({"", "base.", "tweak."}) : std::string(); }
  std::mt19937 random_;
  bool sides_;
};

/// Leaves of a blend asked of the measures themselves, without any program.
Walked leaf(const std::string& words, const blend::Blend& blend, blend::MissingTable& missing) {
  measures::View view;
  view.blend = &blend;
  view.part = &blend.whole;
  view.missing = &missing;
  const auto figure = [](const measures::Measured& measured) {
    Walked out;
    out.range = measured.value;
    out.missing = measured.value.exact() ? blend::MissingSet{} : measured.missing;
    return out;
  };
  const auto stated = [&](bool is_stated, bool is, std::string_view lacking) {
    Walked out;
    out.truth = !is_stated ? Certainty::depends : is ? Certainty::yes : Certainty::no;
    if (!is_stated) out.missing = missing.add(lacking, blend.place);
    return out;
  };
  if (words == "half") {
    const Walked all = leaf("powders", blend, missing);
    Walked out = all;
    out.range = all.range / Range(2.0);
    return out;
  }
  if (const auto measure = measures::find(words)) {
    return figure(measures::all()[*measure].compute(view));
  }
  if (words == "looks_like_food") return stated(true, blend.looks_like_food.has_value(), {});
  if (words == "product = bubble bar") return stated(true, blend.product->name == "bubble bar", {});
  if (words.starts_with("forming")) {
    return stated(blend.forming.has_value(), blend.forming && blend.forming->text == "pressed",
                  "the forming method (`forming`)");
  }
  if (words.starts_with("users")) {
    return stated(blend.states_age(), blend.used_by("adults"), "who uses it (`users`)");
  }
  if (words.starts_with("market")) {
    const std::string wanted = words.substr(words.size() - 2);
    bool there = false;
    for (const auto& market : blend.markets) there = there || market.text == wanted;
    return stated(!blend.markets.empty(), there, "where it is sold (`market`)");
  }
  using Candidate = measures::Candidate;
  struct Chosen {
    std::string words;
    const catalogue::Catalogue* catalogue;
  };
  const Chosen chosen{words.substr(words.find('(') + 1, words.size() - words.find('(') - 2),
                      blend.catalogue};
  const auto test = [](const void* context, const Candidate& candidate) {
    const auto& [what, of] = *static_cast<const Chosen*>(context);
    const auto roles =
        candidate.content != nullptr ? candidate.content->roles : candidate.material->roles;
    const bool oil = (roles & catalogue::bit(catalogue::Role::oil)) != 0;
    if (what == "oil") return oil;
    if (what == "oil and not butter") {
      return oil && (roles & catalogue::bit(catalogue::Role::butter)) == 0;
    }
    if (what == "liquid") return candidate.material->form == catalogue::Form::liquid;
    if (what == "foam powder or powder") {
      return candidate.material->form == catalogue::Form::fine_powder ||
             candidate.material->form == catalogue::Form::granules;
    }
    if (candidate.content == nullptr) return candidate.material->name == "Borax" && what == "borax";
    return candidate.content->substance_id == *of->find_substance(what);
  };
  const bool aroma = chosen.words == "citral" || chosen.words == "linalool";
  const measures::Selector selector{test, &chosen, aroma};
  if (words.starts_with("share")) return figure(measures::share(view, selector));
  if (words.starts_with("supplied")) return figure(measures::supplied(view, selector));
  if (words.starts_with("mass")) return figure(measures::mass(view, selector));
  const measures::Measured count = measures::count(view, selector);
  Walked out;
  out.truth = count.value.low >= 1    ? Certainty::yes
              : count.value.high <= 0 ? Certainty::no
                                      : Certainty::depends;
  if (out.truth == Certainty::depends) out.missing = count.missing;
  return out;
}

const std::vector<std::string> formulas{
    "formula \"plain\"\n product bubble bar\n forming pressed\n market GB\n users adults\n"
    " batch 2 kg\nphase \"all\"\n 20 % foam powder\n 3 % sweet oil\n 1 % meadow oil\n"
    " 2 % binder 80\n q.s. bicarb\n",
    "formula \"ranges\"\n product bath fizzy\n forming rolled\nphase \"all\"\n"
    " 15 - 25 % foam powder\n 0 - 2 % hard butter\n 5 - 9 % foam liquid\n q.s. plain starch\n",
    "formula \"unsaid\"\n product bubble bar\n looks like food\nphase \"all\"\n"
    " 2 % Secret\n 0 - 1 % borax\n 4 % sweet oil\n q.s. bicarb\nfragrance \"Secret\"\n"
    " 1 - 2 % linalool\n"};

/// Runs generated expressions both ways. With `sides` each formula is held against the next one.
void hold_against_the_walker(unsigned count, bool sides) {
  Workbench bench("measures:\n  half: powders / 2\n");
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  std::size_t pairs = 0;
  std::size_t truths = 0;
  std::size_t open = 0;
  std::size_t plain = 0;
  for (unsigned seed = 0; seed < count; ++seed) {
    Generator generator(seed, sides);
    const std::string text = seed % 3 == 0 ? generator.share(4) : generator.truth(4);
    rules::SyntaxError error;
    const auto tree = rules::parse_expression(text, error);
    REQUIRE_MESSAGE(tree.has_value(), text);
    text::Diagnostics diagnostics;
    const rules::Placing nowhere = [](std::uint32_t, std::uint32_t) { return text::Span{}; };
    rules::Compiler compiler(bench.book.ruleset, bench.book.catalogue, diagnostics);
    const rules::Source source{text, *tree, {}, nowhere};
    quantity::Dimension dimension;
    const auto program =
        seed % 3 == 0 ? compiler.figure(source, dimension) : compiler.truth(source, false);
    REQUIRE_MESSAGE(program.has_value(), text, printed(bench.sources, diagnostics));
    const blend::Blend blend = bench.mix(formulas[seed % formulas.size()]);
    const blend::Blend base = bench.mix(formulas[(seed + 1) % formulas.size()]);
    blend::MissingTable missing;
    blend::MissingTable base_missing;
    rules::Machine machine(bench.book.ruleset, blend, missing, {}, {}, sides ? &base : nullptr);
    pairs += program->pair ? 1 : 0;
    const rules::Value value = machine.run(*program, rules::Subject{});

    const auto lacks = [&](std::string divisor) {
      if (divisor.starts_with("(")) divisor = divisor.substr(1, divisor.size() - 2);
      return missing.add("an amount of " + divisor + " that is more than nothing");
    };
    TreeWalker walker(*tree, text,
                      [&](const std::string& words) { return leaf(words, blend, missing); });
    walker.lacks = lacks;
    // what the base lacks is lacking in the base
    const auto base_leaf = [&](const std::string& words) {
      Walked out = leaf(words, base, base_missing);
      blend::MissingSet carried;
      out.missing.each([&](std::size_t index) {
        carried |= missing.add(base_missing.items()[index].what + ", in the base");
      });
      out.missing = carried;
      return out;
    };
    walker.base_leaves = base_leaf;
    const Walked walked = walker.walk();
    const bool is_truth = seed % 3 != 0;
    if (is_truth) {
      CHECK_MESSAGE(value.truth == walked.truth, text);
      truths += value.truth == Certainty::depends ? 0 : 1;
      open += value.truth == Certainty::depends ? 1 : 0;
      const auto settled = machine.plain(*program, rules::Subject{});
      plain += settled ? 1 : 0;
      const Certainty as = settled == true ? Certainty::yes : Certainty::no;
      if (settled) CHECK_MESSAGE(walked.truth == as, text);
    } else {
      CHECK_MESSAGE(value.range == walked.range, text);
    }
    CHECK_MESSAGE(value.missing == walked.missing, text);

    for (int round = 0; round < 8; ++round) {
      std::map<std::string, Walked> points;
      const auto at_a_point = [&](const std::string& key, Walked point) {
        const auto known = points.find(key);
        if (known != points.end()) return known->second;
        point.range = Range(generator.within(point.range));
        if (point.truth == Certainty::depends) {
          point.truth = generator.coin() ? Certainty::yes : Certainty::no;
        }
        return points[key] = point;
      };
      TreeWalker concrete(*tree, text, [&](const std::string& words) {
        return at_a_point(words, leaf(words, blend, missing));
      });
      concrete.base_leaves = [&](const std::string& words) {
        return at_a_point("base." + words, base_leaf(words));
      };
      concrete.lacks = lacks;
      const Walked point = concrete.walk();
      if (concrete.divided_by_nothing) continue;
      if (is_truth) {
        CHECK_MESSAGE((value.truth == Certainty::depends || value.truth == point.truth), text);
      } else {
        const double slack = 1e-9 * (1 + std::abs(point.range.low));
        CHECK_MESSAGE(value.range.low <= point.range.low + slack, text);
        CHECK_MESSAGE(value.range.high >= point.range.low - slack, text);
      }
    }
  }
  // the expressions must be of use: neither always open nor never
  CHECK(truths > count / 6);
  CHECK(open > count / 15);
  CHECK(plain > count / 60);
  CHECK(pairs >= (sides ? count / 2 : 0));
  if (!sides) CHECK(pairs == 0);
}

}  // namespace

TEST_CASE("compiled programs agree with the tree walker and hold every point") {
  hold_against_the_walker(3000, false);
}

TEST_CASE("so do programs over a tweak and its base") {
  hold_against_the_walker(3000, true);
}
