// Words of leeway that its reports share.
#pragma once

#include <string>

#include <sudsmark/leeway.h>

namespace sudsmark::report {

/// A share for people [%]: four digits that count, rounded to the side that is sound.
[[nodiscard]] std::string printed_end(const LeewayEnd& end, bool least);
/// The share that a line has: "38 %", "2 to 3 %".
[[nodiscard]] std::string printed_share(const Figure& share);
/// "SLSA in premix 'dry bag'".
[[nodiscard]] std::string line_name(const LeewayLine& line);
/// What stops it, in words: "below 1.2 %: 0.49 parts of …"; where nothing does, how far that is.
[[nodiscard]] std::string stop_words(const LeewayEnd& end, bool least);

}  // namespace sudsmark::report
