// What was written is read again, by whoever reads it: JSON, baselines, answers of a stream.
#pragma once

#include <string_view>

namespace sudsmark::fuzz {

/// A formula through every report for machines, and through a baseline of itself.
void write_reports(std::string_view input);

/// Lines of a stream. One that is no JSON is taken for a formula, and is made a line of, so that
/// both what a stream may carry and what it may not are looked at.
void answer_stream(std::string_view input);

}  // namespace sudsmark::fuzz
