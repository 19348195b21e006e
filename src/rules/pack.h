// The packed ruleset: which fields go into the bytes. A packed ruleset refers to its catalogue by
// index, so both are packed together. Each struct is taken apart by a structured binding, so that a
// field which is added to it and forgotten here does not compile:
//
//     const std::string bytes = catalogue::to_bytes(book.catalogue, book.ruleset);
//     Rulebook book;
//     if (catalogue::from_bytes(bytes, book.catalogue, book.ruleset) &&
//         consistent(book.ruleset, book.catalogue)) …
#pragma once

#include "catalogue/archive.h"
#include "catalogue/pack.h"
#include "rules/ruleset.h"

namespace sudsmark::rules {

/// Whether every index in a ruleset points at something, in itself or in the catalogue.
[[nodiscard]] bool consistent(const Ruleset& ruleset, const catalogue::Catalogue& catalogue);

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Instruction>& instruction) {
  auto& [code, a, b, c] = instruction;
  archive(code, a, b, c);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Pick>& pick) {
  auto& [code, bits] = pick;
  archive(code, bits);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Selection>& selection) {
  auto& [begin, end, aroma, subject] = selection;
  archive(begin, end, aroma, subject);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Named>& named) {
  auto& [word, materials, substances] = named;
  archive(word, materials, substances);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Sum>& sum) {
  auto& [kind, selection] = sum;
  archive(kind, selection);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Origin>& origin) {
  auto& [kind, index] = origin;
  archive(kind, index);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Test>& test) {
  auto& [denied, compares, swapped, relation, between, unit, field_limit, field, origins] = test;
  archive(denied, compares, swapped, relation, between, unit, field_limit, field, origins);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Program>& program) {
  auto& [begin, end, kind, first_test, test_count, pair, unit] = program;
  archive(begin, end, kind, first_test, test_count, pair, unit);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Pool>& pool) {
  auto& [code, figures, texts, traits, lists, picks, selections, named, sums, tests] = pool;
  archive(code, figures, texts, traits, lists, picks, selections, named, sums, tests);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<MessagePart>& part) {
  auto& [text, value_text, value] = part;
  archive(text, value_text, value);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Mend>& mend) {
  auto& [kind, text, selection, material, phase, change] = mend;
  archive(kind, text, selection, material, phase, change);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<CaseMessage>& one) {
  auto& [name, text] = one;
  archive(name, text);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Telling>& telling) {
  auto& [concern, in_short, known_as, rank] = telling;
  archive(concern, in_short, known_as, rank);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Dates>& dates) {
  auto& [from, shelf, until] = dates;
  archive(from, shelf, until);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<PairExample>& example) {
  auto& [base, tweak] = example;
  archive(base, tweak);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<RuleWords>& words) {
  auto& [title, when_text, expect_text, cases, message_text, message, paper, why, remedy, telling,
         mends, place_text, passes, fails, pair_passes, pair_fails] = words;
  archive(title, when_text, expect_text, cases, message_text, message, paper, why, remedy, telling,
          mends, place_text, passes, fails, pair_passes, pair_fails);
}

/// The place in a file is left out of what is packed: there is no file any more.
template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Rule>& rule) {
  auto& [id, formerly, file, each, table, decided_by, when, expect, otherwise, undecided, places,
         sources, dates, pair, built_in, words, span] = rule;
  archive(id, formerly, file, each, table, decided_by, when, expect, otherwise, undecided, places,
          sources, dates, pair, built_in, words);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<RuleFile>& file) {
  auto& [name, subject, edition, authority, markets, concern] = file;
  archive(name, subject, edition, authority, markets, concern);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<NamedMeasure>& measure) {
  auto& [name, meaning, unit, text, dimension, program, origins, built_in, span] = measure;
  archive(name, meaning, unit, text, dimension, program, origins, built_in);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<TableUse>& use) {
  auto& [table, columns] = use;
  archive(table, columns);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<ModelCard>& card) {
  auto& [name, formula] = card;
  archive(name, formula);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Breakage>& breakage) {
  auto& [rule, cards, kind, line, becomes, under] = breakage;
  archive(rule, cards, kind, line, becomes, under);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<HarmlessLine>& one) {
  auto& [line, under] = one;
  archive(line, under);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Chapter>& chapter) {
  auto& [name, title, what, why, card, sum, working, subjects, practice, assessor, cautions] =
      chapter;
  archive(name, title, what, why, card, sum, working, subjects, practice, assessor, cautions);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Caution>& caution) {
  auto& [name, words, first_aid, source] = caution;
  archive(name, words, first_aid, source);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Training>& training) {
  auto& [cards, breakages, harmless, chapters, cautions] = training;
  archive(cards, breakages, harmless, chapters, cautions);
}

template <class Archive>
void visit(Archive& archive, typename Archive::template Of<Ruleset>& ruleset) {
  auto& [files, measures, rules, tables, pool, training] = ruleset;
  archive(files, measures, rules, tables, pool, training);
}

}  // namespace sudsmark::rules
