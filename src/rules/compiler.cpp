#include "rules/compiler.h"

#include "rules/compilation.h"
#include "rules/messages.h"

namespace sudsmark::rules {

Compiler::Compiler(Ruleset& ruleset, const catalogue::Catalogue& catalogue,
                   text::Diagnostics& diagnostics)
    : ruleset_(ruleset),
      catalogue_(catalogue),
      diagnostics_(diagnostics),
      interner_(ruleset.pool) {}

std::optional<std::uint32_t> Compiler::find_measure(std::string_view name) {
  while (measures_.size() < ruleset_.measures.size()) {
    const auto next = static_cast<std::uint32_t>(measures_.size());
    measures_.emplace(ruleset_.measures[next].name, next);
  }
  const auto found = measures_.find(std::string(name));
  if (found == measures_.end()) return std::nullopt;
  return found->second;
}

std::optional<Program> Compiler::truth(const Source& source, bool tests) {
  Compilation one(*this, source, tests);
  Type type;
  auto program = one.run(type);
  if (program && type.kind != ValueKind::truth) {
    one.refuse(messages::not_truth, source.tree.root, {type_words(type)});
    return std::nullopt;
  }
  return program;
}

std::optional<Program> Compiler::figure(const Source& source, quantity::Dimension& dimension) {
  Compilation one(*this, source, false);
  Type type;
  auto program = one.run(type);
  if (program && type.kind != ValueKind::figure) {
    one.refuse(messages::measure_figure, source.tree.root, {type_words(type)});
    return std::nullopt;
  }
  dimension = type.dimension;
  return program;
}

std::optional<Program> Compiler::printable(const Source& source) {
  Compilation one(*this, source, false);
  Type type;
  auto program = one.run(type);
  if (program && type.kind == ValueKind::truth) {
    one.refuse(messages::hole_truth, source.tree.root, {type_words(type)});
    return std::nullopt;
  }
  return program;
}

std::vector<Origin> Compiler::origins(const Source& source) {
  Compilation one(*this, source, false);
  std::vector<Origin> origins;
  one.gather_origins(source.tree.root, origins);
  return origins;
}

std::optional<std::uint32_t> Compiler::selection(const Source& source) {
  return Compilation(*this, source, false).selection(source.tree.root);
}

std::uint32_t Compiler::subject_selection() {
  return interner_.selection({{PickCode::subject, 0}}, false);
}

std::optional<Origin> Compiler::selection_origin(const Source& source) {
  const auto chosen = selection(source);
  if (!chosen) return std::nullopt;
  return Origin{Origin::Kind::sum, interner_.sum(SumKind::share, *chosen)};
}

}  // namespace sudsmark::rules
