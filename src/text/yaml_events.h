// The only place that knows the YAML library: its events become the tree, its errors our messages.
#pragma once

#include <optional>
#include <string_view>

#include "text/diagnostic.h"
#include "text/yaml.h"

namespace sudsmark::text {

/// The tree of a file whose bytes have passed `check_yaml_bytes`.
[[nodiscard]] std::optional<Node> parse_yaml(std::string_view file_text, FileIndex file,
                                             Diagnostics& diagnostics);

}  // namespace sudsmark::text
