#!/usr/bin/env python3
"""Prints TAP: the largest sensible job is done, an absurd one is refused with the limit named, both in bounded time and
memory."""
import json
import resource
import time

import jobs
import tap

MEMORY = 2 * 1024 ** 3
SECONDS = 60


def bounded(*arguments):
    """Runs rowcut-cli with bounded memory; returns the process and the processor seconds it took."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, resource.RLIM_INFINITY))
    process = tap.run(*arguments, "--store", tap.home / "shop.db") if arguments[0] != "nest" else tap.run(*arguments)
    resource.setrlimit(resource.RLIMIT_AS, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return process, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def refused(arguments, words, name):
    process, seconds = bounded(*arguments)
    missing = [w for w in words if w not in process.stderr]
    tap.ok(process.returncode == 1 and not missing and seconds < SECONDS / 2, f"{name}: says {', '.join(words)}",
           f"exit {process.returncode}, {seconds:.1f} s, err {process.stderr[:500]!r}")


def check_absurd():
    def points(n):
        comb = "".join(f'<point x="{i} mm" y="{i % 2} mm"/>' for i in range(n))
        return f'<room name="Comb"><outline>{comb}<point x="{n} mm" y="9 m"/><point x="0 mm" y="9 m"/></outline></room>'

    def doors(n):
        return "".join(f'<door id="D{i}" wall="1" width="30 in"/>' for i in range(n))

    table = [
        ("a wall of 10 km", ["Hangar", "1 km"], jobs.room("Hangar", "10000 m", "20 ft")),
        ("a room of 9,000 walls", ["Comb", "4096"], points(9000)),
        ("a room of 100,000 walls", ["<outline>", "10000"], points(100000)),
        ("a room of 100,000 doors", ["<room>", "10000"], jobs.room("Parlour", "15 ft", "20 ft", doors(100000))),
        ("a million doors", ["16 MiB"], jobs.room("Parlour", "15 ft", "20 ft", doors(1000000))),
        ("6,000 rooms", ["5000"], "".join(jobs.room(f"R{i}", "9 ft", "9 ft") for i in range(6000))),
    ]
    for name, words, rooms in table:
        refused(["plan", tap.write("job.xml", jobs.job(rooms)), "--json"], words, name)

    header = "label,width,length,quantity\n"
    refused(["nest", tap.write("cuts.csv", header + "a,1 m,1 m,4000000000\n"), "--roll-width", "4 m", "--json"],
            ["line 2", "quantity"], "four thousand million cuts")


def check_repeat():
    """A repeat of nothing is no pattern; one finer than any loom is planned all the same."""
    plain = jobs.job(jobs.room("Parlour", "15 ft", "20 ft"))
    lengths = []
    for repeat in ("0", "0.01 mm"):
        text = plain.replace('roll-width="12 ft"', f'roll-width="12 ft" repeat-length="{repeat}"', 1)
        process, seconds = bounded("plan", tap.write("job.xml", text), "--json")
        tap.ok(process.returncode == 0 and seconds < SECONDS, f"a repeat of {repeat} is planned", process.stderr)
        lengths.append(process.returncode == 0 and json.loads(process.stdout)["carpet_length"])
    process, _ = bounded("plan", tap.write("job.xml", plain), "--json")
    tap.equal(lengths[0], json.loads(process.stdout)["carpet_length"], "a repeat of 0 is as no repeat")


def check_largest():
    rooms = "".join(jobs.room(f"Room {i}", f"{8 + i * 7 % 15} ft", f"{8 + i * 11 % 17} ft {i % 12} in") for i in range(2000))
    began = time.monotonic()
    process, seconds = bounded("plan", tap.write("job.xml", jobs.job(rooms)), "--json")
    plan = json.loads(process.stdout) if process.returncode == 0 else {"areas": []}
    tap.ok(sum(len(area["pieces"]) > 0 for area in plan["areas"]) == 2000 and seconds < SECONDS,
           "2,000 rooms are planned", f"{seconds:.1f} s, {process.stderr[:500]!r}")
    print(f"# 2,000 rooms: {seconds:.1f} s of processor, {time.monotonic() - began:.1f} s by the clock")

    cuts = "label,width,length,quantity\n" + "".join(
        f"c{i},{300 + i * 37 % 3300} mm,{300 + i * 53 % 5700} mm,1\n" for i in range(20000))
    process, seconds = bounded("nest", tap.write("cuts.csv", cuts), "--roll-width", "12 ft", "--seconds", "0", "--json")
    answer = json.loads(process.stdout) if process.returncode == 0 else {"cuts": []}
    tap.ok(len(answer["cuts"]) == 20000 and seconds < SECONDS, "20,000 cuts are placed",
           f"{seconds:.1f} s, {process.stderr[:500]!r}")
    print(f"# 20,000 cuts: {seconds:.1f} s of processor")


check_absurd()
check_repeat()
check_largest()
tap.done()
