#!/usr/bin/env python3
"""Prints TAP: `rowcut-cli nest` by itself, and on the published packing instances where they are at hand."""
import random
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


TIED = """label,width,length,quantity,repeat,match,across_repeat,across_phase,roll,along
Hall 1,3.66 m,4.2 m,1,,,,,,
Fill 2,0.9 m,2.1 m,2,0.6 m,hall,,,,
Stair 3,0.8 m,0.5 m,4,,,,,,
Pinned 4,1.2 m,1.5 m,1,,,,,1,9 m
Motif 5,1.1 m,2 m,1,0.6 m,hall,0.5 m,0.25 m,,
"""
ROLLS = """name,length,count,lot,value,trim,trim_end,damaged
R7,14 m,1,A,8,0.05 m,0.1 m,6 m to 6.4 m
R8,9 m,1,A,8,,,
,,,,12,,0.1 m,
"""


def check_ties():
    """Pins, matches, patterns across, trims, damage, leftovers: read back from the JSON, by arithmetic of its own."""
    cuts, rolls = tap.write("tied.csv", TIED), tap.write("rolls.csv", ROLLS)
    options = [cuts, "--rolls", rolls, "--roll-width", "4 m", "--least-balance", "1 m", "--least-balance-width", "0.5 m"]
    answer = tap.answer("nest", *options)
    if not tap.ok(answer is not None, "ties, trims and damage: nest answers"):
        return
    named = {}
    for cut in answer["cuts"]:
        named.setdefault(cut["label"], []).append(cut)
    stock = {roll["roll"]: roll["stock"] for roll in answer["rolls"]}
    tap.ok(stock[named["Pinned 4"][0]["roll"]] == "R7" and named["Pinned 4"][0]["along"] == 9000,
           "the pinned cut lies 9 m along the first roll")
    tap.equal(len({cut["along"] % 600 for cut in named["Fill 2"] + named["Motif 5"]}), 1,
              "all of one match lie at one height of a repeat of 600 mm")
    tap.equal(named["Motif 5"][0]["across"] % 500, 250, "the pattern across has its phase of 250 in 500 mm")
    on_first = [cut for cut in answer["cuts"] if stock[cut["roll"]] == "R7"]
    tap.ok(all(cut["along"] >= 50 and cut["along"] + cut["length"] <= 13900 and
               (cut["along"] >= 6400 or cut["along"] + cut["length"] <= 6000) for cut in on_first),
           "nothing lies in the trimmed ends or over the damage")
    tap.ok(answer["leftovers"] and all(rest["length"] >= 1000 and rest["width"] >= 500
                                       for rest in answer["leftovers"]), "leftovers are of the least sizes")
    freed = sorted(label for stroke in answer["strokes"] for label in stroke["frees"])
    tap.equal(freed, sorted(cut["label"] for cut in answer["cuts"]), "every cut comes out at one stroke")
    text = tap.run("nest", *options).stdout
    tap.ok("R7, dye lot A" in text and "-> out comes Hall 1" in text and "left over:" in text,
           "the text is a plan to cut by", text)
    for row, words in [("A,1 m,1 m,1,,,,,1,13.5 m", "ends 0.600 m"), ("A,1 m,1 m,1,,,,,1,5.5 m", "damaged"),
                       ("A,1 m,1 m,1,,,,,1,0", "trimmed off"), ("A,1 m,1 m,1,,,,,9,1 m", "there are only 3"),
                       ("A,1 m,1 m,1,0.5 m,,,,,1.2 m", "falls at 1.000 m")]:
        bad = tap.write("bad-tied.csv", TIED.splitlines()[0] + "\n" + row + "\n")
        process = tap.run("nest", bad, "--rolls", rolls, "--roll-width", "4 m")
        tap.ok(process.returncode == 1 and words in process.stderr, f"{row}: says {words}", process.stderr)


def check_stock():
    """Stock of several lengths, and repeats, by the checker that is not ours."""
    if tap.SHARED is None or not (tap.SHARED / "tools" / "check-nest").is_file():
        tap.skip("stock and repeats by a checker not ours", "RC_SHARED does not name it")
        return
    rand = random.Random(7)
    for case in range(24):
        rows = ["label,width,length,quantity,repeat,phase"]
        for k in range(rand.randint(5, 40)):
            width = 3660 if rand.random() < 0.4 else rand.randint(300, 3000)
            pattern = rand.choice([",", "600 mm,0 mm", f"640 mm,{rand.randint(0, 600)} mm"]) if case % 3 else ","
            rows.append(f"c{k},{width} mm,{rand.randint(400, 6000)} mm,{rand.randint(1, 2)},{pattern}")
        cuts = tap.write("stock.csv", "\n".join(rows) + "\n")
        stages = "any" if case % 4 == 3 else "3"
        process = tap.run("nest", cuts, "--roll-width", "366 cm", "--stock", "9 mx3", "--stock", "17.5 mx2",
                          "--stock", "30 m", "--buy", "--stages", stages, "--seconds", "0.1", "--json")
        checked = subprocess.run([sys.executable, tap.SHARED / "tools" / "check-nest", cuts,
                                  tap.write("answer.json", process.stdout), "--stages", stages],
                                 capture_output=True, text=True)
        tap.ok(process.returncode == 0 and checked.returncode == 0, f"stock {case}: {checked.stdout.strip()}",
               process.stderr + checked.stderr)


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
check_ties()
check_stock()
check_packing()
tap.done()
