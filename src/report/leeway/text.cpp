// Leeway as text: a line of the formula, how far it can go, and what stops it at each end.
#include <algorithm>

#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "report/leeway/leeway_words.h"
#include "text/utf8.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;

std::string padded(std::string words, std::size_t width) {
  const std::size_t wide = text::count_code_points(words);
  if (wide < width) words.append(width - wide, ' ');
  return words;
}

std::string stop(const LeewayEnd& end, bool least) {
  std::string out = "    " + harmless(stop_words(end, least));
  if (end.stopped_by) out += " [" + end.stopped_by->rule + "]";
  return out + "\n";
}

}  // namespace

std::string leeway_text(const Leeway& leeway, const Rulesets&, const ReportOptions& options) {
  std::string out = harmless(leeway.file) + " (" + harmless(leeway.name) + ")\n";
  out += "how far each line can go before a verdict gets worse, at level " +
         std::string(wording::level_word(leeway.threshold)) +
         " or above; each is set alone, as a tweak would\n";
  if (!leeway.broken.empty()) {
    out += "broken already, so that it stops nothing:";
    for (const std::string& rule : leeway.broken) out += " " + rule;
    out += "\n";
  }
  std::size_t name = 0;
  std::size_t now = 0;
  for (const LeewayLine& line : leeway.lines) {
    name = std::max(name, text::count_code_points(harmless(line_name(line))));
    now = std::max(now, text::count_code_points(printed_share(line.share)));
  }
  for (const LeewayLine& line : leeway.lines) {
    constexpr std::size_t of_number = 5;
    const bool elsewhere = line.file != leeway.file;
    out += "\n  " + (elsewhere ? harmless(line.file) + ":" : std::string("line ")) +
           padded(std::to_string(line.line), of_number) +
           padded(harmless(line_name(line)), name + 2) +
           padded(printed_share(line.share), now + 2) + "from " + printed_end(line.least, true) +
           " to " + printed_end(line.most, false) + "\n";
    out += stop(line.least, true);
    out += stop(line.most, false);
  }
  out += "\n";
  for (const std::string& words : leeway.fixed) out += "not moved: " + harmless(words) + "\n";
  out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
