// Rows of tables as labels read them: those of a market that hold on a day, and their words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "blend/blend.h"
#include "catalogue/table.h"
#include "label/label.h"

namespace sudsmark::label {

/// Whether a row holds for a label.
[[nodiscard]] bool holds_for(const catalogue::Row& row, const LabelAsk& ask);
/// The rows of a table that hold for a label; none if there is no such table.
[[nodiscard]] std::vector<const catalogue::Row*> rows_for(const blend::Blend& blend,
                                                          std::string_view table,
                                                          const LabelAsk& ask);
/// The word of a row in a column; empty if it has none.
[[nodiscard]] std::string word_of(const blend::Blend& blend, std::string_view table,
                                  const catalogue::Row& row, std::string_view column);
/// The row's figure in a column [base unit]; unknown if it has none.
[[nodiscard]] quantity::Range figure_of(const blend::Blend& blend, std::string_view table,
                                        const catalogue::Row& row, std::string_view column);

/// Share by mass of a row's substances in the whole product as far as they are declared [fraction];
/// materials that the row names count whole.
[[nodiscard]] quantity::Range declared_share(const blend::Blend& blend, const catalogue::Row& row);

[[nodiscard]] bool has_trait(const blend::Blend& blend, std::string_view trait);

}  // namespace sudsmark::label
