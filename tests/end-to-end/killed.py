#!/usr/bin/env python3
"""Prints TAP: rowcut-cli killed at any moment of an import, a cut, a backup, a restore or a migration loses nothing: the
store opens, is sound, and holds all of what was done or none of it. RC_ROUNDS is a percentage of the rounds."""
import os
import pathlib
import random
import shutil
import signal
import sqlite3
import subprocess
import time

import jobs
import tap

ROUNDS = max(1, 12 * int(os.environ.get("RC_ROUNDS") or 100) // 100)
STORE = tap.home / "shop.db"
BASE = tap.home / "base.db"
EARLIER = tap.home / "earlier.db"
OLD = tap.home / "version-1.db"
randomly = random.Random(20)


def clear():
    for path in tap.home.glob("shop.db*"):
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink()


def put(base):
    clear()
    shutil.copy(base, STORE)


def start(*arguments):
    env = {**os.environ, "HOME": str(tap.home), "XDG_DATA_HOME": str(tap.home / "data"), "LC_ALL": "C.UTF-8"}
    return subprocess.Popen([tap.CLI, *map(str, arguments), "--store", STORE], cwd=tap.home, env=env,
                            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def titles(path=STORE):
    listed = tap.answer("store", "jobs", "--store", path)
    return None if listed is None else sorted(job["title"] for job in listed["jobs"])


def rolls(path=STORE):
    listed = tap.answer("store", "stock", "--store", path)
    return None if listed is None else sorted((r["length"], r["free"], r["remnant"]) for r in listed["rolls"])


def is_sound(path=STORE):
    checked = tap.answer("store", "check", "--store", path)
    return bool(checked and checked["sound"])


def measure(base, arguments, state):
    put(base)
    began = time.monotonic()
    start(*arguments).wait()
    return time.monotonic() - began, state()


def kill_in(base, arguments, seconds):
    """Starts the command on a copy of `base` and kills it; True when it had ended by itself."""
    put(base)
    process = start(*arguments)
    time.sleep(randomly.uniform(0, seconds))
    process.send_signal(signal.SIGKILL)
    return process.wait() == 0


def check(name, base, arguments, before, look=lambda done: "", state=titles):
    """`state` is what of the store is to be whole; `look` finds what is wrong beside it after a kill, in words."""
    seconds, after = measure(base, arguments, state)
    n_killed, faults = 0, []
    for _ in range(ROUNDS):
        done = kill_in(base, arguments, seconds)
        n_killed += not done
        if not is_sound():
            faults.append("the store is not sound")
        now = state()
        if now != after and (done or now != before):
            faults.append(f"found {now}, were {before}, are to be {after}")
        faults.append(look(done))
    faults = [fault for fault in faults if fault]
    tap.ok(not faults, f"{name}: killed {ROUNDS} times, nothing lost", "\n".join(faults[:5]))
    print(f"# {name}: {n_killed} of {ROUNDS} had not ended by themselves")


def make_base():
    """A store with a job; before, without it."""
    for name in ("One", "Two"):
        rooms = "".join(jobs.room(f"{name} {i}", "15 ft", "20 ft") for i in range(20))
        path = tap.write("job.xml", jobs.job(rooms).replace('id="J-1"', f'id="{name}"').replace("Gull Cottage", name))
        tap.run("store", "import", path, "--store", STORE)
        shutil.copy(STORE, BASE if name == "Two" else EARLIER)


def make_old():
    database = sqlite3.connect(OLD)
    database.executescript((tap.SOURCE / "tests" / "store-version-1.sql").read_text(encoding="utf-8"))
    database.close()


def look_at_backup(done):
    path = tap.home / "copy.db"
    found = path.exists()
    fault = "" if found or not done else "the backup is not there"
    if found and (not is_sound(path) or titles(path) != ["One", "Two"]):
        fault = "the backup is not whole"
    for rest in tap.home.glob("copy.db*"):
        rest.unlink()
    return fault


def look_at_kept(done):
    """What was there before the restore is in the store, or beside it."""
    kept = pathlib.Path(f"{STORE}.before-restore")
    return "" if titles() == ["One", "Two"] or (kept.exists() and titles(kept) == ["One", "Two"]) else "jobs are gone"


def look_at_old_backup(done):
    backups = list(tap.home.glob("shop.db.version-1.backup"))
    return "" if not done or backups else "there is no backup of the older store"


make_base()
make_old()
rooms = "".join(jobs.room(f"R{i}", "15 ft", "20 ft") for i in range(300))
new = tap.write("new.xml", jobs.job(rooms).replace('id="J-1"', 'id="New"').replace("Gull Cottage", "New"))
check("an import", BASE, ["store", "import", new], ["One", "Two"])
tap.run("store", "receive", "R-1", "twist", "30 ft", "--store", BASE)
tap.run("store", "reserve", "R-1", "One", "10 ft", "--store", BASE)
put(BASE)
check("a cut", BASE, ["store", "cut", "R-1", "One", "10 ft", "1:8 ftx10 ft", "remnant:4 ftx10 ft"], rolls(), state=rolls)
check("a backup", BASE, ["store", "backup", tap.home / "copy.db"], ["One", "Two"], look_at_backup)
check("a restore", BASE, ["store", "restore", EARLIER], ["One", "Two"], look_at_kept)
put(OLD)
check("a migration", OLD, ["store", "jobs"], titles(), look_at_old_backup)
tap.done()
