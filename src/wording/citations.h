// Sources in words.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "catalogue/catalogue.h"

namespace sudsmark::wording {

[[nodiscard]] std::vector<SourceNote> notes(const catalogue::Citations& citations,
                                            const catalogue::Catalogue& catalogue);
/// " (as quoted elsewhere)", " (worked out from it)"; empty where its place says so.
[[nodiscard]] std::string how_found(const SourceNote& note);
/// "published: Title, where (as quoted elsewhere)".
[[nodiscard]] std::string words(const SourceNote& note);
/// The sources in one line: "published: …; from memory: …".
[[nodiscard]] std::string words(const std::vector<SourceNote>& notes);

}  // namespace sudsmark::wording
