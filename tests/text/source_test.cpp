// Places in files: bytes, lines and columns.
#include "text/source.h"

#include <doctest/doctest.h>

#include <string>

namespace sudsmark::text {

TEST_CASE("offsets become lines and columns from 1") {
  const Source source("a", "one\ntwo\n\nfour");
  CHECK(source.position(0) == Position{1, 1});
  CHECK(source.position(2) == Position{1, 3});
  CHECK(source.position(3) == Position{1, 4});  // the line end itself
  CHECK(source.position(4) == Position{2, 1});
  CHECK(source.position(8) == Position{3, 1});
  CHECK(source.position(9) == Position{4, 1});
  CHECK(source.position(13) == Position{4, 5});
  CHECK(source.position(99) == Position{4, 5});  // past the end is the end
}

TEST_CASE("columns are code points, not bytes") {
  const Source source("a", "süß \xF0\x9F\x9B\x81 x");
  CHECK(source.position(3) == Position{1, 3});
  CHECK(source.position(5) == Position{1, 4});
  CHECK(source.position(11) == Position{1, 7});
}

TEST_CASE("a byte order mark takes no column") {
  const Source source("a", "\xEF\xBB\xBFone\ntwo");
  CHECK(source.position(0) == Position{1, 1});
  CHECK(source.position(3) == Position{1, 1});
  CHECK(source.position(4) == Position{1, 2});
  CHECK(source.position(7) == Position{2, 1});
}

TEST_CASE("CRLF counts as one line end") {
  const Source source("a", "one\r\ntwo\r\n");
  CHECK(source.position(5) == Position{2, 1});
  CHECK(source.line(1) == "one");
  CHECK(source.line(2) == "two");
  CHECK(source.line(3).empty());
}

TEST_CASE("lines are given without their ends, and none past the last") {
  const Source source("a", "one\n\nthree");
  CHECK(source.line(1) == "one");
  CHECK(source.line(2).empty());
  CHECK(source.line(3) == "three");
  CHECK(source.line(0).empty());
  CHECK(source.line(4).empty());
}

TEST_CASE("an empty file has one empty line") {
  const Source source("a", "");
  CHECK(source.position(0) == Position{1, 1});
  CHECK(source.line(1).empty());
}

TEST_CASE("sources keep their files where they are") {
  Sources sources;
  const FileIndex first = sources.add("first", "one");
  const Source* address = &sources[first];
  for (int more = 0; more < 1000; ++more) sources.add("more", "x");
  CHECK(&sources[first] == address);
  CHECK(sources.size() == 1001);
}

TEST_CASE("a span knows its file and its first place") {
  Sources sources;
  sources.add("a", "one");
  const FileIndex file = sources.add("b", "two\nthree");
  const Span span{file, 4, 9};
  CHECK(span.somewhere());
  CHECK(sources.position(span) == Position{2, 1});
  CHECK(sources.path(span) == "b");
}

TEST_CASE("a span that is nowhere has no path and the first place") {
  const Sources sources;
  CHECK_FALSE(Span{}.somewhere());
  CHECK(sources.position(Span{}) == Position{1, 1});
  CHECK(sources.path(Span{}).empty());
}

}  // namespace sudsmark::text
