#!/usr/bin/env python3
"""Prints TAP: quantities, quote, order, sheets, compare and store, from the job file to paper."""
import decimal
import re
import subprocess

import jobs
import tap

D = decimal.Decimal
PARLOUR = jobs.room("Parlour", "15 ft", "20 ft")
COMPLETE = tap.write("complete.xml", jobs.job(PARLOUR, settings='trim="0" most-joins="2"'))


def rounded(amount):
    """To the cent, halves away from zero."""
    return amount.quantize(D("0.01"), rounding=decimal.ROUND_HALF_UP)


def check_help():
    for name in ("nest", "plan", "quantities", "quote", "order", "sheets", "compare"):
        process = tap.run(name, "--help")
        tap.ok(process.returncode == 0 and "--json" in process.stdout and process.stderr == "", f"{name} --help")
        tap.equal(tap.run("help", name).stdout, process.stdout, f"help {name} says the same")
    for name in ("check", "backup", "import", "export", "jobs"):
        process = tap.run("store", name, "--help")
        tap.ok(process.returncode == 0 and "--store" in process.stdout, f"store {name} --help")
    process = tap.run("--version")
    tap.ok(process.returncode == 0 and process.stdout.startswith("rowcut-cli "), "--version")
    tap.equal(tap.run().returncode, 2, "no command at all is wrong usage")
    tap.equal(tap.run("help").returncode, 0, "help")
    tap.ok(not (tap.home / "data").exists(), "nothing of this makes a store")


def check_quantities():
    answer = tap.answer("quantities", COMPLETE)
    if not tap.ok(answer is not None, "quantities answers"):
        return
    for field in ("item", "quantity", "unit", "packs", "because"):
        tap.ok(all(field in line for line in answer["lines"]), f"quantity lines say {field}")
    lines = {line["item"]: line for line in answer["lines"]}
    tap.ok(all(line["because"] for line in answer["lines"]), "every line says why")
    # CRI 2015 13.7: both edges of every seam are sealed. 20 ft of side seam, two cross seams of 3 ft: 52 ft of edge, one
    # bottle of 60 ft.
    tap.equal(lines["sealer"]["quantity"], 1, "one bottle of sealer for both edges of every seam")
    # ehow.co.uk and CRI 2015 11.1: 2 x (15 + 20) = 70 ft of strip, no door; a carton holds 400 ft.
    tap.equal((lines["strip"]["needed"], lines["strip"]["packs"]), (70, 1), "70 ft of strip round the room, one carton")


def check_quote():
    pdf, ubl = tap.home / "quote.pdf", tap.home / "quote.xml"
    answer = tap.answer("quote", COMPLETE, "--date", tap.DATE, "--pdf", pdf, "--ubl", ubl, "--number", "Q-7")
    if not tap.ok(answer is not None, "quote answers"):
        return
    for field in ("item", "quantity", "unit", "price", "amount"):
        tap.ok(all(field in line for line in answer["lines"]), f"quotation lines say {field}")
    amounts = [D(line["amount"]) for line in answer["lines"]]
    for line in answer["lines"]:
        tap.equal(D(line["amount"]), rounded(D(line["price"]) * D(str(line["quantity"]))),
                  f"{line['item']}: amount is price by quantity")
    tap.equal(D(answer["net"]), sum(amounts), "net is the sum of the lines")
    tap.equal(D(answer["tax"]), rounded(D(answer["net"]) * D("0.0825")), "tax is 8.25 % of it, rounded once")
    tap.equal(D(answer["total"]), D(answer["net"]) + D(answer["tax"]), "total is both")
    tap.equal(answer["currency"], "USD", "the currency is said")
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True).stdout
    tap.ok(f"{D(answer['total']):,}" in text and "Q-7" in text, "the PDF holds the total and the number", text)
    tap.ok(answer["total"] in ubl.read_text(), "so does the UBL document")
    check_ubl(ubl, "Quotation")
    tap.ok(not (tap.home / "data").exists(), "a job that is complete by itself opens no store")
    offered = tap.write("offered.xml", COMPLETE.read_text().replace(
        "<prices", '<offer discount-percent="10"><line item="strip" optional="yes"/></offer><prices', 1))
    answer, text = tap.answer("quote", offered, "--date", tap.DATE), tap.run("quote", offered, "--date", tap.DATE).stdout
    tap.equal([line["item"] for line in answer["lines"] if line["optional"]], ["strip"], "an optional line is marked")
    tap.ok("Tack strip (optional, not in the total)" in text, "in the table too", text)
    rows = {words[0]: words[1].replace(",", "") for words in map(str.split, text.splitlines()) if len(words) == 3}
    tap.equal(D(rows["Sum"]) + D(rows["Discount"]), D(rows["Net"]), "the table shows the discount")
    tap.equal(D(rows["Discount"]), -rounded(D(rows["Sum"]) / 10), "10 % of the sum")


