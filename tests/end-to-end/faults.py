#!/usr/bin/env python3
"""Prints TAP: bad input gets exit status 1 (2 for wrong usage), a message that names the thing, and changes nothing."""
import hashlib

import jobs
import tap

PARLOUR = jobs.room("Parlour", "15 ft", "20 ft")


def refused(arguments, words, name, status=1):
    """The command fails with `status`, prints nothing on standard output and names every one of `words`."""
    process = tap.run(*arguments)
    missing = [w for w in words if w not in process.stderr]
    tap.ok(process.returncode == status and process.stdout == "" and not missing and process.stderr.count("\n") <= 3,
           f"{name}: says {', '.join(words)}",
           f"exit {process.returncode}, out {process.stdout!r}, err {process.stderr!r}")


def check_jobs():
    carpetless = jobs.PRICES.replace('<price item="twist" cost="20.00" sale="35.50"/>', "")
    table = [
        ("a room that crosses itself", ["Knot", "wall"], jobs.job(
            '<room name="Knot"><outline><point x="0 ft" y="0 ft"/><point x="10 ft" y="10 ft"/>'
            '<point x="10 ft" y="0 ft"/><point x="0 ft" y="10 ft"/></outline></room>')),
        ("a door wider than its wall", ["Parlour", "D1", "wall"], jobs.job(
            jobs.room("Parlour", "15 ft", "20 ft", '<door id="D1" wall="1" width="16 ft"/>'))),
        ("a roll narrower than the trim", ["twist", "trim"], jobs.job(PARLOUR, settings='trim="3 in"').replace(
            'roll-width="12 ft"', 'roll-width="2 in"', 1)),
        ("walls that do not close", ["Parlour", "1 part in", "measure again"], jobs.job(
            PARLOUR.replace('bearing="W" length="15 ft"', 'bearing="W" length="14 ft"'))),
        ("a wrong element", ["job.xml:3", "furniture"], jobs.job("\n<sofa/>\n<furniture/>").replace(
            "<sofa/>", PARLOUR)),
        ("a length that is none", ["job.xml", "15 parsecs"], jobs.job(jobs.room("Parlour", "15 parsecs", "20 ft"))),
        ("an area with a room that is not there", ["cellar"], jobs.job(
            PARLOUR + '<area name="Below" rooms="cellar" carpet="twist"/>')),
        ("XML that ends early", ["job.xml"], jobs.job(PARLOUR)[:-20]),
        ("no XML at all", ["job.xml"], "15 x 20 ft, twist pile\n"),
        ("an empty file", ["job.xml"], ""),
        ("an entity from outside", ["job.xml"], '<!DOCTYPE job [<!ENTITY x SYSTEM "file:///etc/hostname">]>'
         + jobs.job(PARLOUR).replace("A. Customer", "&x;")),
    ]
    for name, words, text in table:
        path = tap.write("job.xml", text)
        refused(["plan", path, "--json"], words, name)
    path = tap.write("job.xml", jobs.job(PARLOUR, prices=carpetless))
    refused(["quote", path, "--date", tap.DATE, "--store", tap.home / "shop.db"], ["Twist"],
            "a price book without the carpet")
    path = tap.write("job.xml", jobs.job(PARLOUR, attributes='currency="EUR"', prices=""))
    refused(["quote", path, "--date", tap.DATE, "--store", tap.home / "shop.db"], ["EUR", "USD"],
            "a job in another currency than the prices")
    refused(["plan", tap.home / "absent.xml"], ["absent.xml"], "a file that is not there")
    refused(["plan", tap.home], [tap.home.name], "a folder instead of a file")


def check_usage():
    path = tap.write("job.xml", jobs.job(PARLOUR))
    table = [
        (["polish"], ["polish"]),
        (["plan"], ["JOB.xml"]),
        (["plan", path, "--sideways"], ["--sideways"]),
        (["plan", path, path], ["job.xml"]),
        (["plan", path, "--date", "tomorrow"], ["tomorrow"]),
        (["quote", path, "--paper", "a7"], ["a7"]),
        (["sheets", path], ["--to"]),
        (["sheets", path, "--to", tap.home / "s", "--paper", "stone"], ["stone"]),
        (["compare", path, "M1"], ["M2"]),
        (["store", "polish"], ["polish"]),
        (["store", "backup"], ["FILE"]),
        (["store", "export", "J-1"], ["FILE"]),
        (["help", "polish"], ["polish"]),
    ]
    for arguments, words in table:
        process = tap.run(*arguments)
        shown = " ".join(str(a).replace(f"{tap.home}/", "") for a in arguments)
        tap.ok(process.returncode == 2 and process.stdout == "" and all(w in process.stderr for w in words),
               f"{shown}: wrong usage", f"exit {process.returncode}, out {process.stdout!r}, err {process.stderr!r}")
    refused(["plan", path, "--measure", "M9"], ["M9", "M1"], "a measure that is not there")
    refused(["plan", path, "--option", "cheapest"], ["cheapest", "least-cost"], "an option that is not there")


def digest(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def check_stores():
    text = tap.write("notes.db", "Ring the Petersons about the stairs.\n" * 100)
    before = digest(text)
    path = tap.write("job.xml", jobs.job(PARLOUR, prices=""))
    for arguments in (["store", "check"], ["store", "jobs"], ["store", "import", path], ["quote", path]):
        refused(arguments + ["--store", text], ["notes.db"], f"{' '.join(map(str, arguments[:2]))}: not a database")
    tap.equal(digest(text), before, "and the file stays as it was")
    tap.equal(sorted(p.name for p in tap.home.glob("notes.db*")), ["notes.db"], "with nothing beside it")

    store = ("--store", tap.home / "shop.db")
    good = tap.write("good.xml", jobs.job(PARLOUR))
    bad = tap.write("bad.xml", jobs.job(PARLOUR).replace("</measure>", "<sofa/></measure>", 1))
    tap.run("store", "import", good, *store)
    exported = tap.home / "one.xml"
    tap.run("store", "export", "J-1", exported, *store)
    refused(["store", "import", "--replace", bad, *store], ["bad.xml", "sofa"], "importing a job with a wrong element")
    refused(["store", "import", "--prices", bad, *store], ["bad.xml"], "importing a job as prices")
    csv = tap.home / "prices.csv"
    tap.run("store", "export", "--prices", csv, *store)
    lines = csv.read_text().splitlines()
    broken = tap.write("broken.csv", "\n".join([*lines[:2], lines[2] + ",one,more,field", *lines[3:]]) + "\n")
    refused(["store", "import", "--prices", broken, *store], ["broken.csv", "3"], "importing prices with a bad line")
    again = tap.home / "two.xml"
    tap.run("store", "export", "J-1", again, *store)
    tap.equal(again.read_text(), exported.read_text(), "after which the job is what it was")
    csv_again = tap.home / "prices-again.csv"
    tap.run("store", "export", "--prices", csv_again, *store)
    tap.equal(csv_again.read_text(), csv.read_text(), "and so are the prices")
    checked = tap.answer("store", "check", *store)
    tap.ok(checked and checked["sound"], "and the store is sound")
    refused(["sheets", good, "--to", good], ["good.xml"], "sheets to a folder that is a file")
    refused(["quote", good, "--pdf", tap.home / "nowhere" / "q.pdf"], ["nowhere"], "a PDF to a folder that is not there")


check_jobs()
check_usage()
check_stores()
tap.done()
