// What the YAML reader says.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::text::yaml_messages {

inline constexpr Message too_large{"yaml-too-large", "the file is larger than {0} MiB"};
inline constexpr Message too_many{"yaml-too-many", "the file holds more than {0} entries"};
inline constexpr Message too_many_signs{
    "yaml-too-many-signs",
    "the file holds more than {0} commas and brackets: write lists line by line"};
inline constexpr Message too_deep{"yaml-too-deep", "lists and keys are nested more than {0} deep"};
inline constexpr Message not_utf8{"yaml-not-utf8", "this byte is not UTF-8"};
inline constexpr Message control_character{"yaml-control-character",
                                           "the control character {0} cannot stand in a text"};
inline constexpr Message tab{"yaml-tab", "a tab: use blanks, since nobody sees how wide a tab is"};
inline constexpr Message directive{"yaml-directive",
                                   "a line that begins with '%' (a YAML directive) is not allowed"};
inline constexpr Message second_document{"yaml-second-document",
                                         "a second document begins here; a file holds only one"};
inline constexpr Message anchor{"yaml-anchor",
                                "anchors ('&') are not allowed: write the value out"};
inline constexpr Message alias{"yaml-alias", "aliases ('*') are not allowed: write the value out"};
inline constexpr Message tag{
    "yaml-tag", "tags ('!') are not allowed; a text that begins with '!' goes in quotes"};
inline constexpr Message duplicate_key{"yaml-duplicate-key", "the key '{0}' stands here twice"};
inline constexpr Message key_not_text{"yaml-key-not-text", "a key must be a text, not {0}"};
inline constexpr Message key_missing{"yaml-key-missing", "a key is missing before the colon"};
inline constexpr Message colon_missing{"yaml-colon-missing",
                                       "expected ': ' and a value after '{0}' on its line"};
inline constexpr Message quote_open{"yaml-quote-open", "this quote is never closed"};
inline constexpr Message bracket_open{"yaml-bracket-open", "this '{0}' is never closed"};
inline constexpr Message bracket_unexpected{"yaml-bracket-unexpected",
                                            "'{0}' closes nothing that is open here"};
inline constexpr Message separator_missing{
    "yaml-separator-missing",
    "expected ',' or '{0}' here, to go on with or to close what began before"};
inline constexpr Message second_colon{"yaml-second-colon",
                                      "a second ': ' on one line, or a key that is not indented "
                                      "like its neighbours; a text with ': ' "
                                      "in it goes in quotes"};
inline constexpr Message dash_unexpected{
    "yaml-dash-unexpected", "a list entry ('- ') cannot begin here: check the indentation"};
inline constexpr Message cannot_begin{"yaml-cannot-begin",
                                      "a text cannot begin with '{0}': put it in quotes"};
inline constexpr Message bad_escape{
    "yaml-bad-escape",
    "an escape ('\\') in double quotes that does not exist; write '\\\\' for one '\\'"};
inline constexpr Message bad_block{
    "yaml-bad-block", "after '|' or '>' only '+', '-' and one digit of indentation may stand"};
inline constexpr Message misplaced{
    "yaml-misplaced",
    "this does not go on with what stands before it: check indentation and quotes"};
inline constexpr Message unreadable{"yaml-unreadable", "this cannot be read as YAML"};

// Of the typed reading of a tree.
inline constexpr Message expected{"wrong-kind", "expected {0}, found {1}"};
inline constexpr Message empty_text{"empty-text", "expected a text, found an empty one"};
inline constexpr Message key_unknown{"unknown-key", "'{0}' is not a key that is known here{1}"};
inline constexpr Message key_needed{"missing-key", "the key '{0}' is missing"};

}  // namespace sudsmark::text::yaml_messages