def check_paper_multiplies():
    """Whoever multiplies the quantity and the price that are printed gets the amount that is printed."""
    pdf, thirds = tap.home / "thirds.pdf", tap.write("thirds.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft 1 in")))
    tap.answer("quote", thirds, "--date", tap.DATE, "--pdf", pdf)
    words = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True).stdout
    rows = re.findall(r"([\d,.]+) +(?:sq yd|ft|each|gal) +([\d,.]+) +([\d,.]+)$", words, re.MULTILINE)
    figures = [[D(figure.replace(",", "")) for figure in row] for row in rows]
    tap.ok(len(rows) > 4 and any(quantity % D("0.01") for quantity, _, _ in figures), "lines are found on the paper", words)
    tap.equal([rounded(quantity * price) for quantity, price, _ in figures], [amount for _, _, amount in figures],
              "quantity times price is the amount, as printed")


def check_order():
    pdf, ubl = tap.home / "order.pdf", tap.home / "order.xml"
    answer = tap.answer("order", COMPLETE, "--date", tap.DATE, "--pdf", pdf, "--ubl", ubl)
    if not tap.ok(answer is not None, "order answers"):
        return
    tap.equal([o["supplier"] for o in answer["orders"]], ["Quay Mills", "Northgate Supply"], "one order a supplier")
    for order in answer["orders"]:
        tap.equal(D(order["net"]), sum(D(line["amount"]) for line in order["lines"]),
                  f"{order['supplier']}: net is the sum of the lines")
    for n in (1, 2):
        tap.ok((tap.home / f"order-{n}.pdf").read_bytes().startswith(b"%PDF-"), f"order {n} is a PDF")
        check_ubl(tap.home / f"order-{n}.xml", "Order")
    stocked = tap.write("stocked.xml", jobs.job(PARLOUR).replace(
        "<measure", '<rolls><roll id="R-1" goods="twist" lot="L1" length="60 ft"/></rolls><measure', 1))
    answer = tap.answer("order", stocked, "--date", tap.DATE)
    tap.ok(answer and "twist" not in [line["item"] for o in answer["orders"] for line in o["lines"]],
           "carpet that is in stock is not ordered")


def named(name, number, more=""):
    """PARLOUR as a job of its own."""
    return tap.write(f"{name}.xml", jobs.job(PARLOUR).replace('id="J-1" number="2026-001"', f'id="{name}" number="{number}"')
                     .replace("<measure", more + "<measure", 1))


def check_order_of_several():
    """Two jobs' goods on one order a supplier, every line with its job; what each takes alone adds up."""
    first, second = named("J-11", "2026-011"), named("J-12", "2026-012")
    pdf, ubl, store = tap.home / "both.pdf", tap.home / "both.xml", ["--store", tap.home / "several.db"]
    both = tap.answer("order", first, second, "--date", tap.DATE, "--pdf", pdf, "--ubl", ubl)
    alone = [tap.answer("order", path, "--date", tap.DATE) for path in (first, second)]
    if not tap.ok(both and all(alone), "order takes several jobs"):
        return
    tap.equal(both["jobs"], ["2026-011", "2026-012"], "and names them")
    tap.equal([o["supplier"] for o in both["orders"]], ["Quay Mills", "Northgate Supply"], "one order a supplier for both")
    for i, order in enumerate(both["orders"]):
        tap.equal(D(order["net"]), sum(D(a["orders"][i]["net"]) for a in alone), f"{order['supplier']}: the nets add up")
        tap.equal(sum(D(line["amount"]) for line in order["lines"]), D(order["net"]), f"{order['supplier']}: so do lines")
        check_ubl(tap.home / f"both-{i + 1}.xml", "Order")
    words = subprocess.run(["pdftotext", "-layout", tap.home / "both-1.pdf", "-"], capture_output=True, text=True).stdout
    tap.ok("2026-011, 2026-012" in words and "2026-012: Harbour Twist" in words, "the paper says whose", words)
    tap.ok("A. Customer" not in words and "Gull Cottage" not in words, "and no customer's name", words)
    process = tap.run("order", first, first, "--date", tap.DATE)
    tap.ok(process.returncode == 1 and "2026-011" in process.stderr, "a job that is there twice", process.stderr)
    process = tap.run("order", first, second, "--date", tap.DATE, "--keep", *store)
    tap.ok("Order O-2" in process.stdout, "orders for both are kept", process.stdout + process.stderr)
    for path in (first, second):
        process = tap.run("order", path, "--date", tap.DATE, "--keep", *store)
        tap.ok(process.returncode == 1 and "O-1, O-2" in process.stderr, f"{path.name}: no goods twice", process.stderr)


