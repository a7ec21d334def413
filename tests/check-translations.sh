#!/bin/sh
# Prints TAP: every file with words for people is listed for translators, and every language is sound.
# usage: check-translations.sh FOLDER
cd "$1" || exit 1
n=0
report ()
{
  n=$((n + 1))
  echo "$1 $n - $2"
}
for file in $(grep -rlE '\b(_|N_|C_|ngettext) \(|translatable="yes"' src ui 2>/dev/null | grep -E '\.(c|h|ui)$' | sort); do
  if grep -qxF "$file" po/POTFILES.in; then
    report ok "$file is listed"
  else
    report "not ok" "$file is listed"
    echo "# add it to po/POTFILES.in"
  fi
done
for file in $(grep -v '^#' po/POTFILES.in); do
  if [ -f "$file" ]; then report ok "$file is there"; else report "not ok" "$file is there"; fi
done
for language in $(grep -v '^#' po/LINGUAS); do
  if messages=$(msgfmt --check --output-file=/dev/null "po/$language.po" 2>&1); then
    report ok "po/$language.po is sound"
  else
    report "not ok" "po/$language.po is sound"
    echo "$messages" | sed 's/^/# /'
  fi
done
echo "1..$n"
