#include "worksheet/sheet.h"

#include <string>
#include <vector>

#include "measures/bench_plan.h"
#include "quantity/number.h"
#include "wording/page.h"
#include "wording/words.h"
#include "worksheet/tasks.h"
#include "worksheet/weighing.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::Page;

std::string headline(const blend::Blend& blend, const measures::BenchPlan& plan) {
  std::string out = blend.product->name;
  if (blend.forming) out += ", " + blend.forming->text;
  const double step = plan.scales.empty() ? 0 : worksheet::coarsest(plan.scales);
  if (blend.batch) out += "; batch " + worksheet::mass_words(blend.batch->value.low, step);
  if (blend.piece && !blend.piece->assumed)
    out += "; piece " + quantity::printed(blend.piece->value, "g");
  if (blend.workshop) out += "; " + blend.workshop->name;
  return out;
}

/// Statements are kept in small letters; a mask's class is written in capitals.
std::string mask_words(std::string word) {
  if (word == "none") return "no mask";
  for (char& letter : word) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return "mask " + word;
}

void write_room(const blend::Blend& blend, Page& page) {
  if (!blend.workshop) return;
  const blend::Workshop& workshop = *blend.workshop;
  std::vector<std::string> words;
  if (workshop.room) words.push_back(quantity::printed(workshop.room->value, "m3"));
  if (workshop.air_changes)
    words.push_back("air changes " + quantity::printed(workshop.air_changes->value, "per hour"));
  if (workshop.humidity)
    words.push_back("humidity " + quantity::printed(workshop.humidity->value, "%"));
  if (workshop.temperature) words.push_back(quantity::printed(workshop.temperature->value, "C"));
  if (const auto* mask = workshop.choice("mask")) words.push_back(mask_words(mask->text));
  if (!words.empty()) page.entry("room", wording::joined(words, "and"));
}

Page sheet(const blend::Blend& blend, const std::vector<std::string>& against) {
  blend::MissingTable missing;
  const measures::View whole{&blend, &blend.whole, nullptr, &missing, nullptr};
  const measures::BenchPlan plan = measures::bench_plan(whole);
  Page page;
  if (!against.empty()) {
    page.frame(wording::not_to_be_made, against);
  }
  page.heading("Bench sheet: " + blend.name);
  page.paragraph(headline(blend, plan), 2);
  page.entry("made on", "________________   by ________________   lot ________________");
  write_room(blend, page);
  worksheet::write_scales(plan, page);
  if (plan.scales.empty()) {
    page.entry("scale",
               "none is stated (`scale` of the workshop): on which scale, and whether it "
               "is fine enough, cannot be said.");
  } else {
    page.entry("", "Put the vessel on, set to zero, weigh. Tick each line as soon as it is in.");
  }
  if (!plan.masses_known) {
    page.entry("batch",
               "not stated (`batch`): what has no mass below is a share of an unknown one.");
  }
  worksheet::write_precautions(whole, page);
  int number = 0;
  for (const measures::BenchSection& section : plan.sections) {
    worksheet::write_section(blend, plan, section, ++number, page);
  }
  worksheet::write_pieces(blend, plan, page);
  worksheet::write_rounding(plan, page);
  worksheet::write_cautions(whole, page);
  worksheet::write_keeping(whole, page);
  // sums over dust are read at the desk, and not with floury hands
  page.new_page("Dust of " + blend.name + ", for the office");
  worksheet::write_tasks(whole, page);
  return page;
}

}  // namespace

Page worksheet::bench_sheet(const blend::Blend& blend, const std::vector<std::string>& against) {
  return sheet(blend, against);
}

}  // namespace sudsmark
