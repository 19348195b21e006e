// What reports want filled, put together and asked for.
#include <algorithm>

#include <sudsmark/report.h>

namespace sudsmark {

Details operator|(const Details& one, const Details& other) {
  return {std::max(one.verdicts, other.verdicts),
          one.measures || other.measures,
          one.curves || other.curves,
          one.particulars || other.particulars,
          one.lines || other.lines,
          one.sheet || other.sheet,
          one.labels || other.labels};
}

Details Report::wanted(const ReportOptions& options) const {
  return options.verbose ? wants | Details{.verdicts = wants_more} : wants;
}

void fill(const Details& details, CheckOptions& options) {
  options.verdicts = details.verdicts != Verdicts::none;
  options.only_to_read = details.verdicts == Verdicts::to_read;
  options.brief = details.verdicts == Verdicts::kept;
  options.passes_in_full = details.verdicts == Verdicts::in_full;
  options.measures = details.measures;
  options.curves = details.curves;
  options.particulars = details.particulars;
  options.lines = details.lines;
  options.sheet = details.sheet;
  options.label = details.labels;
}

}  // namespace sudsmark
