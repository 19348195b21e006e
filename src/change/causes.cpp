#include "change/causes.h"

#include <algorithm>

namespace sudsmark::change {
namespace {

using Set = std::vector<std::size_t>;

class Search {
 public:
  Search(std::size_t edits, std::size_t things, const Shows& shows)
      : edits_(edits), shows_(shows), found_(things), closed_(things, false) {}

  std::vector<std::vector<Set>> run(std::size_t most) {
    note({});
    close();
    if (edits_ <= most) {
      for (std::size_t at = 0; at < edits_ && !done(); ++at) note({at});
      close();
    }
    if (edits_ < most && edits_ * (edits_ - 1) / 2 <= most) {
      for (std::size_t at = 0; at < edits_; ++at) {
        for (std::size_t with = at + 1; with < edits_ && !done(); ++with) note({at, with});
      }
      close();
    }
    for (std::size_t thing = 0; thing < found_.size(); ++thing) {
      if (!closed_[thing]) shrink(thing, 4 * most);
    }
    return std::move(found_);
  }

 private:
  [[nodiscard]] std::vector<bool> shown(const Set& set) {
    ++tried_;
    std::vector<bool> on(edits_, false);
    for (const std::size_t at : set) on[at] = true;
    return shows_(on);
  }

  /// Looks at one set, for everything that no smaller set shows.
  void note(const Set& set) {
    const std::vector<bool> shows = shown(set);
    for (std::size_t thing = 0; thing < shows.size(); ++thing) {
      if (shows[thing] && !closed_[thing]) found_[thing].push_back(set);
    }
  }

  /// What has been found needs no larger sets.
  void close() {
    for (std::size_t thing = 0; thing < found_.size(); ++thing) {
      closed_[thing] = closed_[thing] || !found_[thing].empty();
    }
  }

  [[nodiscard]] bool done() const {
    return std::all_of(closed_.begin(), closed_.end(), [](bool one) { return one; });
  }

  /// From all edits, takes out chunks and then single ones as long as the thing still shows, until
  /// none of those left can go. Gives up, and finds nothing, past a number of tries in all.
  void shrink(std::size_t thing, std::size_t most) {
    Set kept(edits_);
    for (std::size_t at = 0; at < edits_; ++at) kept[at] = at;
    const auto still = [&](const Set& set) {
      const std::vector<bool> shows = shown(set);
      return thing < shows.size() && shows[thing];
    };
    if (!still(kept)) return;
    for (std::size_t chunk = (edits_ + 1) / 2; chunk > 0;) {
      bool went = false;
      for (std::size_t from = 0; from < kept.size();) {
        if (tried_ > most) return;
        Set without(kept.begin(), kept.begin() + static_cast<std::ptrdiff_t>(from));
        const std::size_t to = std::min(kept.size(), from + chunk);
        without.insert(without.end(), kept.begin() + static_cast<std::ptrdiff_t>(to), kept.end());
        if (!without.empty() && still(without)) {
          kept = std::move(without);
          went = true;
        } else {
          from += chunk;
        }
      }
      // an edit that could not go may be free to once another has gone
      if (chunk > 1) {
        chunk = (chunk + 1) / 2;
      } else if (!went) {
        chunk = 0;
      }
    }
    found_[thing].push_back(std::move(kept));
  }

  std::size_t edits_;
  const Shows& shows_;
  std::vector<std::vector<Set>> found_;
  std::vector<bool> closed_;
  std::size_t tried_ = 0;
};

}  // namespace

std::vector<std::vector<Set>> causes(std::size_t edits, std::size_t things, const Shows& shows,
                                     std::size_t most) {
  return Search(edits, things, shows).run(most);
}

}  // namespace sudsmark::change
