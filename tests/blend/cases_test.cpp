// What a formula makes, as files: every cases/*.formula is mixed with the bench's catalogue, and
// what comes of it, or what is said of it, must be what the .expected beside it says. Each message
// of the room is shown by one of them.
#include <doctest/doctest.h>

#include <charconv>
#include <cmath>
#include <filesystem>
#include <string>

#include "bench_catalogue.h"
#include "case_files.h"
#include "message_ids.h"

namespace {

using sudsmark::blend::Blend;
using sudsmark::blend::Composition;
using sudsmark::blend::Ingredient;
using sudsmark::blend::Part;
using sudsmark::quantity::Range;
namespace text = sudsmark::text;
namespace testing = sudsmark::testing;

std::string number(double value) {
  char buffer[32];
  const auto end =
      std::to_chars(std::begin(buffer), std::end(buffer), value, std::chars_format::general, 8).ptr;
  return {buffer, end};
}

double to_whole_grams(double mass, const std::vector<sudsmark::blend::Scale>& /*scales*/) {
  return std::floor(mass);
}

std::string range(const Range& value) {
  const std::string low = number(value.low);
  const std::string high = number(value.high);
  return low == high ? low : low + " - " + high;
}

std::string composition(const Blend& blend, const Composition& of) {
  std::string out;
  for (const Ingredient& one : of.ingredients) {
    out += "  " + range(one.mass) + " g " + blend.material(one.material).name;
    if (one.on_top) out += ", on top";
    out += "\n";
  }
  return out;
}

std::string part(const Blend& blend, const char* kind, const Part& of) {
  std::string out = std::string(kind) + " '" + of.name + "'";
  if (of.sold_apart) out += ", sold apart";
  out += "\n" + composition(blend, of.composition);
  if (of.dough) out += "dough of '" + of.name + "'\n" + composition(blend, *of.dough);
  return out;
}

std::string said(const text::Sources& sources, const text::Diagnostic& diagnostic,
                 const char* kind) {
  const text::Position position = sources.position(diagnostic.places.front());
  return std::to_string(position.line) + ":" + std::to_string(position.column) + ": " + kind +
         ": " + text::sentence(diagnostic) + "\n";
}

std::string stated(const Blend& blend) {
  std::string out;
  const auto words = [&](const char* what, const auto& list) {
    for (const auto& one : list) out += std::string(what) + " '" + one.text + "'\n";
  };
  words("users", blend.users);
  words("claim", blend.claims);
  if (blend.dried) {
    out += "dried " + range(blend.dried->time) + " h";
    if (blend.dried->temperature) out += " at " + range(*blend.dried->temperature) + " C";
    out += "\n";
  }
  const std::chrono::year_month_day today{std::chrono::year(2026), std::chrono::month(11),
                                          std::chrono::day(25)};
  if (blend.batch_made || blend.on_sale_since) {
    for (const char* market : {"GB", "CA"}) {
      const auto day = blend.counted_from(market, today);
      out += std::string(market) + " counts " + std::to_string(static_cast<int>(day.year())) + "-" +
             std::to_string(static_cast<unsigned>(day.month())) + "-" +
             std::to_string(static_cast<unsigned>(day.day())) + "\n";
    }
  }
  for (const auto& scent : blend.scents) {
    for (const std::string& category : scent.categories) out += "category " + category + "\n";
  }
  for (const auto& trace : blend.traces) {
    out += "trace of '" + trace.name + "' " + range(trace.share) + " in " +
           blend.material(trace.material).name + "\n";
  }
  if (blend.workshop && blend.workshop->air_speed) {
    out += "air speed " + range(blend.workshop->air_speed->value) + " m/s\n";
  }
  for (const auto& task : blend.tasks) {
    for (const auto& one : task.sampled) {
      out += "sampled " + range(one.dust) + " g/l " + one.fraction + " over " + number(one.over) +
             " h\n";
    }
  }
  for (const auto& one : blend.whole.composition.ingredients) {
    const auto unknown = blend.undeclared(one.material);
    if (unknown.high > 0) {
      out += "undeclared " + range(unknown) + " of " + blend.material(one.material).name + "\n";
    }
    for (const auto& content : blend.contents(one.material)) {
      if (content.substance == nullptr || one.material < blend.catalogue->materials.size())
        continue;
      out += blend.material(one.material).name + " holds " + range(content.share) + " " +
             content.substance->name + "\n";
    }
  }
  return out;
}

std::string shown(const test::Mixed& mixed) {
  std::string out;
  if (mixed.blend) {
    const Blend& blend = *mixed.blend;
    out += stated(blend);
    out += part(blend, "whole", blend.whole);
    for (const Part& one : blend.portions) out += part(blend, "portion", one);
    for (const Part& one : blend.premixes) out += part(blend, "premix", one);
    for (const auto& note : blend.notes) out += said(mixed.sources, note, "note");
  }
  for (const auto& one : mixed.diagnostics.in_order()) out += said(mixed.sources, one, "error");
  return out;
}

}  // namespace

TEST_CASE("formulas make what stands beside them, and each message of the blend is shown") {
  const auto catalogue = test::bench_catalogue();
  const auto files = testing::case_files("tests/blend/cases", ".formula");
  CHECK(files.size() >= 30);
  std::set<std::string> ids;
  for (const auto& path : files) {
    CAPTURE(path.filename().string());
    test::Mixed mixed;
    sudsmark::blend::MixOptions options;
    if (path.stem().string().ends_with("as_weighed")) options.weighed = to_whole_grams;
    test::mix_text(testing::file_contents(path), catalogue, mixed, options);
    testing::add_ids(mixed.diagnostics, ids);
    if (mixed.blend) {
      for (const auto& note : mixed.blend->notes) ids.insert(std::string(note.message->id));
    }
    std::filesystem::path expected = path;
    expected.replace_extension(".expected");
    testing::check_expected(expected, shown(mixed));
  }
  testing::check_all_shown("src/blend/messages.h", ids);
}
