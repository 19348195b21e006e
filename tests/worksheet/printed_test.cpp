// The printed sheet, read back as a baker reads it: summed over phases, premixes, portions and
// dilutions, the pieces hold what the formula says, within what the scales round.
#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <map>
#include <optional>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "case_files.h"
#include "front/parts.h"
#include "property/recipes.h"
#include "text/name.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

namespace fs = std::filesystem;

/// An amount, and how far the rounding of the scales may have moved it [g].
struct Mass {
  double grams = 0;
  double doubt = 0;
  Mass& operator+=(const Mass& other) {
    grams += other.grams;
    doubt += other.doubt;
    return *this;
  }
};
Mass times(const Mass& mass, double factor) {
  return {mass.grams * factor, mass.doubt * factor};
}

using Contents = std::map<std::string, Mass>;

struct Section {
  std::string kind;  ///< Premix, Phase, Portion
  std::string name;
  double makings = 1;
  Contents contents;
};

class PrintedSheet {
 public:
  explicit PrintedSheet(const std::string& text) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) read(line);
    end_paragraph();
  }

  /// All that goes into the pieces, premixes opened.
  [[nodiscard]] Contents product() const {
    Contents out;
    for (const Section& section : sections_) {
      if (section.kind == "Premix") continue;
      for (const auto& [name, mass] : section.contents) add(name, mass, out, 0);
    }
    return out;
  }
  [[nodiscard]] std::size_t lines() const { return lines_; }

 private:
  void read(const std::string& line) {
    static const std::regex scale(R"(  scale ([A-Z])  .* ([\d.]+) (g|oz) steps.*)");
    static const std::regex head(R"(\d+\. (Premix|Phase|Portion) '(.*)'(.*))");
    static const std::regex makings(R"(: (\d+) .* of .*)");
    static const std::regex weighed(R"(  \[ \] (.+?)  +([\d.]+) (g|oz)  (.*))");
    static const std::regex step(R"(  +\d+\. Weigh .*)");
    std::smatch found;
    if (std::regex_match(line, found, scale)) {
      steps_[found[1]] = std::stod(found[2]) * unit(found[3]);
    } else if (std::regex_match(line, found, head)) {
      end_paragraph();
      sections_.push_back({found[1], found[2], 1, {}});
      std::smatch many;
      const std::string rest = found[3];
      if (std::regex_match(rest, many, makings)) sections_.back().makings = std::stod(many[1]);
      each_ = false;
    } else if (line.find("on its own:") != std::string::npos) {
      end_paragraph();
      each_ = true;
    } else if (std::regex_match(line, found, weighed)) {
      end_paragraph();
      weighing(found[1], std::stod(found[2]) * unit(found[3]), found[4]);
    } else if (std::regex_match(line, step)) {
      end_paragraph();
      paragraph_ = line;
    } else if (line.empty() || line[0] != ' ') {
      end_paragraph();
    } else if (!paragraph_.empty()) {
      paragraph_ += line;
    }
  }

  static double unit(const std::string& word) { return word == "oz" ? 28.349523125 : 1; }

  [[nodiscard]] double step_of(const std::string& note) const {
    double most = 0;
    for (const auto& [letter, step] : steps_) {
      if (note.find("on " + letter) != std::string::npos) most = std::max(most, step);
    }
    return most;
  }

  void weighing(std::string name, double grams, const std::string& note) {
    if (note.starts_with("split")) return;  // of the mix that is weighed already
    ++lines_;
    // a premix is told by its own units too
    const std::size_t comma = name.rfind(", ");
    if (comma != std::string::npos && std::isdigit(name[comma + 2]) != 0) name.resize(comma);
    // in several goes each is off by a step at most
    static const std::regex several(R"((\d+) x )");
    double goes = 0;
    for (std::sregex_iterator at(note.begin(), note.end(), several), none; at != none; ++at) {
      goes += std::stod((*at)[1]);
    }
    const double half = step_of(note) / 2 * std::max(1.0, goes);
    const double each = each_ ? sections_.back().makings : 1;
    last_ = name;
    if (note.starts_with("see below")) {
      pending_ = {grams * each, 0};
      blends_.clear();
      sections_.back().contents[name] += *pending_;
      return;
    }
    pending_.reset();
    sections_.back().contents[name] += Mass{grams * each, half * each};
  }

  /// A step of a dilution: what is weighed into it, and at last how much of it is weighed in.
  void end_paragraph() {
    if (paragraph_.empty()) return;
    const std::string words = std::regex_replace(paragraph_, std::regex(" +"), " ");
    paragraph_.clear();
    static const std::regex blend(
        R"( \d+\. Weigh on ([A-Z]) (?:\d+ x )?([\d.]+) (g|oz) of (.+?)(?: \(.*?\))? and on ([A-Z]) (?:\d+ x )?([\d.]+) (g|oz) of (.+?)(?: \(.*?\))?; .*)");
    static const std::regex last(
        R"( \d+\. Weigh on ([A-Z]) ([\d.]+) (g|oz) of the blend of step (\d+) (in|into each .+?): .*)");
    std::smatch found;
    if (std::regex_match(words, found, blend)) {
      Contents made;
      put(found[4], std::stod(found[2]) * unit(found[3]), made);
      put(found[8], std::stod(found[6]) * unit(found[7]), made);
      blends_.push_back(std::move(made));
    } else if (std::regex_match(words, found, last)) {
      REQUIRE(pending_);
      Contents& contents = sections_.back().contents;
      // what the line itself says is what this brings
      contents[last_].grams -= pending_->grams;
      const double many = std::string(found[5]) == "in" ? 1 : sections_.back().makings;
      const double grams = std::stod(found[2]) * unit(found[3]) * many;
      const double half = steps_.at(found[1]) / 2 * many;
      const Contents& of = blends_.at(std::stoul(found[4]) - 1);
      double whole = 0;
      for (const auto& [name, mass] : of) whole += mass.grams;
      for (const auto& [name, mass] : of) {
        contents[name] += Mass{grams * mass.grams / whole, half};
      }
    }
  }

  void put(const std::string& what, double grams, Contents& to) const {
    static const std::regex of_step(R"(the blend of step (\d+))");
    std::smatch found;
    if (!std::regex_match(what, found, of_step)) {
      to[what] += Mass{grams, 0};
      return;
    }
    const Contents& of = blends_.at(std::stoul(found[1]) - 1);
    double whole = 0;
    for (const auto& [name, mass] : of) whole += mass.grams;
    for (const auto& [name, mass] : of) to[name] += times(mass, grams / whole);
  }

  void add(const std::string& name, const Mass& mass, Contents& to, int depth) const {
    REQUIRE(depth < 16);
    for (const Section& section : sections_) {
      if (section.kind != "Premix" || text::fold(section.name) != text::fold(name)) continue;
      double whole = 0;
      for (const auto& [inner, part] : section.contents) whole += part.grams;
      for (const auto& [inner, part] : section.contents) {
        add(inner, times(part, mass.grams / whole), to, depth + 1);
      }
      return;
    }
    to[name] += mass;
  }

  std::map<std::string, double> steps_;  ///< of the scales, by letter [g]
  std::vector<Section> sections_;
  bool each_ = false;
  std::string last_;
  std::optional<Mass> pending_;  ///< a line whose mass a dilution brings
  std::vector<Contents> blends_;
  std::string paragraph_;
  std::size_t lines_ = 0;
};

