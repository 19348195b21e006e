// An index of words: what a folded word stands for, quick to make, quick to ask, and asked where it
// lies packed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/bytes.h"

namespace sudsmark::catalogue {

/// Ranks of a word: the lowest that knows it answers.
namespace rank {
inline constexpr std::uint8_t name = 0;
inline constexpr std::uint8_t synonym = 1;
inline constexpr std::uint8_t inci = 2;
inline constexpr std::uint8_t number = 3;
inline constexpr std::uint8_t stem = 4;  ///< "lavender" for lavender oil
}  // namespace rank

/// Words with what they stand for (an index of somebody's list) and a rank: of a word that was
/// added at several ranks, only the lowest counts.
class WordIndex {
 public:
  using Target = std::uint16_t;

  void clear();
  /// Adds a word, which is folded; an empty one is left out.
  void add(std::string_view word, std::uint8_t rank, Target target);
  /// To be called after the last `add`, before the first `find`.
  void sort();

  /// What the word stands for at its lowest rank, ascending, each once; none if it is not known.
  [[nodiscard]] std::vector<Target> find(std::string_view word) const;

  /// Whether all that words stand for is below a size, and no slot of the packed ones is cut.
  [[nodiscard]] bool all_below(std::size_t size) const;

  template <class Archive>
  friend void visit(Archive& archive, typename Archive::template Of<WordIndex>& index) {
    archive(index.words_, index.table_);
  }

 private:
  struct Slot {
    std::uint64_t hash = 0;
    std::uint32_t begin = 0;  ///< of the folded word in bytes_
    std::uint16_t size = 0;
    Target target = 0;
    std::uint8_t rank = 0;
  };
  template <class Archive>
  friend void visit(Archive& archive, typename Archive::template Of<Slot>& slot) {
    archive.plain(slot.hash, slot.begin, slot.size, slot.target, slot.rank);
  }

  static constexpr std::size_t slot_bytes = 17;

  [[nodiscard]] std::size_t size() const { return table_.view().size() / slot_bytes; }
  [[nodiscard]] Slot slot(std::size_t at) const;
  [[nodiscard]] std::string_view word(const Slot& slot) const;

  Bytes words_;              ///< all words one after the other
  Bytes table_;              ///< the slots as `visit` writes them, in order
  std::vector<Slot> added_;  ///< until they are sorted
};

}  // namespace sudsmark::catalogue
