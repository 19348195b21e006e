// One spelling for all names of one material, where the front hands it to the formula's room.
#pragma once

#include "blend/same_name.h"

namespace sudsmark::front {

using blend::same_name;

}  // namespace sudsmark::front
