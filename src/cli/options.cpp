// What is declared goes to the library that reads the command line, and into the declaration.
#include "cli/options.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>

#include "text/name.h"

namespace sudsmark::cli {

DeclaredOption& Options::declare(const std::string& name, const std::string& shape,
                                 const std::string& help) {
  // what a later group adds to an earlier heading stands beneath that
  auto& all = declared_.options;
  const auto last = std::find_if(
      all.rbegin(), all.rend(), [&](const DeclaredOption& one) { return one.heading == heading_; });
  return *all.insert(last == all.rend() ? all.end() : last.base(),
                     DeclaredOption{name, shape, help, {}, heading_, false, {}});
}

DeclaredOption& Options::declared(const std::string& name) {
  return *std::find_if(declared_.options.begin(), declared_.options.end(),
                       [&](const DeclaredOption& one) { return one.name == name; });
}

void Options::words(const std::string& name, std::vector<std::string>& into, std::size_t least,
                    std::size_t most, const std::string& help) {
  CLI::Option* option = app_.add_option(name, into, help)->type_name("");
  option->required(least > 0);
  const int many = CLI::detail::expected_max_vector_size;
  option->expected(static_cast<int>(std::max<std::size_t>(least, 1)),
                   most == 0 ? many : static_cast<int>(most));
  declared_.words = name;
  declared_.words_help = help;
  usage(least == 0 ? "[" + name + "...]" : most == 1 ? name : name + "...");
}

void Options::flag(const std::string& name, bool& into, const std::string& help) {
  app_.add_flag(name, into)->disable_flag_override();
  declare(name, {}, help);
}

void Options::text(const std::string& name, const std::string& shape, std::string& into,
                   const std::string& help) {
  app_.add_option(name, into)->type_name(shape);
  declare(name, shape, help).usual = into;
}

void Options::texts(const std::string& name, const std::string& shape,
                    std::vector<std::string>& into, const std::string& help) {
  app_.add_option(name, into)->allow_extra_args(false)->type_name(shape);
  declare(name, shape, help).repeats = true;
}

void Options::list(const std::string& name, const std::string& shape,
                   std::vector<std::string>& into, const std::string& help) {
  app_.add_option(name, into)->delimiter(',')->allow_extra_args(false)->type_name(shape);
  declare(name, shape + ",...", help).repeats = true;
}

void Options::number(const std::string& name, std::size_t least, std::size_t most,
                     std::size_t& into, const std::string& help) {
  const auto read = [&into, name, least, most](const std::string& typed) {
    std::size_t value = 0;
    const char* end = typed.data() + typed.size();
    const auto [stop, error] = std::from_chars(typed.data(), end, value);
    if (error != std::errc() || stop != end || value < least || value > most) {
      throw CLI::ValidationError(name, "'" + typed + "' is no number from " +
                                           std::to_string(least) + " to " + std::to_string(most));
    }
    into = value;
  };
  app_.add_option_function<std::string>(name, read)->type_name("N");
  declare(name, "N", help).usual = std::to_string(into);
}

void Options::choice(const std::string& name, const std::vector<std::string>& words,
                     std::string& into, const std::string& help) {
  const auto read = [&into, name, words](const std::string& typed) {
    if (std::find(words.begin(), words.end(), typed) == words.end()) {
      throw CLI::ValidationError(name, "'" + typed + "' is none of " + text::listed(words));
    }
    into = typed;
  };
  std::string shape;
  for (const std::string& word : words) shape += (shape.empty() ? "" : "|") + word;
  app_.add_option_function<std::string>(name, read)->type_name(shape);
  DeclaredOption& option = declare(name, shape, help);
  option.usual = into;
  option.choices = words;
}

void Options::usually(const std::string& name, const std::string& words) {
  declared(name).usual = words;
}

void Options::begins(const std::string& name, const std::vector<std::string>& words) {
  declared(name).choices = words;
}

void Options::needs(const std::string& name, const std::string& other) {
  app_.get_option(name)->needs(app_.get_option(other));
}

void Options::excludes(const std::string& name, const std::string& other) {
  app_.get_option(name)->excludes(app_.get_option(other));
}

void Options::example(const std::string& line, const std::string& does) {
  declared_.examples.push_back({line, does});
}

}  // namespace sudsmark::cli
