#!/bin/sh
# analyse.sh [FILE...]: looks through the sources without running them, all or those named, by gcc's analyser (the folders
# without GTK), cppcheck and clang-tidy; prints what they find and fails when there is anything. Wants cppcheck,
# clang-tidy and the usual build in build/. For all files clang-tidy takes most of an hour.
set -eu
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
cd "$root"
[ $# -gt 0 ] || set -- src/*/*.c
found=0

# Each file as the build compiles it, at -O1, where the analyser sees through small functions and is done in time.
for file; do
  case $file in src/desk/*) continue ;; esac
  command=$(ninja -C build -t commands | grep -F -- "-c ../$file" | sed 's/ -MD -MQ [^ ]* -MF [^ ]*//; s/ -O2/ -O1/; s/ -o [^ ]*/ -o \/dev\/null -fanalyzer/' | head -n 1)
  (cd build && eval "$command") || found=1
done

# NULL at the end of an argument list is a pointer in C; without GLib's macros cppcheck gives up on most files.
cppcheck -q --inline-suppr --library=gtk "-DG_GNUC_PRINTF(a,b)=" --enable=warning,performance,portability \
  --suppress=varFuncNullUB --error-exitcode=1 "$@" || found=1

clang-tidy -p build --quiet "$@" || found=1
exit "$found"
