#!/bin/sh
# Installs what is missing, builds Rowcut, and takes the demo job from its measures to a price and to paper.
set -eu
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/data/setup.sh"

install_packages $build_packages
build_program "$root/build"

rowcut="$root/build/rowcut-cli"
job="$root/data/demo-job.xml"
demo="$root/build/demo"
mkdir -p "$demo"

echo
echo "== The plan"
"$rowcut" plan "$job" --store "$demo/store.db"
echo
echo "== What it takes"
"$rowcut" quantities "$job" --store "$demo/store.db"
echo
echo "== The price"
"$rowcut" quote "$job" --store "$demo/store.db" --ubl "$demo/quotation.xml"
echo
echo "== On paper"
"$rowcut" sheets "$job" --store "$demo/store.db" --to "$demo"
echo
echo "The sheets are in $demo"
echo "The desktop program: \"$root/build/rowcut\""
