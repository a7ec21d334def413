#!/bin/sh
# Prints TAP: every file with words for people is listed for translators, and every language is sound.
# usage: check-translations.sh FOLDER
cd "$1" || exit 1
n=0
# report FAULTS NAME: passed when there are no faults.
report ()
{
  n=$((n + 1))
  if [ -z "$1" ]; then
    echo "ok $n - $2"
  else
    echo "not ok $n - $2"
    printf '%s\n' "$1" | sed 's/^/# /'
  fi
}
list=$(mktemp)
trap 'rm -f "$list"' EXIT
sort po/POTFILES.in > "$list"
report "$(grep -rlE '\b(_|N_|C_|ngettext) \(|translatable="yes"' src ui 2>/dev/null | grep -E '\.(c|h|ui)$' | sort | comm -23 - "$list")" \
       "every file with words for people is in po/POTFILES.in"
report "$(xargs ls -d < "$list" 2>&1 >/dev/null)" "every file in po/POTFILES.in is there"
for language in $(grep -v '^#' po/LINGUAS); do
  report "$(msgfmt --check --output-file=/dev/null "po/$language.po" 2>&1)" "po/$language.po is sound"
done
echo "1..$n"
