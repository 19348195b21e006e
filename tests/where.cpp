#include "where.h"

namespace sudsmark::testing {

std::filesystem::path source_dir() {
  return SUDSMARK_SOURCE_DIR;
}
std::filesystem::path program() {
  return SUDSMARK_PROGRAM;
}

}  // namespace sudsmark::testing
