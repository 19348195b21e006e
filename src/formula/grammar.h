// The grammars: each reads what stands behind the words of a statement, or of a heading or a line,
// into a field of the card.
//
// All answer false after an error, which then is in the Reading, and leave a field empty that they
// could not read. They are plain functions, one file for each group of sections, so that Spirit's
// cost in compile time is paid in pieces and a grammar can be run from many threads. Those of the
// register's forms are chosen by the types of form and field: a row that none can read does not
// compile.
#pragma once

#include "formula/card.h"
#include "formula/reading.h"
#include "formula/statements.h"

namespace sudsmark::formula {

/// What a statement is read from: the place of its whole line, and what stands behind its words.
struct StatementLine {
  Span place;
  Rest rest;
};

// grammar_forms.cpp: forms that several statements have
bool read_value(const NameForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& word);
bool read_value(const NamesForm& form, StatementLine line, Reading& reading,
                std::vector<Word>& words);
bool read_value(const ChoiceForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& word);
bool read_value(const ChoicesForm& form, StatementLine line, Reading& reading,
                std::optional<WordList>& words);
bool read_value(const JoinedForm& form, StatementLine line, Reading& reading,
                std::optional<WordList>& words);
bool read_value(const FigureForm& form, StatementLine line, Reading& reading,
                std::optional<Figure>& figure);
bool read_value(const RateForm& form, StatementLine line, Reading& reading,
                std::optional<Figure>& figure);
bool read_value(const TextForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& text);
bool read_value(const TextsForm& form, StatementLine line, Reading& reading,
                std::vector<Word>& texts);
bool read_value(const DayForm& form, StatementLine line, Reading& reading,
                std::optional<Date>& day);
bool read_value(const FlagForm& form, StatementLine line, Reading& reading,
                std::optional<Span>& place);

// grammar_formula.cpp
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::optional<BathUse>& bath);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::optional<Water>& water);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::vector<Keep>& keeps);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::vector<Allow>& allows);

bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::optional<Drying>& dried);

// grammar_parts.cpp
bool read_title(std::string_view words, Rest rest, Reading& reading, Word& name);
bool read_premix(Rest rest, Reading& reading, Premix& premix);
bool read_portion(Rest rest, Reading& reading, Portion& portion);
bool read_line(Rest rest, Reading& reading, Line& line);
bool read_include(Rest rest, Reading& reading, Include& include);

// grammar_stock.cpp: fragrances and materials
bool read_constituent(Rest rest, Reading& reading, Fragrance& fragrance);
bool read_material(Rest rest, Reading& reading, UserMaterial& material);
bool read_value(const HalfOpenForm& form, StatementLine line, Reading& reading,
                std::vector<Constituent>& constituents);
bool read_value(const UndeclaredForm& form, StatementLine line, Reading& reading,
                bool& undeclared_none);
bool read_value(const CasForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& cas);
bool read_value(const HazardsForm& form, StatementLine line, Reading& reading,
                std::optional<std::vector<Word>>& hazards);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::vector<Trace>& traces);

// grammar_workshop.cpp: workshops and tasks
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::vector<Scale>& scales);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::optional<Handled>& handled);
bool read_value(const OwnForm& form, StatementLine line, Reading& reading,
                std::vector<Sampled>& samples);

// grammar_tweak.cpp
bool read_tweak(Rest rest, Reading& reading, Tweak& tweak);
bool read_edit(StatementLine line, Reading& reading, SetEdit& edit);
bool read_edit(StatementLine line, Reading& reading, SwapEdit& edit);
bool read_edit(StatementLine line, Reading& reading, AddEdit& edit);
bool read_edit(StatementLine line, Reading& reading, RemoveEdit& edit);
bool read_edit(StatementLine line, Reading& reading, ScaleEdit& edit);
bool read_edit(StatementLine line, Reading& reading, FillEdit& edit);

}  // namespace sudsmark::formula
