// Parsing: one formula file's text into a Document, every error of one pass reported.
#pragma once

#include "formula/card.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula {

/// Reads one file of the language. Lines with an error are left out of the document and reported;
/// reading goes on with the next line. Bounds of a single file (1 MiB, 2,000 ingredient lines,
/// names of 200 bytes) are enforced here.
[[nodiscard]] Document parse(const text::Sources& sources, text::FileIndex file,
                             text::Diagnostics& diagnostics);

}  // namespace sudsmark::formula
