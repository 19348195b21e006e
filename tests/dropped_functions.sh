#!/bin/bash
# Links each program of ours once more and asks the linker which sections nobody reaches. A function
# of ours that no program reaches is tested at best and never run: it is used or deleted. What
# include/sudsmark declares is for programs that embed the checker, and may stand unused here.
#
#     dropped_functions.sh INCLUDE-DIR LIBRARY COMPILER FLAG... -- LIBRARY-OF-OTHERS...
#                          -- OBJECT-OR-FLAG-OF-A-PROGRAM... [-- OBJECT-OR-FLAG...]...
set -eu
front=$1 library=$2
shift 2
group=()
take_group() {  # up to the next "--"; what is left is in `left`
  group=()
  while [ $# -gt 0 ] && [ "$1" != -- ]; do group+=("$1"); shift; done
  [ $# -eq 0 ] || shift
  left=("$@")
}
take_group "$@"; link=("${group[@]}")
take_group "${left[@]}"; others=("${group[@]}")

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$scratch"

# Without a section a function nothing could ever be dropped, and the test would be blind.
if ! readelf -SW "$library" | grep -q '\.text\._ZN8sudsmark'; then
  echo "the objects of $library have no section a function (-ffunction-sections)"
  exit 1
fi

# Strong symbols alone: templates and inline functions are weak, and each file has its own copy.
functions_of() {
  nm --defined-only "$@" 2>/dev/null | awk '$2 == "T" { print $3 }' | grep '^_ZNK\?8sudsmark' | sort -u
}

: >all
: >reached
programs=0
while [ ${#left[@]} -gt 0 ]; do
  take_group "${left[@]}"
  objects=()
  for word in "${group[@]}"; do case $word in *.o) objects+=("$word") ;; esac; done
  "${link[@]}" "${group[@]}" -Wl,--whole-archive "$library" -Wl,--no-whole-archive "${others[@]}" \
    -Wl,--gc-sections -Wl,--print-gc-sections -o program >told 2>&1 || { cat told; exit 1; }
  grep -o '\.text\._Z[A-Za-z0-9_]*' told | sed 's/^\.text\.//' | sort -u >dropped
  functions_of "$library" "${objects[@]}" >defined
  comm -13 dropped defined >>reached
  cat defined >>all
  programs=$((programs + 1))
done
sort -u -o all all
sort -u -o reached reached

# Of the street front: names that a public header declares, outside the rooms' namespaces.
grep -ohE '\b[a-z_]+ ?\(' "$front"/sudsmark/*.h | tr -d ' (' | sort -u >public
comm -13 reached all | c++filt | while read -r function; do
  name=${function%%(*}
  case $name in
    sudsmark::[a-z]*::*) ;;
    *) grep -qx "${name##*::}" public && continue ;;
  esac
  echo "$function"
done >unused

echo "$programs programs, $(wc -l <all) functions, $(wc -l <reached) reached"
if [ ! -s reached ] || [ -s unused ]; then
  echo "reached from no program; use them or delete them:"
  sed 's/^/  /' unused
  exit 1
fi
