#!/bin/sh
# Installs what is missing, builds Rowcut and runs every test, the core once more under the sanitizers. The last line
# says how many passed. Checks against published instances and schemas run when RC_SHARED names the folder that holds
# them, and are counted as skipped when it does not. Under the sanitizers, where a round takes some ten times as long,
# tests of random cases make RC_ROUNDS percent of them: 10 unless it is set.
set -eu
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/data/setup.sh"

install_packages $build_packages $test_packages
build_program "$root/build"
configure_program "$root/build-sanitize" -Db_sanitize=address,undefined -Db_lundef=false

failed=0
rm -f "$root"/build*/meson-logs/testlog*
meson test -C "$root/build" --print-errorlogs || failed=1
UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1 RC_ROUNDS=${RC_ROUNDS:-10} meson test -C "$root/build-sanitize" --print-errorlogs --suite core || failed=1
python3 "$root/tests/count-results.py" "$root/build" "$root/build-sanitize" || failed=1
exit "$failed"