def check_roll_wanted_twice():
    """25 ft of a roll for each of two jobs are there when it has 50 ft, and not when it has 49."""
    for length, enough in (("50 ft", True), ("49 ft", False)):
        roll = f'<rolls><roll id="R-1" goods="twist" lot="L1" length="{length}"/></rolls>'
        process = tap.run("order", named("J-21", "A", roll), named("J-22", "B", roll), "--date", tap.DATE)
        alone = tap.answer("order", named("J-21", "A", roll), "--date", tap.DATE)
        tap.ok(alone and "twist" not in [line["item"] for o in alone["orders"] for line in o["lines"]],
               f"{length} do for one job")
        tap.ok((process.returncode == 0) == enough and (enough or "R-1" in process.stderr and "A, B" in process.stderr),
               f"{length} for two jobs", process.stderr)


def check_ubl(path, kind):
    name = f"{path.name} is valid UBL 2.1"
    if tap.SHARED is None or not (tap.SHARED / "ubl").is_dir():
        tap.skip(name, "RC_SHARED does not name the schema")
        return
    schema = tap.SHARED / "ubl" / "xsdrt" / "maindoc" / f"UBL-{kind}-2.1.xsd"
    process = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", schema, path], capture_output=True, text=True)
    tap.ok(process.returncode == 0, name, process.stderr)


def check_sheets():
    # 72 points an inch; ISO 216: A4 is 210 x 297 mm.
    for paper, size in (("letter", {612, 792}), ("a4", {595, 842})):
        folder = tap.home / "sheets" / paper
        answer = tap.answer("sheets", COMPLETE, "--to", folder, "--paper", paper, "--date", tap.DATE)
        if not tap.ok(answer is not None, f"sheets are written on {paper}"):
            continue
        tap.equal(sorted(answer["files"]), sorted(str(p) for p in folder.iterdir()), "and all of them named")
        for sheet in ("seam-plan", "fitters-sheet", "cut-list", "roll-labels", "quotation", "options", "job-summary", "order-1", "order-2"):
            pdf = folder / f"{sheet}.pdf"
            info = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True).stdout
            sides = {round(float(w)) for line in info.splitlines() if line.startswith("Page size")
                     for w in line.split()[2:5:2]}
            tap.equal(sides, size, f"{sheet}, {paper}: PDF of that paper")
            pngs = list(folder.glob(f"{sheet}.png")) + list(folder.glob(f"{sheet}-?.png"))
            tap.ok(pngs and all(p.read_bytes().startswith(b"\x89PNG") for p in pngs), f"{sheet}, {paper}: PNG")


def check_sheets_of_accepted():
    """A plan that is no longer the one accepted says so to the fitters, as it does at the desk."""
    store = ("--store", tap.home / "accepted.db")
    folder = tap.home / "accepted"
    wider = tap.write("wider.xml", jobs.job(jobs.room("Parlour", "15 ft 6 in", "20 ft")))
    path = tap.write("as-accepted.xml", jobs.job(PARLOUR))
    tap.run("quote", path, "--date", tap.DATE, "--keep", *store)
    tap.equal(tap.run("store", "accept", "Q-1", *store).returncode, 0, "the customer accepts")
    was, now = (next(line for line in tap.answer("quote", job, "--date", tap.DATE)["lines"] if line["item"] == "twist")
                for job in (path, wider))

    def words(job, *more):
        tap.run("sheets", job, "--to", folder, "--date", tap.DATE, *more)
        text = subprocess.run(["pdftotext", "-layout", folder / "fitters-sheet.pdf", "-"], capture_output=True, text=True)
        return " ".join(text.stdout.split())

    told = "The plan is not the one accepted with Q-1:"
    figures = "{quantity:.3f} {unit}".format
    tap.ok(told not in words(path, *store), "the plan accepted has nothing to say of it")
    text = words(wider, *store)
    tap.ok(told in text and f"{figures(**now)} in place of {figures(**was)}" in text, "another says what it takes", text)
    tap.ok(told not in words(wider), "nor does one that no store knows of")
    tap.ok(not (tap.home / "data").exists(), "and none is made to look")


