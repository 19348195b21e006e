// The grammars: each reads what stands behind the first word of a line into a field of the tree.
//
// All answer false after an error, which then is in the Reading. They are plain functions, one file
// for each group of sections, so that Spirit's cost in compile time is paid in pieces and a grammar
// can be run from many threads.
#pragma once

#include "formula/card.h"
#include "formula/reading.h"
#include "formula/words.h"

namespace sudsmark::formula {

// grammar_formula.cpp
bool read_statement(Statement statement, Span keyword_place, Rest rest, Reading& reading,
                    Statements& statements);

// grammar_parts.cpp
bool read_title(std::string_view words, Rest rest, Reading& reading, Word& name);
bool read_premix(Rest rest, Reading& reading, Premix& premix);
bool read_portion(Rest rest, Reading& reading, Portion& portion);
bool read_line(Rest rest, Reading& reading, Line& line);
bool read_include(Rest rest, Reading& reading, Include& include);

// grammar_stock.cpp: fragrances and materials
bool read_statement(Statement statement, Rest rest, Reading& reading, Fragrance& fragrance);
bool read_constituent(Rest rest, Reading& reading, Fragrance& fragrance);
bool read_material(Rest rest, Reading& reading, UserMaterial& material);
bool read_statement(Statement statement, Rest rest, Reading& reading, UserMaterial& material);

// grammar_workshop.cpp: workshops, tasks and labels
bool read_statement(Statement statement, Rest rest, Reading& reading, Workshop& workshop);
bool read_statement(Statement statement, Rest rest, Reading& reading, Task& task);
bool read_statement(Statement statement, Rest rest, Reading& reading, Label& label);

// grammar_tweak.cpp
bool read_tweak(Rest rest, Reading& reading, Tweak& tweak);
bool read_edit(Statement statement, Span line_place, Rest rest, Reading& reading, Tweak& tweak);

}  // namespace sudsmark::formula
