#!/usr/bin/env python3
"""Prints TAP: the same job gives the same JSON, XML and PDF every time, in every locale and time zone."""
import locale
import os
import pathlib
import subprocess

import jobs
import tap

DEMO = tap.SOURCE / "data" / "demo-job.xml"
DEMO_ID = "J-1"
SETTINGS = [
    ("the C locale", {"LC_ALL": "C"}),
    ("a locale that groups by commas", {"LC_ALL": "en_US.UTF-8"}),
    ("a locale with a decimal comma", {"LC_ALL": "es_ES.UTF-8", "LANGUAGE": "es"}),
    ("the first time zone", {"LC_ALL": "C.UTF-8", "TZ": "Pacific/Kiritimati"}),
    ("the last time zone", {"LC_ALL": "C.UTF-8", "TZ": "Pacific/Pago_Pago"}),
]
COMMANDS = [["plan"], ["quantities"], ["quote"], ["order"], ["compare", "M1", "M2"]]


def check_json():
    for command in COMMANDS:
        arguments = [command[0], DEMO, *command[1:], "--date", "2026-03-20", "--store", tap.home / "shop.db", "--json"]
        first = tap.run(*arguments)
        tap.ok(first.returncode == 0, f"{command[0]} answers", first.stderr)
        tap.equal(tap.run(*arguments).stdout, first.stdout, f"{command[0]}: the same again")
        for name, environment in SETTINGS:
            tap.equal(tap.run(*arguments, **environment).stdout, first.stdout, f"{command[0]}: the same in {name}")


def check_effort():
    """A search counted in work finds the same beside another program that wants the processors."""
    arguments = ["plan", DEMO, "--date", "2026-03-20", "--store", tap.home / "shop.db", "--json", "--effort", "500"]
    first = tap.run(*arguments)
    tap.ok(first.returncode == 0, "a search counted in work answers", first.stderr)
    busy = [subprocess.Popen(["sh", "-c", "while :; do :; done"]) for _ in range(os.cpu_count() or 1)]
    try:
        tap.equal(tap.run(*arguments).stdout, first.stdout, "a search counted in work: the same on a busy machine")
    finally:
        for process in busy:
            process.kill()
            process.wait()
    both = tap.run(*arguments, "--seconds", "1")
    tap.ok(both.returncode == 2 and "--effort" in both.stderr, "time and work together are refused", both.stderr)


def check_files():
    """Every paper, picture and file that is written of the demo job."""
    wanted = {}
    for name, environment in [("the usual locale", {"LC_ALL": "C.UTF-8"}), *SETTINGS]:
        folder = tap.home / "files" / name.replace(" ", "-")
        folder.mkdir(parents=True)
        # Papers speak the reader's language, so only the language is held still.
        environment = {**environment, "LANGUAGE": "en"}
        store = ["--store", tap.home / f"{folder.name}.db"]
        common = [DEMO, "--date", "2026-03-20", *store]
        commands = [
            ["quote", *common, "--pdf", folder / "q.pdf", "--ubl", folder / "q.xml"],
            ["order", *common, "--pdf", folder / "o.pdf", "--ubl", folder / "o.xml"],
            ["sheets", *common, "--to", folder],
            ["store", "import", DEMO, *store],
            ["store", "export", DEMO_ID, folder / "job.xml", *store],
        ]
        for command in commands:
            process = tap.run(*command, **environment)
            tap.ok(process.returncode == 0, f"{' '.join(map(str, command[:2]))}: done in {name}", process.stderr)
        got = {file.name: file.read_bytes() for file in folder.iterdir()}
        wanted = wanted or got
        for kind in (".pdf", ".png", ".xml"):
            tap.ok(any(file.endswith(kind) for file in got), f"files {kind} are among those of {name}")
        tap.equal(sorted(got), sorted(wanted), f"the files in {name}")
        for file in sorted(wanted):
            tap.ok(got.get(file) == wanted[file], f"{file}: the same in {name}")


def check_locales():
    """The locales write numbers as they should, or the checks say nothing."""
    if not os.environ.get("LOCPATH") or not (pathlib.Path(os.environ["LOCPATH"]) / "es_ES.UTF-8").is_dir():
        tap.skip("locales with other numbers", "they could not be made here")
        return
    for name, point, thousands in (("es_ES", ",", "."), ("en_US", ".", ",")):
        locale.setlocale(locale.LC_ALL, f"{name}.UTF-8")
        found = locale.localeconv()
        tap.equal((found["decimal_point"], found["thousands_sep"]), (point, thousands), f"how {name} writes numbers")


def check_language():
    """Tables are for people and follow their language; JSON does not."""
    if "ROWCUT_LOCALE_DIR" not in os.environ:
        tap.skip("tables in the reader's language", "ROWCUT_LOCALE_DIR does not name the translations")
        return
    path = tap.write("job.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft")))
    for language, name, amount in (("es", "Spanish", "Importe"), ("fr", "French", "Montant")):
        process = tap.run("quote", path, LC_ALL="es_ES.UTF-8", LANGUAGE=language,
                          ROWCUT_LOCALE_DIR=os.environ["ROWCUT_LOCALE_DIR"])
        tap.ok(amount in process.stdout, f"tables speak {name} to a {name} reader", process.stdout)


