// Assembling: a named file, all that it includes and the bases of its tweaks, into one Card.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "formula/card.h"
#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula {

/// Answers the bytes of a path, or none if it cannot be read. The library itself opens no file but
/// through one of these, so that it can also run where there is no file system.
using ReadFile = std::function<std::optional<std::string>(const std::string& path)>;

/// One spelling for all names of one thing ("SLSA" and "sodium lauryl sulfoacetate"), for finding
/// the line that a tweak means. The catalogue knows; without one, names are only folded.
using SameName = std::function<std::string(std::string_view name)>;

/// What a tweak is a tweak of, as it stands before any edit.
struct TweakBase {
  std::optional<Card> card;    ///< none: the named file is no tweak
  text::Diagnostics problems;  ///< of the base alone, which its tweak may have mended
};

struct AssembleOptions {
  ReadFile read = nullptr;
  SameName same_name = nullptr;
  /// Included paths may leave the folder of the named file.
  bool allow_outside = false;
  /// Give a card also after errors, with `whole` false, so that its names can still be looked up.
  bool partial = false;
  /// What to make of the formula instead of what it states [g]: the same shares, other weighings,
  /// as `scale batch to` in a tweak.
  std::optional<double> batch = std::nullopt;
  /// May change the tweak of the named file before it is applied, and so leave edits out.
  std::function<void(Tweak& tweak)> revise = nullptr;
  /// Filled where the named file is a tweak: its own base, without `batch`.
  TweakBase* base = nullptr;
};

/// Parses `file` (already in `sources`) and all that it includes, checks what can be checked
/// without a catalogue (names given twice, circles, bounds of the include tree, units that no
/// premix has, portions that do not sum to 100 %), applies tweaks, and returns the card; none if
/// the file is a library or after an error (but see `partial`). Errors are added to `diagnostics`.
[[nodiscard]] std::optional<Card> assemble(text::Sources& sources, text::FileIndex file,
                                           const AssembleOptions& options,
                                           text::Diagnostics& diagnostics);

}  // namespace sudsmark::formula
