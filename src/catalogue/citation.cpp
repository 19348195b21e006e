#include "catalogue/citation.h"

namespace sudsmark::catalogue {

std::string_view kind_word(SourceKind kind) {
  switch (kind) {
    case SourceKind::published:
      return "published";
    case SourceKind::common_practice:
      return "common practice";
    case SourceKind::from_memory:
      break;
  }
  return "from memory";
}

}  // namespace sudsmark::catalogue
