// The tree of a document in words, for comparing it with what a test expects.
#pragma once

#include <string>

#include "formula/card.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula::test {

/// Every field that is set, one a line, in base units to 12 digits. Sections and lines begin with
/// their place unless `places` is false.
[[nodiscard]] std::string dump(const Document& document, const text::Sources& sources,
                               bool places = true);

/// Diagnostics in the form `3:9: error: …`, each further place as `4:1: note: …` after it. Places
/// in another file than `file` begin with its path.
[[nodiscard]] std::string listing(const text::Diagnostics& diagnostics,
                                  const text::Sources& sources, text::FileIndex file);

}  // namespace sudsmark::formula::test
