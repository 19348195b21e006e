// The commands, one file each.
#pragma once

#include "cli/arguments.h"

namespace sudsmark::cli {

Exit check(const Arguments& arguments);
Exit compare(const Arguments& arguments);
Exit measure(const Arguments& arguments);
Exit label(const Arguments& arguments);
Exit drill(const Arguments& arguments);
Exit explain(const Arguments& arguments);
Exit rules(const Arguments& arguments);
Exit suggest(const Arguments& arguments);

}  // namespace sudsmark::cli
