#!/bin/bash
# Links the program once more and asks the linker which sections nobody reaches. A function of ours
# among them is tested at best and never run: it is used or deleted. What include/sudsmark declares
# is for programs that embed the checker, and may stand unused here.
#
#     dropped_functions.sh INCLUDE-DIR LIBRARY COMPILER FLAG... OBJECT... -- LIBRARY-OF-OTHERS...
set -eu
front=$1 library=$2
shift 2
ours=() others=()
while [ $# -gt 0 ] && [ "$1" != -- ]; do ours+=("$1"); shift; done
[ $# -eq 0 ] || shift
others=("$@")

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$scratch"

# Without a section a function nothing could ever be dropped, and the test would be blind.
if ! readelf -SW "$library" | grep -q '\.text\._ZN8sudsmark'; then
  echo "the objects of $library have no section a function (-ffunction-sections)"
  exit 1
fi

"${ours[@]}" -Wl,--whole-archive "$library" -Wl,--no-whole-archive "${others[@]}" \
  -Wl,--gc-sections -Wl,--print-gc-sections -o program >told 2>&1 || { cat told; exit 1; }
grep -o '\.text\._Z[A-Za-z0-9_]*' told | sed 's/^\.text\.//' | sort -u >dropped

# Strong symbols alone: templates and inline functions are weak, and each file has its own copy.
objects=()
for word in "${ours[@]}"; do case $word in *.o) objects+=("$word") ;; esac; done
nm --defined-only "$library" "${objects[@]}" 2>/dev/null | awk '$2 == "T" { print $3 }' |
  grep '^_ZNK\?8sudsmark' | sort -u >defined

# Of the street front: names that a public header declares, outside the rooms' namespaces.
grep -ohE '\b[a-z_]+ ?\(' "$front"/sudsmark/*.h | tr -d ' (' | sort -u >public
comm -12 dropped defined | c++filt | while read -r function; do
  name=${function%%(*}
  case $name in
    sudsmark::[a-z]*::*) ;;
    *) grep -qx "${name##*::}" public && continue ;;
  esac
  echo "$function"
done >unused

echo "$(wc -l <defined) functions, $(wc -l <dropped) sections dropped"
if [ -s unused ]; then
  echo "never reached from the program; use them or delete them:"
  sed 's/^/  /' unused
  exit 1
fi
