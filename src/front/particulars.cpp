#include "front/particulars.h"

#include <string>
#include <utility>

#include "rules/ruleset.h"
#include "wording/figures.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::front {
using namespace wording;

namespace {

std::string in(const quantity::Range& value, std::string_view unit) {
  return shown(figure(value, unit));
}

std::string mass(const quantity::Range& grams) {
  return in(grams, "g");
}

/// "ffp2", as it is folded, in capitals.
std::string mask(std::string words) {
  if (words == "none") return words;
  for (char& c : words) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return words;
}

class Particulars {
 public:
  Particulars(const blend::Blend& blend, std::vector<Particular>& out) : blend_(blend), out_(out) {}

  void write() {
    say("product", blend_.product->name);
    if (blend_.forming) say("forming", blend_.forming->text);
    say("market", listed(blend_.markets));
    stated("batch", blend_.batch, mass);
    stated("piece", blend_.piece, mass);
    bath();
    if (blend_.water) say("water", water());
    say("users", listed(blend_.users));
    say("claims", listed(blend_.claims));
    if (blend_.dried) say("dried", dried(*blend_.dried));
    if (blend_.batch_made) say("batch made", rules::day_words(blend_.batch_made->day));
    if (blend_.on_sale_since) say("on sale since", rules::day_words(blend_.on_sale_since->day));
    if (blend_.looks_like_food) say("looks like food", "yes");
    if (blend_.workshop) workshop(*blend_.workshop);
  }

 private:
  void say(std::string name, std::string words, bool assumed = false) {
    if (!words.empty()) out_.push_back({std::move(name), std::move(words), assumed});
  }

  template <typename Print>
  void stated(const char* name, const std::optional<blend::Stated>& figure, const Print& print) {
    if (figure) say(name, print(figure->value), figure->assumed);
  }

  [[nodiscard]] static std::string listed(const std::vector<blend::StatedWord>& stated) {
    std::vector<std::string> words;
    for (const blend::StatedWord& one : stated) words.push_back(one.text);
    return joined(words);
  }

  [[nodiscard]] static std::string dried(const blend::Drying& drying) {
    std::string words = in(drying.time, "h");
    if (drying.temperature) words += " at " + in(*drying.temperature, "C");
    return words;
  }

  void bath() {
    stated(blend_.bath_volume ? "in one bath" : "in one use", blend_.dose, mass);
    stated("water of a bath", blend_.bath_volume,
           [](const quantity::Range& litres) { return in(litres, "l"); });
    stated("warmth of the bath", blend_.bath_temperature,
           [](const quantity::Range& celsius) { return in(celsius, "C"); });
  }

  [[nodiscard]] std::string water() const {
    const blend::BathWater& water = *blend_.water;
    if (!water.named.empty()) return water.named;
    std::vector<std::string> words;
    if (water.alkalinity) words.push_back("alkalinity " + in(*water.alkalinity, "mg/l"));
    if (water.hardness) words.push_back("hardness " + in(*water.hardness, "mg/l"));
    if (water.ph) words.push_back(in(*water.ph, "pH"));
    return joined(words, "and");
  }

  void workshop(const blend::Workshop& workshop) {
    say("made in", workshop.name);
    stated("room", workshop.room, [](const quantity::Range& litres) { return in(litres, "m3"); });
    stated("air changes", workshop.air_changes,
           [](const quantity::Range& rate) { return in(rate, "per hour"); });
    stated("humidity", workshop.humidity,
           [](const quantity::Range& share) { return in(share, "%"); });
    stated("temperature", workshop.temperature,
           [](const quantity::Range& celsius) { return in(celsius, "C"); });
    for (const blend::Scale& scale : workshop.scales) {
      std::string words = "steps of " + in(scale.step, "g");
      if (scale.most) words += ", up to " + mass(*scale.most);
      say("scale", std::move(words));
    }
    for (const auto& [statement, word] : workshop.choices) {
      say(std::string(statement), statement == "mask" ? mask(word.text) : word.text);
    }
    if (workshop.air_speed) {
      say("air speed", shown(figure(workshop.air_speed->value, "1")) + " m/s");
    }
  }

  const blend::Blend& blend_;
  std::vector<Particular>& out_;
};

}  // namespace

void add_particulars(const blend::Blend& blend, std::vector<Particular>& out) {
  Particulars(blend, out).write();
}

}  // namespace sudsmark::front
