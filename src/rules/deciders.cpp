#include "rules/deciders.h"

#include <algorithm>
#include <array>

namespace sudsmark::rules {
namespace {

constexpr std::array<std::string_view, 1> share{"share"};
constexpr std::array<std::string_view, 1> right_name{"name"};
constexpr std::array<std::string_view, 2> other_names{"market", "names"};
constexpr std::array<std::string_view, 2> caution{"entry", "words"};
constexpr std::array<std::string_view, 1> entry{"entry"};
constexpr std::array<std::string_view, 5> of_trace{"trace", "sum", "limit", "materials", "entry"};
constexpr std::array<std::string_view, 1> all_traces{"traces"};
constexpr std::array<std::string_view, 1> of_claim{"words"};

constexpr std::array<DecidedCase, 1> plain{DecidedCase{"", {}}};
constexpr std::array missing{DecidedCase{"in the formula", share}, DecidedCase{"no list", {}}};
constexpr std::array misspelt{DecidedCase{"", right_name}};
constexpr std::array other_form{DecidedCase{"", other_names}};
constexpr std::array misplaced{DecidedCase{"by weight", share}, DecidedCase{"colour", {}}};
constexpr std::array cautions{DecidedCase{"words", caution}, DecidedCase{"directions", entry}};

constexpr std::array trace{DecidedCase{"", of_trace}};
constexpr std::array traces{DecidedCase{"", all_traces}};
constexpr std::array claim{DecidedCase{"", of_claim}};

constexpr std::array all{
    DecidedRule{"label", "label-market-unknown", plain},
    DecidedRule{"label", "label-ingredient-missing", missing},
    DecidedRule{"label", "label-ingredient-extra", plain},
    DecidedRule{"label", "label-ingredient-misspelt", misspelt},
    DecidedRule{"label", "label-of-another-market", other_form},
    DecidedRule{"label", "label-ingredient-misplaced", misplaced},
    DecidedRule{"label", "label-caution-missing", cautions},
    DecidedRule{"traces", "trace-over-legal-limit", trace},
    DecidedRule{"traces", "trace-over-guidance", trace},
    DecidedRule{"traces", "traces-not-stated", traces},
    DecidedRule{"claims", "claim-that-makes-a-medicine", claim},
    DecidedRule{"claims", "claim-that-makes-a-biocide", claim},
    DecidedRule{"claims", "words-that-ask-for-evidence", claim},
    DecidedRule{"claims", "name-of-a-food", claim},
    DecidedRule{"reading", "spelling", {}},
};

}  // namespace

std::span<const DecidedRule> decided_rules() {
  return all;
}

std::string case_message(const Rule& rule, std::string_view name,
                         const std::vector<Filling>& fillings) {
  const auto found = std::find_if(rule.words->cases.begin(), rule.words->cases.end(),
                                  [&](const CaseMessage& one) { return one.name == name; });
  if (found == rule.words->cases.end()) return rule.words->title;
  std::string out;
  std::string_view rest = found->text;
  while (true) {
    const std::size_t open = rest.find('{');
    out += rest.substr(0, open);
    if (open == std::string_view::npos) return out;
    const std::size_t close = rest.find('}', open);
    const std::string_view hole = rest.substr(open + 1, close - open - 1);
    for (const Filling& filling : fillings) {
      if (filling.hole == hole) out += filling.words;
    }
    rest.remove_prefix(close + 1);
  }
}

std::string_view odd_hole(std::string_view message, std::span<const std::string_view> holes) {
  while (true) {
    const std::size_t open = message.find('{');
    if (open == std::string_view::npos) return {};
    const std::size_t close = message.find('}', open);
    if (close == std::string_view::npos) return message.substr(open);
    const std::string_view hole = message.substr(open + 1, close - open - 1);
    if (std::find(holes.begin(), holes.end(), hole) == holes.end()) {
      return message.substr(open, close + 1 - open);
    }
    message.remove_prefix(close + 1);
  }
}

}  // namespace sudsmark::rules
