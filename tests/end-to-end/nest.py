#!/usr/bin/env python3
"""Prints TAP: `rowcut-cli nest` by itself, and on the published packing instances where they are at hand."""
import subprocess
import sys

import tap

CUTS = "label,width,length,quantity\nlounge,12 ft,15',2\nhall,3'6\",10 ft,3\nstair,0.9 m,4100 mm,1\n"


def check_answer():
    cuts = tap.write("cuts.csv", CUTS)
    answer = tap.answer("nest", cuts, "--roll-width", "12 ft")
    if not tap.ok(answer is not None, "nest answers"):
        return
    tap.equal(answer["roll_width"], 3657.6, "the roll is 12 ft wide, 3657.6 mm (0.3048 m a foot)")
    tap.equal(sorted(c["label"] for c in answer["cuts"]), ["hall"] * 3 + ["lounge"] * 2 + ["stair"],
              "every cut is placed")
    for field in ("label", "roll", "across", "along", "width", "length"):
        tap.ok(all(field in c for c in answer["cuts"]), f"cuts say {field}")
    tap.ok(answer["lower_bound"] <= answer["used_length"], "the bound is not above what is used")
    # 2 x 15 ft, then three halls side by side (10 ft 6 in) with 10 ft; the stair's 0.9 m does not fit beside them in
    # 12 ft, so it takes its own length or lies beside fewer halls: at least 30 ft + 10 ft.
    tap.ok(answer["used_length"] >= 40 * 304.8 - 0.01, "no less than the cuts that cannot share a width")
    again = tap.run("nest", cuts, "--roll-width", "12 ft", "--json")
    tap.equal(again.stdout, tap.run("nest", cuts, "--roll-width", "12 ft", "--json").stdout, "twice the same answer")


def check_faults():
    cuts = tap.write("cuts.csv", CUTS)
    bad = tap.write("bad.csv", "label,width,length,quantity\nlounge,12 ft,15 parsecs,2\n")
    headless = tap.write("headless.csv", "lounge,12 ft,15 ft,2\n")
    table = [
        (["nest"], 2, "CUTS.csv"),
        (["nest", cuts], 2, "--roll-width"),
        (["nest", cuts, "--roll-width", "wide"], 2, "wide"),
        (["nest", cuts, "--roll-width", "12 ft", "--stages", "4"], 2, "--stages"),
        (["nest", cuts, "--roll-width", "12 ft", "--colour"], 2, "--colour"),
        (["nest", cuts, "--roll-width", "3 ft"], 1, "lounge"),
        (["nest", bad, "--roll-width", "12 ft"], 1, "bad.csv"),
        (["nest", headless, "--roll-width", "12 ft"], 1, "headless.csv"),
        (["nest", tap.home / "absent.csv", "--roll-width", "12 ft"], 1, "absent.csv"),
        (["nest", cuts, "--roll-width", "12 ft", "--stock", "2 m"], 1, ""),
    ]
    for arguments, status, words in table:
        process = tap.run(*arguments)
        shown = " ".join(str(a).replace(str(tap.home) + "/", "") for a in arguments)
        tap.ok(process.returncode == status and words in process.stderr and process.stdout == "" and process.stderr,
               f"{shown}: exit {status}, says {words!r}",
               f"exit {process.returncode}, out {process.stdout!r}, err {process.stderr!r}")


def check_packing():
    """Every published instance, both cutting modes, by a checker that is not ours."""
    if tap.SHARED is None or not (tap.SHARED / "packing").is_dir():
        tap.skip("published packing instances", "RC_SHARED does not name them")
        return
    tools = tap.SHARED / "tools"
    for path in sorted((tap.SHARED / "packing").glob("*/*.txt")):
        made = subprocess.run([sys.executable, tools / "packing-to-csv", path], capture_output=True, text=True,
                              check=True)
        cuts = tap.write(f"{path.stem}.csv", made.stdout)
        width = made.stderr.split("strip width", 1)[1].strip()
        for stages in ("3", "any"):
            process = tap.run("nest", cuts, "--roll-width", width, "--stages", stages, "--seconds", "0.2", "--json")
            result = tap.write("answer.json", process.stdout)
            checked = subprocess.run([sys.executable, tools / "check-nest", cuts, result, "--stages", stages],
                                     capture_output=True, text=True)
            tap.ok(process.returncode == 0 and checked.returncode == 0,
                   f"{path.stem}, stages {stages}: {checked.stdout.strip()}", process.stderr + checked.stderr)


check_answer()
check_faults()
check_packing()
tap.done()