/// What a name is called in the list of ingredients.
std::string key(const std::string& name, const Rulesets& rulesets) {
  const auto& catalogue = front::parts(rulesets).catalogue;
  const auto& meaning = catalogue.find_material(name);
  return meaning.one() ? catalogue.materials[meaning.materials.front()].name : name;
}

/// Whether the formula could be summed: real masses, no ranges, nothing that no scale weighs.
std::size_t held_against_the_formula(const fs::path& file, const Rulesets& rulesets) {
  CheckOptions options = on_a_day();
  options.particulars = true;
  options.sheet = true;
  options.read = [](const std::string& wanted) -> std::optional<std::string> {
    if (!fs::is_regular_file(wanted)) return std::nullopt;
    return file_contents(wanted);
  };
  const RunResult run = check({file.string(), file_contents(file)}, rulesets, options);
  REQUIRE_MESSAGE(run.formulas.size() == 1, file.string());
  const FormulaResult& formula = run.formulas.front();
  const PrintedSheet sheet(formula.sheet);
  std::map<std::string, Mass> printed;
  double whole = 0;
  double doubt = 0;
  for (const auto& [name, mass] : sheet.product()) {
    printed[key(name, rulesets)] += mass;
    whole += mass.grams;
    doubt += mass.doubt;
  }
  INFO(file.filename().string(), "\n", formula.sheet);
  REQUIRE(whole > 0);
  CHECK(printed.size() == formula.ingredients.size());
  for (const IngredientRow& row : formula.ingredients) {
    const auto found = printed.find(row.name);
    CHECK_MESSAGE(found != printed.end(), row.name, " is not on the sheet");
    if (found == printed.end()) continue;
    const double share = found->second.grams / whole * 100;
    // the line's own rounding, that of all others in the whole, and four digits that are printed
    const double within = (found->second.doubt + doubt * share / 100) / whole * 100 + 1e-3 * share;
    CHECK_MESSAGE(share >= *row.share.low - within, row.name, " ", share, " ", *row.share.low);
    CHECK_MESSAGE(share <= *row.share.high + within, row.name, " ", share, " ", *row.share.high);
  }
  return sheet.lines();
}

}  // namespace

TEST_CASE("the pieces hold what the formula says, worked out from the printed sheet") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t sheets = 0;
  std::size_t lines = 0;
  std::vector<fs::path> files = case_files("fixtures/formulas", ".formula");
  // formulas with premixes, portions, dilutions and coarse scales
  for (const char* name :
       {"tests/golden/twenty-bags.formula", "tests/golden/tenth-of-a-gram.formula",
        "fixtures/sound/bubble-iron-oxide.formula", "fixtures/faulty/coarse-scale.formula",
        "fixtures/faulty/lake-on-a-coarse-scale.formula", "fixtures/faulty/dye-in-one-half.formula",
        "fixtures/faulty/thin-stripe.formula", "fixtures/faulty/scent-tripled.formula",
        "fixtures/faulty/emulsifier-forgotten.formula", "fixtures/faulty/strong-dye.formula",
        "fixtures/faulty/petals.formula", "fixtures/faulty/one-to-one.formula"}) {
    files.push_back(source_dir() / name);
  }
  for (const fs::path& file : files) {
    if (file_contents(file).find("\nformula ") == std::string::npos) continue;
    lines += held_against_the_formula(file, rulesets);
    ++sheets;
  }
  CHECK(sheets >= 15);
  CHECK(lines >= 120);
}
