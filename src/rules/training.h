// What exercises are drawn from: sound model cards, and the ways in which they go wrong. All of it
// is data about the trade, in rulesets/training/*.yaml, and is packed with the rules.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace sudsmark::rules {

/// A sound formula whose amounts are windows: any figure inside them is sound too.
struct ModelCard {
  std::string name;
  std::string formula;
};

/// One thing that goes wrong on some model cards, and the rule that sees it.
struct Breakage {
  enum class Kind : std::uint8_t { change, add, remove, tweak };

  std::string rule;                ///< its id
  std::vector<std::string> cards;  ///< on which no other rule minds
  Kind kind = Kind::change;
  /// Which line: the name of its material, or the words with which it begins.
  std::string line;
  /// The line in its place, the one that is added, or the edit of a tweak. A window of amounts
  /// holds figures that are all wrong.
  std::string becomes;
  std::string under;  ///< the words with which the heading begins under which one is added
};

/// A line that may stand on a card without a fault, so that such lines give nothing away.
struct HarmlessLine {
  std::string line;
  std::string under;
};

/// A chapter of the course.
struct Chapter {
  std::string name;  ///< as `explain course NAME` finds it
  std::string title;
  std::string what;
  std::string why;
  std::string card;                   ///< the model card that its sum is worked through on
  std::string sum;                    ///< what is worked out, in words
  std::vector<std::string> working;   ///< lines; `{measure}` stands for a figure of that card
  std::vector<std::string> subjects;  ///< names of rule files whose limits belong here
  std::vector<std::string> practice;  ///< what goes wrong
  std::string assessor;               ///< where the law stops and the assessor decides
  std::vector<std::string> cautions;  ///< names of Caution
};

/// What can hurt, what to do first, and whom to ask.
struct Caution {
  std::string name;
  std::string words;
  std::string first_aid;
  std::string source;  ///< of the first aid: an id of sources.yaml
};

struct Training {
  std::vector<ModelCard> cards;
  std::vector<Breakage> breakages;
  std::vector<HarmlessLine> harmless;
  std::vector<Chapter> chapters;
  std::vector<Caution> cautions;
};

}  // namespace sudsmark::rules
