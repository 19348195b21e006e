// The packed ruleset: which fields go into the bytes. A packed ruleset refers to its catalogue by
// index, so both are packed together:
//
//     const std::string bytes = catalogue::to_bytes(book.catalogue, book.ruleset);
//     Rulebook book;
//     if (catalogue::from_bytes(bytes, book.catalogue, book.ruleset) &&
//         consistent(book.ruleset, book.catalogue)) …
#pragma once

#include "catalogue/archive.h"
#include "catalogue/pack.h"
#include "rules/ruleset.h"

namespace sudsmark::catalogue {

template <>
inline constexpr std::size_t enum_size<rules::Code> = rules::code_count;
template <>
inline constexpr std::size_t enum_size<rules::PickCode> = 8;
template <>
inline constexpr std::size_t enum_size<rules::SumKind> = 6;
template <>
inline constexpr std::size_t enum_size<rules::Origin::Kind> = 5;
template <>
inline constexpr std::size_t enum_size<rules::Relation> = 6;
template <>
inline constexpr std::size_t enum_size<rules::Field> = rules::field_count;
template <>
inline constexpr std::size_t enum_size<rules::ValueKind> = 3;
template <>
inline constexpr std::size_t enum_size<rules::Each> = 6;
template <>
inline constexpr std::size_t enum_size<rules::Level> = 4;
template <>
inline constexpr std::size_t enum_size<rules::Authority> = 3;

}  // namespace sudsmark::catalogue

namespace sudsmark::rules {

/// Whether every index in a ruleset points at something, in itself or in the catalogue.
[[nodiscard]] bool consistent(const Ruleset& ruleset, const catalogue::Catalogue& catalogue);

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Instruction>& instruction) {
  archive(instruction.code, instruction.a, instruction.b, instruction.c);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Pick>& pick) {
  archive(pick.code, pick.bits);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Selection>& selection) {
  archive(selection.begin, selection.end, selection.aroma, selection.subject);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Named>& named) {
  archive(named.word, named.materials, named.substances);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Sum>& sum) {
  archive(sum.kind, sum.selection);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Origin>& origin) {
  archive(origin.kind, origin.index);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Test>& test) {
  archive(test.denied, test.compares, test.swapped, test.relation, test.between, test.unit,
          test.field_limit, test.field, test.origins);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Program>& program) {
  archive(program.begin, program.end, program.kind, program.first_test, program.test_count,
          program.pair, program.unit);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Pool>& pool) {
  archive(pool.code, pool.figures, pool.texts, pool.traits, pool.lists, pool.picks, pool.selections,
          pool.named, pool.sums, pool.tests);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<MessagePart>& part) {
  archive(part.text, part.value_text, part.value);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Dates>& dates) {
  archive(dates.from, dates.shelf, dates.until);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<PairExample>& example) {
  archive(example.base, example.tweak);
}

/// Its place in a file is left out: there is no file any more.
template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Rule>& rule) {
  archive(rule.paper);
  archive(rule.id, rule.title, rule.file, rule.each, rule.table, rule.when_text, rule.expect_text,
          rule.when, rule.expect, rule.otherwise, rule.undecided, rule.message_text, rule.message,
          rule.why, rule.remedy, rule.place_text, rule.places, rule.sources, rule.dates,
          rule.passes, rule.fails, rule.pair, rule.pair_passes, rule.pair_fails, rule.built_in);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<RuleFile>& file) {
  archive(file.name, file.subject, file.edition, file.authority, file.markets);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<NamedMeasure>& measure) {
  archive(measure.name, measure.meaning, measure.unit, measure.text, measure.dimension,
          measure.program, measure.origins, measure.built_in);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<TableUse>& use) {
  archive(use.table, use.columns);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Ruleset>& ruleset) {
  archive(ruleset.files, ruleset.measures, ruleset.rules, ruleset.tables, ruleset.pool);
}

}  // namespace sudsmark::rules
