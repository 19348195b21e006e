#!/bin/bash
# A shell completes every command, and every option that the help tells of; what is offered behind an
# option or for a word is tried on a few.
#
#     completion.sh SHELL PROGRAM FOLDER        (bash or fish; zsh, which completes at a terminal alone,
#                                                reads the script, and the words are looked for in it)
set -eu
shell=$1 program=$2 scripts=$3/completion
folder=$(cd "$(dirname "$0")" && pwd)
command -v "$shell" >/dev/null || { echo "skipped: $shell is not installed"; exit 77; }
wrong=0
asked=0

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
mkdir "$scratch/more"
touch "$scratch/sea.formula" "$scratch/sea.txt"

# What the shell offers for the line that the words make, one a line. The last may be empty.
offered() {
  case $shell in
    bash) (cd "$scratch" && bash --norc "$folder/ask_bash.sh" "$scripts/sudsmark.bash" "$@") ;;
    fish) (cd "$scratch" && HOME=$scratch fish --no-config -c 'source $argv[1]; complete -C "$argv[2]"' \
             "$scripts/sudsmark.fish" "$*" | cut -f 1) ;;
  esac
}

# wants WORD WORDS-OF-THE-LINE...
wants() {
  local word=$1
  shift
  asked=$((asked + 1))
  offered "$@" | grep -qxF -e "$word" || { echo "'$*' is not completed to '$word'"; wrong=1; }
}

# wants_no WORD WORDS-OF-THE-LINE...
wants_no() {
  local word=$1
  shift
  ! offered "$@" | grep -qxF -e "$word" || { echo "'$*' is completed to '$word'"; wrong=1; }
}

if [ "$shell" = zsh ]; then
  zsh -n "$scripts/_sudsmark"
  for command in $("$program" help | sed -n 's/^  \([a-z]\+\) .*/\1/p' | grep -vx help); do
    grep -q "^    '$command:" "$scripts/_sudsmark" || { echo "$command is not offered"; wrong=1; }
    branch=$(sed -n "/^        $command)/,/;;/p" "$scripts/_sudsmark")
    for option in $("$program" help "$command" | grep -o '^  --[a-z-]*'); do
      asked=$((asked + 1))
      grep -q -e "'\*\?$option=\?\[" <<<"$branch" || { echo "$command: no $option"; wrong=1; }
    done
  done
  echo "$asked options looked for"
  exit $wrong
fi

for command in $("$program" help | sed -n 's/^  \([a-z]\+\) .*/\1/p'); do
  wants "$command" sudsmark "${command%?}"
  test "$command" != help || continue
  wants "$command" sudsmark help "${command%?}"
  told=$("$program" help "$command" | grep -o '^  --[a-z-]*')
  given=$(offered sudsmark "$command" --)
  for option in $told; do
    asked=$((asked + 1))
    grep -qxF -e "$option" <<<"$given" || { echo "$command: $option is not offered"; wrong=1; }
  done
done

wants sarif sudsmark check --format s
wants --format=sarif sudsmark check --format=s
wants never sudsmark check --color n
wants dust-burns sudsmark check --only dust-bu
wants dust-burns,dust-hurts-eyes sudsmark check --only dust-burns,dust-hu
wants EU,GB sudsmark label --market EU,G
wants dust-burns sudsmark explain dust-bu
wants bath.ph sudsmark explain bath.p
wants workshop sudsmark drill worksh
wants sea.formula sudsmark check s
wants_no sea.txt sudsmark check s
wants sea.txt sudsmark check --output s
wants_no sea.formula sudsmark check --on s
wants_no --sheet sudsmark check --
echo "$asked lines asked of $shell"
exit $wrong
