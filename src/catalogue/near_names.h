// Which known names somebody may have meant who wrote one that is not known.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::catalogue {

class Catalogue;

/// A name that may be offered, and whose it is.
struct Offer {
  std::string_view word;
  std::size_t owner = 0;
};

/// Names that may be offered, made ready for any number of unknown ones. For one thread: what is
/// worked out of a name when it is first looked at closely is kept.
class NearNames {
 public:
  explicit NearNames(const std::vector<Offer>& offers);

  /// Up to three of the words offered, at most one of an owner: first those that begin as the name
  /// does ("sodium bicarb"), then those that hold all its words, then those that differ in a letter
  /// or two of some of their words, then those whose words the name begins with. Words that differ
  /// in their first letter are never taken for one another: what rhymes is another thing.
  [[nodiscard]] std::vector<std::string> to(std::string_view name);

 private:
  struct Known {
    Offer offer;
    std::string folded;
    bool spelled = false;            ///< the two below were worked out
    std::vector<std::string> words;  ///< in the one spelling of `name_words`
    std::string together;            ///< the same with nothing between
  };
  static void spell(Known& known);

  std::vector<Known> known_;
};

/// Of a catalogue's materials or substances, but for those that nobody is to be led to.
[[nodiscard]] NearNames near_materials(const Catalogue& catalogue);
[[nodiscard]] NearNames near_substances(const Catalogue& catalogue);

}  // namespace sudsmark::catalogue
