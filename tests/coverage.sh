#!/bin/sh
# coverage.sh [FOLDER...]: runs the suites core and cli in a build of their own, build-coverage/, and prints for each folder
# of src/ (those without a display) how many of its branches were taken; for each FOLDER named, file by file with the
# lines where some were not. Wants gcovr. RC_COVERAGE_TESTS names tests to run in place of the suites ("none": only
# counts what ran before). Left out is what compilers and macros make and no input takes: g_return_ and g_assert (a
# programmer's mistake ends there), g_auto and g_clear_ (a pointer that may be NULL), G_DEFINE.
set -eu
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
build=$root/build-coverage

if [ ! -f "$build/build.ninja" ]; then
  # Threads of the planner count at once.
  meson setup "$build" "$root" -Db_coverage=true -Doptimization=0 -Dc_args=-fprofile-update=atomic
fi
ninja -C "$build"
if [ "${RC_COVERAGE_TESTS:-}" != none ]; then
  find "$build" -name '*.gcda' -delete
  RC_ROUNDS=${RC_ROUNDS:-40} meson test -C "$build" --no-rebuild --num-processes "${RC_COVERAGE_JOBS:-2}" \
    ${RC_COVERAGE_TESTS:---suite core --suite cli}
fi

count ()
{
  gcovr -r "$root" --object-directory "$build" "$build/src/$1" -f "$root/src/$1/" --branches --exclude-unreachable-branches \
    --exclude-branches-by-pattern '.*\b(g_return_|g_assert|g_auto|g_clear_|g_steal_|G_DEFINE).*'
}

for folder in base geometry job nest plan quantity quote store exchange; do
  printf '%-10s %s\n' "$folder" "$(count "$folder" | awk '$1 == "TOTAL" { print $3 " of " $2 ", " $4 }')"
done
for folder; do
  count "$folder"
done
