#!/usr/bin/env python3
"""Prints TAP: a store that is damaged: what is wrong and what to do is said, and done as it says: the backup is put in
place, and jobs that are whole are taken out of the damaged file."""
import shutil
import sqlite3

import jobs
import tap

STORE = tap.home / "shop.db"
BACKUP = tap.home / "backup.db"
MOVED = tap.home / "moved.db"
PAGE = 4096
LARGE = 17 << 20  # so that it is not looked through when it is opened


def import_job(name, rooms):
    path = tap.write("job.xml", jobs.job(rooms).replace('id="J-1"', f'id="{name}"').replace("Gull Cottage", name))
    tap.run("store", "import", path, "--store", STORE)


def last_page(table):
    """Where the last page of the table lies: that of the job that came in last."""
    database = sqlite3.connect(STORE)
    try:
        (page,) = database.execute("SELECT max (pageno) FROM dbstat WHERE name = ? AND pagetype = 'leaf'",
                                   (table,)).fetchone()
    except sqlite3.OperationalError:
        page = None
    database.close()
    return page


def make():
    for name in ("Oak", "Yew"):
        import_job(name, "".join(jobs.room(f"{name} {i}", "15 ft", "20 ft") for i in range(60)))
    database = sqlite3.connect(STORE)
    database.execute("INSERT INTO files VALUES ('large', zeroblob (?))", (LARGE,))
    database.commit()
    database.execute("PRAGMA wal_checkpoint (TRUNCATE)")
    database.close()
    tap.equal(tap.run("store", "backup", BACKUP, "--store", STORE).returncode, 0, "a backup is made")


def damage(page):
    with open(STORE, "r+b") as file:
        file.seek((page - 1) * PAGE)
        file.write(b"\xff" * 64)


def check():
    checked = tap.run("store", "check", "--store", STORE)
    tap.ok(checked.returncode == 1 and "Job Yew" in checked.stderr and "Job Oak" not in checked.stderr,
           "the check names the job that is hit, and no other", checked.stderr)
    tap.ok("What to do" in checked.stderr and "store restore" in checked.stderr, "and says what to do", checked.stderr)
    refused = tap.run("store", "restore", BACKUP, "--store", STORE)
    tap.ok(refused.returncode == 1 and "move it to another place" in refused.stderr and STORE.exists(),
           "a restore does not write over what it cannot keep", refused.stderr)
    shutil.move(STORE, MOVED)
    tap.equal(tap.run("store", "restore", BACKUP, "--store", STORE).returncode, 0, "moved away, the backup is restored")
    checked = tap.answer("store", "check", "--store", STORE)
    tap.ok(checked and checked["sound"], "and is sound")
    tap.ok(tap.run("store", "export", "Oak", "oak.xml", "--store", MOVED).returncode == 0
           and "Oak 59" in (tap.home / "oak.xml").read_text(encoding="utf-8"), "the other job is taken out whole")


make()
page = last_page("walls")
if page is None:
    tap.skip("a damaged store", "this SQLite cannot say where pages are (dbstat)")
else:
    damage(page)
    check()
tap.done()
