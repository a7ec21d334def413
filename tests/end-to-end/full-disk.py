#!/usr/bin/env python3
"""Prints TAP: a file that cannot be written to its end is told by its name, and what was there before stays.

The end is set with RLIMIT_FSIZE, beyond which a file does not grow: at it every write fails as on a full disk.
"""
import os
import resource
import signal
import subprocess

import jobs
import tap

JOB = tap.write("job.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft")))
# So large that there are ends which the store can be opened under, and its file not written.
LARGE = tap.write("large.xml", jobs.job("".join(jobs.room(f"R{i}", "15 ft", "20 ft") for i in range(400)))
                  .replace('id="J-1"', 'id="J-2"'))
STORE = tap.home / "shop.db"
BEFORE = "what was there before"


def limit(size):
    def apply():
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
    return apply


def run(arguments, size):
    env = {**os.environ, "HOME": str(tap.home), "XDG_DATA_HOME": str(tap.home / "data"), "LC_ALL": "C.UTF-8"}
    return subprocess.run([tap.CLI, *map(str, arguments)], cwd=tap.home, env=env, preexec_fn=limit(size), text=True,
                          capture_output=True, encoding="utf-8", timeout=120)


def listing():
    return sorted(p.name for p in tap.home.iterdir() if not p.name.startswith("shop.db"))


def check(name, arguments, target, keeps=True):
    """`arguments` write `target`; `keeps` where it takes the place of a file that is there. The store must be named
    when it could not even be opened."""
    path = tap.home / target
    whole = tap.run(*arguments)
    if not tap.ok(whole.returncode == 0 and path.exists(), f"{name} is written", whole.stderr):
        return
    size = path.stat().st_size
    path.unlink()
    faults, n_named = [], 0
    for end in sorted({0, 1, size // 3, size // 2, size - 1}):
        for before in ([None, BEFORE] if keeps else [None]):
            if before is not None:
                path.write_text(before, encoding="utf-8")
            files = listing()
            process = run(arguments, end)
            n_named += path.name in process.stderr
            if process.returncode != 1:
                faults.append(f"{end} of {size} bytes: exit {process.returncode}")
            if path.name not in process.stderr and STORE.name not in process.stderr:
                faults.append(f"{end} of {size} bytes: {process.stderr!r} does not name {path.name}")
            if listing() != files:
                faults.append(f"{end} of {size} bytes: {listing()} where {files} was")
            elif before is not None and path.read_text(encoding="utf-8", errors="replace") != before:
                faults.append(f"{end} of {size} bytes: what was there is gone")
            path.unlink(missing_ok=True)
    tap.ok(not faults and (n_named > 0 or STORE in arguments and size < 100000),
           f"{name}: on a full disk says so and leaves what was there", "\n".join(faults[:6]) or f"{n_named} times named")


def check_sheets():
    """Those that were written before the disk was full are whole, and no other is there."""
    whole, cut = tap.home / "whole", tap.home / "cut"
    tap.run("sheets", JOB, "--date", tap.DATE, "--to", whole)
    sizes = sorted(path.stat().st_size for path in whole.iterdir())
    faults = []
    for end in (0, sizes[0] - 1, sizes[len(sizes) // 2], sizes[-1] - 1):
        process = run(["sheets", JOB, "--date", tap.DATE, "--to", cut], end)
        if process.returncode != 1 or str(cut) not in process.stderr:
            faults.append(f"{end} bytes: exit {process.returncode}, {process.stderr!r}")
        for path in cut.iterdir():
            if path.read_bytes() != (whole / path.name).read_bytes():
                faults.append(f"{end} bytes: {path.name} is not whole")
            path.unlink()
    tap.ok(len(sizes) > 5 and not faults, "sheets: on a full disk says so and leaves none in part", "\n".join(faults))


def check_store():
    """An import into a store that may not grow is refused as a whole."""
    before = tap.answer("store", "jobs", "--store", STORE)
    other = tap.write("other.xml", jobs.job(jobs.room("Den", "10 ft", "10 ft")).replace('id="J-1"', 'id="J-9"'))
    size = STORE.stat().st_size
    faults = []
    for end in (0, 4096, 40000, size // 2, size):
        process = run(["store", "import", other, "--store", STORE], end)
        now = tap.answer("store", "jobs", "--store", STORE)
        if process.returncode != 1 and now == before or process.returncode == 1 and now != before:
            faults.append(f"{end} bytes: exit {process.returncode}, jobs {now}")
        if process.returncode == 1 and "shop.db" not in process.stderr:
            faults.append(f"{end} bytes: {process.stderr!r}")
        if process.returncode == 0:
            break
    checked = tap.answer("store", "check", "--store", STORE)
    tap.ok(not faults and checked and checked["sound"], "an import is whole or not there", "\n".join(faults))


tap.run("store", "import", JOB, LARGE, "--store", STORE)
check("a job file", ["store", "export", "J-2", "out.xml", "--store", STORE], "out.xml")
check("a price list", ["store", "export", "--prices", "out.csv", "--store", STORE], "out.csv")
check("a backup", ["store", "backup", "copy.db", "--store", STORE], "copy.db", keeps=False)
check("a quotation", ["quote", JOB, "--date", tap.DATE, "--pdf", "q.pdf"], "q.pdf")
check("a quotation in XML", ["quote", JOB, "--date", tap.DATE, "--number", "Q-1", "--ubl", "q.xml"], "q.xml")
check("an order", ["order", JOB, "--date", tap.DATE, "--pdf", "order.pdf"], "order-1.pdf")
check_sheets()
check_store()
tap.done()
