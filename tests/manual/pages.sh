#!/bin/bash
# Every command has its manual page, the program's page names each, every option that the help tells
# stands in its page, and no page has a line that the typesetter warns of.
#
#     pages.sh PROGRAM FOLDER
set -eu
program=$1 pages=$2/man1
for needed in man groff col; do
  command -v "$needed" >/dev/null || { echo "skipped: $needed is not installed"; exit 77; }
done
wrong=0
complain() { echo "$*"; wrong=1; }

plain() { # a page as words, hyphens as they are typed
  LC_ALL=C.UTF-8 MANWIDTH=1000 man -l "$1" 2>/dev/null | col -bx | sed 's/‐/-/g'
}

count=0
overview=$(plain "$pages/sudsmark.1")
for command in $("$program" help | sed -n 's/^  \([a-z]\+\) .*/\1/p' | grep -vx help); do
  count=$((count + 1))
  page=$pages/sudsmark-$command.1
  test -s "$page" || { complain "$command has no page"; continue; }
  grep -q "sudsmark-$command(1)" <<<"$overview" || complain "sudsmark(1) does not name $command"
  words=$(plain "$page")
  for option in $("$program" help "$command" | grep -o '^  --[a-z-]*'); do
    grep -q -e "^ *$option\b" <<<"$words" || complain "$page does not tell of $option"
  done
done
test "$count" -eq "$(($(ls "$pages" | wc -l) - 1))" || complain "a page is of no command"

for page in "$pages"/*.1; do
  said=$(LC_ALL=C.UTF-8 MANROFFSEQ='' MANWIDTH=80 \
         man --warnings -E UTF-8 -l -Tutf8 -Z "$page" 2>&1 >/dev/null)
  test -z "$said" || complain "$page: $said"
done
echo "$count commands"
exit $wrong
