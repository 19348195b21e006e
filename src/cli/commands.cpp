// The register of commands. Each is the file of its name.
#include "cli/subcommand.h"

namespace sudsmark::cli {

Subcommand check_command();
Subcommand compare_command();
Subcommand measure_command();
Subcommand label_command();
Subcommand dossier_command();
Subcommand suggest_command();
Subcommand leeway_command();
Subcommand explain_command();
Subcommand format_command();
Subcommand drill_command();
Subcommand rules_command();

std::vector<Subcommand> commands() {
  return {check_command(),   compare_command(), measure_command(), label_command(),
          dossier_command(), suggest_command(), leeway_command(),  explain_command(),
          format_command(),  drill_command(),   rules_command()};
}

}  // namespace sudsmark::cli