def check_language_option():
    """A sheet may speak another language than the reader."""
    if "ROWCUT_LOCALE_DIR" not in os.environ:
        tap.skip("sheets in another language", "ROWCUT_LOCALE_DIR does not name the translations")
        return
    path = tap.write("job.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft")))
    catalogues = {"ROWCUT_LOCALE_DIR": os.environ["ROWCUT_LOCALE_DIR"]}
    for name, reader in (("C", {"LC_ALL": "C"}), ("Spanish", {"LC_ALL": "es_ES.UTF-8", "LANGUAGE": "es"})):
        for language, amount in (("en", "Amount"), ("es", "Importe"), ("fr", "Montant")):
            process = tap.run("quote", path, "--language", language, **reader, **catalogues)
            tap.ok(amount in process.stdout, f"quote: {language} for a {name} reader", process.stdout + process.stderr)
    for language, title in (("en", "Roll labels"), ("es", "Etiquetas de los rollos"), ("fr", "Étiquettes des rouleaux")):
        folder = tap.home / f"sheets-{language}"
        process = tap.run("sheets", path, "--to", folder, "--language", language, **catalogues)
        info = subprocess.run(["pdfinfo", folder / "roll-labels.pdf"], capture_output=True, text=True)
        tap.ok(title in info.stdout, f"sheets: {language}", process.stderr + info.stdout)
    for command in (["sheets", path, "--to", tap.home / "none"], ["quote", path], ["order", path]):
        for wrong in ("de", "es_ES", "", "../es"):
            process = tap.run(*command, "--language", wrong)
            tap.ok(process.returncode == 2 and "en, es, fr" in process.stderr,
                   f"{command[0]}: no language “{wrong}”", process.stderr)


def check_orders_of_suppliers():
    """An order is written in its supplier's language, whatever the office reads, unless it is told otherwise."""
    if "ROWCUT_LOCALE_DIR" not in os.environ:
        tap.skip("orders in the suppliers' languages", "ROWCUT_LOCALE_DIR does not name the translations")
        return
    catalogues = {"ROWCUT_LOCALE_DIR": os.environ["ROWCUT_LOCALE_DIR"]}
    prices = jobs.PRICES.replace("<catalogue>", '<supplier name="Quay Mills" language="es"/><catalogue>')
    path = tap.write("spanish-mill.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft"), prices=prices))

    def read(*options, **reader):
        answer = tap.answer("order", path, "--date", tap.DATE, "--pdf", tap.home / "to.pdf", *options, **catalogues, **reader)
        papers = [subprocess.run(["pdftotext", tap.home / f"to-{n}.pdf", "-"], capture_output=True, text=True).stdout
                  for n in (1, 2)]
        return " ".join(answer["orders"][0]["notes"]), *papers

    for name, reader in (("C", {"LC_ALL": "C"}), ("French", {"LC_ALL": "es_ES.UTF-8", "LANGUAGE": "fr"})):
        notes, mill, others = read(**reader)
        tap.ok("de ancho" in notes and "Tenga en cuenta" in mill, f"the mill's is Spanish for a {name} reader", notes + mill)
        tap.ok("Order" in others and "Pedido" not in others, f"the other is as before for a {name} reader", others)
    notes, mill, _ = read("--language", "fr", LC_ALL="C")
    tap.ok("de ancho" not in notes + mill and "noter" in mill, "all are French when French is asked for", notes + mill)


def check_causes():
    """What the program notes of a roll is worded for who reads it, not for who did it."""
    if "ROWCUT_LOCALE_DIR" not in os.environ:
        tap.skip("a roll's history in another language", "ROWCUT_LOCALE_DIR does not name the translations")
        return
    store = ("--store", tap.home / "causes.db")
    tap.run("store", "import", "--prices", tap.SOURCE / "data" / "price-book.csv", *store)
    tap.run("store", "receive", "R-7", "fennel-twist-oat", "40 ft", *store)
    tap.run("store", "cut", "R-7", "J-1", "10 ft", "remnant:4'x10'", "--json", *store)
    for language, words in (("en", "remnant of roll R-7"), ("es", "retal del rollo R-7"), ("fr", "coupon du rouleau R-7")):
        text = tap.run("store", "history", *store, LC_ALL="es_ES.UTF-8", LANGUAGE=language,
                       ROWCUT_LOCALE_DIR=os.environ["ROWCUT_LOCALE_DIR"]).stdout
        tap.ok(words in text, f"history: {language}", text)


def check_missing_words():
    """A language whose words are not installed is refused, and those that are there are named."""
    path = tap.write("job.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft")))
    folder = tap.home / "some-words"
    (folder / "es" / "LC_MESSAGES").mkdir(parents=True)
    (folder / "es" / "LC_MESSAGES" / "rowcut.mo").write_bytes(b"")
    for name, catalogues in (("nowhere", tap.home / "nowhere"), ("some", folder)):
        for reader in ({"LC_ALL": "C"}, {"LC_ALL": "es_ES.UTF-8", "LANGUAGE": "es"}):
            process = tap.run("quote", path, "--language", "fr", ROWCUT_LOCALE_DIR=str(catalogues), **reader)
            there = "there are en, es" if name == "some" else "there are en\n"
            tap.ok(process.returncode != 0 and process.stdout == "" and "fr" in process.stderr
                   and there in process.stderr + "\n",
                   f"French refused, words in {name}, reader {reader['LC_ALL']}", process.stdout + process.stderr)
    process = tap.run("quote", path, "--language", "en", ROWCUT_LOCALE_DIR=str(tap.home / "nowhere"))
    tap.ok(process.returncode == 0 and "Amount" in process.stdout, "English needs no words", process.stderr)


check_locales()
check_json()
check_effort()
check_files()
check_language()
check_language_option()
check_orders_of_suppliers()
check_causes()
check_missing_words()
tap.done()
