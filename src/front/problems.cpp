#include "front/problems.h"

#include <string>

namespace sudsmark::front {

Problem problem(const text::Diagnostic& diagnostic, const text::Sources& sources) {
  Problem out;
  out.message = text::sentence(diagnostic);
  out.id = diagnostic.message->id;
  for (std::size_t at = 0; at < diagnostic.places.size(); ++at) {
    const text::Span& place = diagnostic.places[at];
    if (!place.somewhere()) continue;
    const text::Position position = sources.position(place);
    const std::string file{sources.path(place)};
    if (at == 0) {
      out.file = file;
      out.line = position.line;
      out.column = position.column;
      out.spelling = text::instead(diagnostic);
      const text::Position end = sources.position({place.file, place.end, place.end});
      out.end_line = end.line;
      out.end_column = end.column;
    } else {
      out.also.push_back({file, position.line, position.column});
    }
  }
  return out;
}

void add_problems(const text::Diagnostics& diagnostics, const text::Sources& sources,
                  std::vector<Problem>& problems) {
  for (const text::Diagnostic& diagnostic : diagnostics.in_order()) {
    problems.push_back(problem(diagnostic, sources));
  }
}

}  // namespace sudsmark::front
