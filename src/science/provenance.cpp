#include "science/provenance.h"

namespace sudsmark::science {

std::string_view standing_word(Standing standing) {
  switch (standing) {
    case Standing::read:
      return "published";
    case Standing::quoted:
      return "published, as quoted elsewhere";
    case Standing::recalled:
      return "from memory";
    case Standing::practice:
      return "common practice";
  }
  return "";
}

}  // namespace sudsmark::science
