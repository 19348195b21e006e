# ask_bash.sh SCRIPT WORD...: what bash offers for the last word. It takes `=` for a word, as bash does.
source "$1"
shift
COMP_WORDS=()
for word in "$@"; do
  if [[ $word == --*=* ]]; then
    COMP_WORDS+=("${word%%=*}" = "${word#*=}")
    shown=${word%%=*}=
  else
    COMP_WORDS+=("$word")
    shown=
  fi
done
COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
_sudsmark
for word in "${COMPREPLY[@]}"; do echo "$shown$word"; done
