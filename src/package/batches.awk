# Puts files into batches, each of which is compiled as one: the headers that all of them read are what takes the time.
#
#     awk -v most=N [-v anywhere=1] -f batches.awk FILE...
#
# Prints a line `FILE;BATCH` a file, N files a batch at most. A file joins the first batch of its folder (of any
# folder with `anywhere`) where no name that one of the two keeps to itself (unnamed namespace) stands anywhere in
# the other, and none is brought in from two places.
FNR == 1 {
  file[++files] = FILENAME
  folder[files] = FILENAME
  sub(/\/[^\/]*$/, "", folder[files])
  unnamed = 0
}
/^}  \/\/ namespace$/ { unnamed = 0 }
{
  gsub(/"(\\.|[^"\\])*"/, "\"\"")
  sub(/\/\/.*/, "")
  for (rest = $0; match(rest, /[A-Za-z_][A-Za-z_0-9]*/); rest = substr(rest, RSTART + RLENGTH))
    said[files, substr(rest, RSTART, RLENGTH)]
}
/^namespace \{/ { unnamed = 1; next }
/^using [a-z_:]*::[A-Za-z_]*;/ || /^namespace [a-z_]+ = / {
  name = from = $2
  sub(/.*::|;/, "", name)
  sub(/;/, "", name)
  brought[files, name] = from $4
  uses[files] = uses[files] " " name
  next
}
unnamed && /^[A-Za-z]/ && !/^template/ {
  sub(/[({=;].*| : .*/, "")
  gsub(/\[[^]]*\]/, "")
  sub(/ +$/, "")
  if (match($0, /[a-z][A-Za-z_0-9]*$|[A-Z][A-Za-z_0-9]*[a-z][A-Za-z_0-9]*$/)) keeps[files] = keeps[files] " " substr($0, RSTART)
}

function clash(a, b,    names, count, i) {
  count = split(keeps[a], names, " ")
  for (i = 1; i <= count; i++)
    if ((b, names[i]) in said) return 1
  count = split(uses[a], names, " ")
  for (i = 1; i <= count; i++)
    if ((b, names[i]) in brought && brought[b, names[i]] != brought[a, names[i]]) return 1
  return 0
}
function fits(f, b,    i) {
  if ((place[b] != folder[f] && !anywhere) || size[b] >= most) return 0
  for (i = 1; i <= size[b]; i++)
    if (clash(f, member[b, i]) || clash(member[b, i], f)) return 0
  return 1
}
END {
  for (f = 1; f <= files; f++) {
    for (b = 1; b <= batches && !fits(f, b); b++);
    if (b > batches) place[++batches] = folder[f]
    member[b, ++size[b]] = f
    print file[f] ";" b
  }
}
