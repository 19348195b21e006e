#!/bin/bash
# The Debian package of a build: it holds what it should, and lintian finds no error in it.
#
#     debian.sh BUILD CPACK
set -eu
build=$1 cpack=$2
for needed in dpkg-shlibdeps file lintian; do
  command -v "$needed" >/dev/null || { echo "skipped: $needed is not installed"; exit 77; }
done
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

"$cpack" -G DEB --config "$build/CPackConfig.cmake" -B "$scratch" >"$scratch/told" 2>&1 ||
  { cat "$scratch/told"; exit 1; }
package=$(echo "$scratch"/*.deb)

held=$(dpkg-deb --contents "$package")
for path in usr/bin/sudsmark usr/share/man/man1/sudsmark.1.gz usr/share/man/man1/sudsmark-check.1.gz \
            usr/share/bash-completion/completions/sudsmark usr/share/zsh/vendor-completions/_sudsmark \
            usr/share/fish/vendor_completions.d/sudsmark.fish usr/share/doc/sudsmark/copyright \
            usr/share/doc/sudsmark/changelog.gz usr/share/sudsmark/schema/report.schema.json; do
  grep -q " \./$path$" <<<"$held" || { echo "the package does not hold $path"; exit 1; }
done
! grep -E ' \./usr/(include|lib)/' <<<"$held" || { echo "the package holds more than the program"; exit 1; }
version=$("$build/sudsmark" --version)
test "sudsmark $(dpkg-deb --field "$package" Version)" = "$version"

# The program is taken out of the package and runs.
dpkg-deb --extract "$package" "$scratch/unpacked"
test "$("$scratch/unpacked/usr/bin/sudsmark" --version)" = "$version"
zcat "$scratch/unpacked/usr/share/doc/sudsmark/changelog.gz" | head -1 | grep -q "(${version#sudsmark })"

lintian --allow-root --fail-on error "$package"