def check_compare():
    bigger = jobs.room("Parlour", "15 ft 4 in", "20 ft")
    path = tap.write("twice.xml", jobs.job(PARLOUR, bigger))
    answer = tap.answer("compare", path, "M1", "M2", "--date", tap.DATE)
    if not tap.ok(answer is not None, "compare answers"):
        return
    tap.ok(D(answer["after"]["total"]) > D(answer["before"]["total"]), "a room 4 in wider costs more")
    tap.ok(any(c["what"] == "room" and "Parlour" in c["name"] for c in answer["changes"]), "the room is named")
    tap.ok(all(c["kind"] in ("added", "removed", "changed") for c in answer["changes"]), "changes are of three kinds")
    same = tap.answer("compare", path, "M1", "M1", "--date", tap.DATE)
    tap.equal(same and same["changes"], [], "nothing changes from a measure to itself")
    tap.equal(tap.run("compare", path, "M1", "M9").returncode, 1, "a measure that is not there cannot be compared")


def check_store():
    store = ("--store", tap.home / "shop.db")
    tap.equal(tap.run("store", "check", *store).returncode, 1, "a store that is not there is not checked")
    tap.ok(not (tap.home / "shop.db").exists(), "nor made")
    process = tap.run("store", "import", COMPLETE, *store)
    tap.ok(process.returncode == 0, "a job is imported", process.stderr)
    tap.equal(tap.run("store", "import", COMPLETE, *store).returncode, 1, "but not over itself")
    tap.equal(tap.run("store", "import", COMPLETE, "--replace", *store).returncode, 0, "unless it is to be replaced")
    tap.equal(tap.run("store", "import", COMPLETE, "--new", *store).returncode, 0, "or to be a new one")
    listed = tap.answer("store", "jobs", *store)
    tap.equal(listed and len(listed["jobs"]), 2, "two jobs are listed")
    listed = tap.answer("store", "jobs", "gull", *store)
    tap.equal(listed and len(listed["jobs"]), 2, "and found by a word of the title")
    listed = tap.answer("store", "jobs", "kestrel", *store)
    tap.equal(listed and listed["jobs"], [], "a word that is nowhere finds none")

    out = tap.home / "out.xml"
    tap.equal(tap.run("store", "export", "J-1", out, *store).returncode, 0, "a job is exported")
    tap.equal(tap.run("store", "export", "J-1", out, *store).returncode, 1, "but never over a file")
    tap.equal(tap.run("store", "export", "J-99", tap.home / "no.xml", *store).returncode, 1, "a job that is not there")
    prices = tap.write("own.xml", out.read_text().replace("</job>", jobs.PRICES + "</job>"))
    before, after = (tap.answer("plan", p) for p in (COMPLETE, prices))
    tap.equal(after and after["areas"], before and before["areas"], "and plans the same")

    csv = tap.home / "prices.csv"
    tap.equal(tap.run("store", "export", "--prices", csv, *store).returncode, 0, "prices are exported")
    tap.equal(tap.run("store", "import", "--prices", csv, *store).returncode, 0, "and imported")
    again = tap.home / "again.csv"
    tap.run("store", "export", "--prices", again, *store)
    tap.equal(again.read_text(), csv.read_text(), "and come out the same")

    backup = tap.home / "backup.db"
    tap.equal(tap.run("store", "backup", backup, *store).returncode, 0, "the store is backed up")
    tap.equal(tap.run("store", "backup", backup, *store).returncode, 1, "but never over a file")
    checked = tap.answer("store", "check", "--store", backup)
    tap.equal(checked and (checked["sound"], checked["faults"]), (True, []), "the backup is sound")

    # A job file without prices takes the shop's; this one names a carpet that only the shipped price book has.
    demo = tap.answer("quote", tap.SOURCE / "data" / "demo-job.xml", "--date", "2026-03-20", *store)
    tap.ok(demo and D(demo["total"]) > 0, "a job without prices takes them from the store")


check_help()
check_quantities()
check_quote()
check_paper_multiplies()
check_order()
check_order_of_several()
check_roll_wanted_twice()
check_sheets()
check_sheets_of_accepted()
check_compare()
check_store()
tap.done()
