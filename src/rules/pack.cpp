#include "rules/pack.h"

#include <algorithm>

#include "catalogue/unpacking.h"
#include "measures/registry.h"
#include "rules/words.h"

template class sudsmark::catalogue::Later<sudsmark::rules::RuleWords>;
template class sudsmark::catalogue::Later<sudsmark::rules::Training>;

namespace sudsmark::rules {
namespace {

template <typename List>
bool below(std::uint64_t index, const List& list) {
  return index < list.size();
}

bool consistent(const Instruction& instruction, const Program& program, const Ruleset& ruleset,
                const catalogue::Table* table) {
  const Pool& pool = ruleset.pool;
  const std::uint32_t c = instruction.c;
  if (instruction.b != nothing && instruction.code != Code::choose &&
      instruction.b >= program.test_count) {
    return false;
  }
  switch (instruction.code) {
    case Code::figure:
      return below(c, pool.figures);
    case Code::measure:
      return below(c, measures::all());
    case Code::named:
      return below(c, ruleset.measures);
    case Code::sum:
    case Code::holds:
      return below(c, pool.sums);
    case Code::divide:
    case Code::text:
    case Code::is_hazardous:
      return below(c, pool.texts);
    case Code::is_material:
      return below(c, pool.selections);
    case Code::is_product:
      return below(c, pool.lists);
    case Code::has_trait:
      return below(c, pool.traits);
    case Code::cell:
      return table != nullptr && below(c, table->columns);
    case Code::subject_text:
      return instruction.a <= static_cast<std::uint8_t>(SubjectText::unnamed) &&
             (instruction.a != static_cast<std::uint8_t>(SubjectText::cell) ||
              (table != nullptr && below(c, table->columns)));
    case Code::field:
      return below(instruction.a, fields());
    case Code::is_word:
    case Code::same_words:
    case Code::word_text:
      return below(instruction.a, stated_words());
    case Code::is_marked:
      return below(instruction.a, marks());
    case Code::skip_if_no:
    case Code::skip_if_yes:
      return c <= program.end;
    case Code::choose:
      return std::uint64_t{instruction.b} + c <= program.end - program.begin;
    case Code::flag:
      return below(instruction.a, flags());
    case Code::compare:
      return instruction.a < catalogue::enum_size<Relation>;
    case Code::negate:
    case Code::add:
    case Code::subtract:
    case Code::multiply:
    case Code::minimum:
    case Code::maximum:
    case Code::absolute:
    case Code::lowest:
    case Code::highest:
    case Code::between:
    case Code::is_listed:  // held against the catalogue, with the pool
    case Code::same_text:
    case Code::deny:
    case Code::both:
    case Code::either:
    case Code::of_base:
      break;
  }
  return true;
}

/// Whether an instruction pushes what a formula answers, so that the base can be asked for it.
bool can_be_of_base(Code code) {
  switch (code) {
    case Code::measure:
    case Code::named:
    case Code::sum:
    case Code::is_word:
    case Code::is_product:
    case Code::has_trait:
    case Code::holds:
    case Code::flag:
    case Code::subject_text:
    case Code::word_text:
      return true;
    case Code::figure:
    case Code::field:
    case Code::cell:
    case Code::negate:
    case Code::add:
    case Code::subtract:
    case Code::multiply:
    case Code::divide:
    case Code::minimum:
    case Code::maximum:
    case Code::absolute:
    case Code::lowest:
    case Code::highest:
    case Code::compare:
    case Code::between:
    case Code::same_words:
    case Code::is_material:
    case Code::is_listed:
    case Code::is_hazardous:
    case Code::is_marked:
    case Code::same_text:
    case Code::text:
    case Code::deny:
    case Code::both:
    case Code::either:
    case Code::skip_if_no:
    case Code::skip_if_yes:
    case Code::of_base:
    case Code::choose:
      break;
  }
  return false;
}

bool consistent(const Origin& origin, const Ruleset& ruleset) {
  switch (origin.kind) {
    case Origin::Kind::measure:
      return below(origin.index, measures::all());
    case Origin::Kind::sum:
      return below(origin.index, ruleset.pool.sums);
    case Origin::Kind::words:
      return below(origin.index, stated_words());
    case Origin::Kind::flag:
      return below(origin.index, flags());
    case Origin::Kind::product:
      break;
  }
  return true;
}

bool consistent(const std::vector<Origin>& origins, const Ruleset& ruleset) {
  return std::all_of(origins.begin(), origins.end(),
                     [&](const Origin& origin) { return consistent(origin, ruleset); });
}

bool consistent(const Program& program, const Ruleset& ruleset, const catalogue::Table* table) {
  const Pool& pool = ruleset.pool;
  if (program.begin > program.end || program.end > pool.code.size()) return false;
  if (std::uint64_t{program.first_test} + program.test_count > pool.tests.size()) return false;
  for (std::uint32_t at = program.begin; at < program.end; ++at) {
    if (!consistent(pool.code[at], program, ruleset, table)) return false;
    const bool of_base = pool.code[at].code == Code::of_base;
    if (of_base && (at + 1 == program.end || !can_be_of_base(pool.code[at + 1].code))) return false;
  }
  return true;
}

bool consistent(const Rule& rule, const Ruleset& ruleset, const catalogue::Catalogue& catalogue) {
  const bool row = rule.each == Each::row;
  if (!below(rule.file, ruleset.files) || (row && !below(rule.table, catalogue.tables))) {
    return false;
  }
  const catalogue::Table* table = row ? &catalogue.tables[rule.table] : nullptr;
  const auto source = [&](catalogue::CitationIndex at) { return below(at, catalogue.citations); };
  const auto part = [&](const MessagePart& one) {
    return !one.value || consistent(*one.value, ruleset, table);
  };
  const auto mend = [&](const Mend& one) {
    return (!one.selects() || below(one.selection, ruleset.pool.selections)) &&
           (!one.brings_in() || below(one.material, catalogue.materials));
  };
  return consistent(rule.when, ruleset, table) && consistent(rule.expect, ruleset, table) &&
         std::all_of(rule.words->message.begin(), rule.words->message.end(), part) &&
         std::all_of(rule.words->paper.begin(), rule.words->paper.end(), part) &&
         std::all_of(rule.sources.begin(), rule.sources.end(), source) &&
         consistent(rule.places, ruleset) &&
         std::all_of(rule.words->mends.begin(), rule.words->mends.end(), mend);
}

bool consistent(const Pool& pool, const Ruleset& ruleset, const catalogue::Catalogue& catalogue) {
  const auto selection = [&](const Selection& one) {
    return one.begin < one.end && one.end <= pool.picks.size();
  };
  const auto named = [&](const Named& one) {
    return std::all_of(one.materials.begin(), one.materials.end(),
                       [&](auto at) { return below(at, catalogue.materials); }) &&
           std::all_of(one.substances.begin(), one.substances.end(),
                       [&](auto at) { return below(at, catalogue.substances); });
  };
  const auto pick = [&](const Pick& one) {
    return one.code != PickCode::named || below(one.bits, pool.named);
  };
  const auto code = [&](const Instruction& one) {
    return one.code != Code::is_listed || below(one.c, catalogue.tables);
  };
  return std::all_of(pool.code.begin(), pool.code.end(), code) &&
         std::all_of(pool.picks.begin(), pool.picks.end(), pick) &&
         std::all_of(pool.selections.begin(), pool.selections.end(), selection) &&
         std::all_of(pool.named.begin(), pool.named.end(), named) &&
         std::all_of(pool.sums.begin(), pool.sums.end(),
                     [&](const Sum& sum) { return below(sum.selection, pool.selections); }) &&
         std::all_of(pool.tests.begin(), pool.tests.end(),
                     [&](const Test& test) { return consistent(test.origins, ruleset); });
}

}  // namespace

bool consistent(const Ruleset& ruleset, const catalogue::Catalogue& catalogue) {
  const bool whole =
      ruleset.training.sound() && std::all_of(ruleset.rules.begin(), ruleset.rules.end(),
                                              [](const Rule& rule) { return rule.words.sound(); });
  if (!whole) return false;
  const auto measure = [&](const NamedMeasure& one) {
    return consistent(one.program, ruleset, nullptr) && consistent(one.origins, ruleset) &&
           quantity::find_unit(one.unit).has_value();
  };
  return consistent(ruleset.pool, ruleset, catalogue) &&
         std::all_of(ruleset.measures.begin(), ruleset.measures.end(), measure) &&
         std::all_of(ruleset.rules.begin(), ruleset.rules.end(),
                     [&](const Rule& rule) { return consistent(rule, ruleset, catalogue); });
}

}  // namespace sudsmark::rules
