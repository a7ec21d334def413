#!/bin/sh
# fuzz.sh TARGET SECONDS: a search for input that the parser TARGET (length, job-file, ...) does not stand, by libFuzzer
# under the address and undefined-behaviour sanitizers. Wants clang and libclang-rt, and the usual build in build/. What
# is trouble is left in tests/corpus/TARGET/, where every later test run tries it again; what it learned, in build-fuzz/.
set -eu
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
target=$1
seconds=$2
build=$root/build-fuzz
sanitize=address,undefined
# The child that reads pictures has limits that leave no room for a sanitizer; the libraries it holds have none anyway.
if [ "$target" = picture ]; then
  build=$root/build-fuzz-picture
  sanitize=none
fi
learned=$build/learned/$target
found=$root/tests/corpus/$target

if [ ! -f "$build/build.ninja" ]; then
  CC=${CC:-clang} meson setup "$build" "$root" -Db_lundef=false -Db_sanitize="$sanitize" \
    -Dc_args="-fsanitize=fuzzer-no-link -DRC_FUZZER"
fi
ninja -C "$build" "tests/fuzz-$target"
ninja -C "$root/build" "tests/fuzz-$target"
mkdir -p "$learned" "$found"
RC_FUZZ_SAMPLES=$learned "$root/build/tests/fuzz-$target"
# The time limit is by the clock: at the lowest priority of a busy machine a second's work may take a minute.
exec "$build/tests/fuzz-$target" -max_total_time="$seconds" -rss_limit_mb=2048 -timeout=600 -report_slow_units=60 \
  -max_len=1000000 -print_final_stats=1 -artifact_prefix="$found/" "$learned" "$found"
