#include <sudsmark/version.h>

namespace sudsmark {

std::string_view version() {
  return SUDSMARK_VERSION;
}

}  // namespace sudsmark
