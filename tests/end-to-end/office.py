#!/usr/bin/env python3
"""Prints TAP: from an accepted quotation to orders, receipt, cutting and remnant, then the room measured again, 4 in wider
than the piece that was cut."""
import csv
import decimal

import tap

D = decimal.Decimal
FT = 304.8


def measure(name, width):
    return f"""
  <measure id="{name}">
    <room id="parlour" name="Parlour">
      <wall bearing="E" length="{width}"/> <wall bearing="N" length="14 ft"/>
      <wall bearing="W" length="{width}"/> <wall bearing="S" length="14 ft"/>
    </room>
    <area id="a" rooms="parlour" carpet="fennel-twist-oat"/>
  </measure>"""


# Cut 11' 11" wide with its trim; measured again the room is 12' 3".
JOB = tap.write("parlour.xml", f"""<job xmlns="urn:rowcut:job:1" id="J-7" title="Parlour">
  <customer name="Tamsin Oddlebury"/>
  <goods>
    <carpet id="fennel-twist-oat" name="Fennel Twist, oat" supplier="Skerrow Mills" unit="sq yd" roll-width="12 ft"
            length-step="1 ft" full-roll="120 ft"/>
    <carpet id="quillstone-saxony-slate" name="Quillstone Saxony, slate" supplier="Skerrow Mills" unit="sq yd"
            roll-width="13 ft 6 in" length-step="1 ft" full-roll="100 ft"/>
  </goods>
  <offer discount-percent="5" valid-days="30">
    <extra id="X1" name="Moving furniture" price="40.00" cost="20.00" work="yes"/>
    <line item="X1" optional="yes"/>
    <payment name="With the order" percent="40"/>
    <alternative id="B" name="Quillstone Saxony instead"><swap place="a" carpet="quillstone-saxony-slate"/></alternative>
  </offer>{measure("M1", "11 ft 8 in")}{measure("M2", "12 ft 3 in")}
</job>""")
STORE = ("--store", "shop.db")


def store(*arguments):
    return tap.run("store", *arguments, *STORE)


def check_quotation():
    answer = tap.answer("quote", JOB, *STORE, "--measure", "M1", "--date", tap.DATE, "--keep", "--pdf", "q.pdf")
    if not tap.ok(answer is not None, "the quotation is issued"):
        return
    tap.equal(answer["number"], "Q-1", "it has the first number")
    sums = {name: D(answer[name]) for name in ("sum", "discount", "net", "tax", "total")}
    lines = sum(D(line["amount"]) for line in answer["lines"]) - D("40.00")
    tap.equal(sums["sum"], lines, "the sum is that of the lines, without the optional one")
    tap.equal(sums["discount"], (lines * D("0.05")).quantize(D("0.01"), rounding=decimal.ROUND_HALF_UP), "5 % off")
    tap.equal(sums["total"], sums["net"] + sums["tax"], "net and tax are the total")
    tap.equal(sum(D(part["net"]) for part in answer["taxes"]), sums["net"], "the rates part the net")
    tap.equal(sum(D(step["amount"]) for step in answer["payments"]), sums["total"], "the payments are the total")
    listed = store("quotations").stdout
    tap.ok("Q-1-B" in listed, "the other carpet is an option beside it", listed)
    tap.equal(store("accept", "Q-1").returncode, 0, "the customer accepts")
    listed = store("quotations").stdout
    tap.ok("Accepted" in listed and "Declined" in listed, "and so declines the other", listed)
    tap.ok(store("accept", "Q-9").returncode == 1, "a number that is none is refused")


def check_orders():
    process = tap.run("order", JOB, *STORE, "--measure", "M1", "--date", tap.DATE, "--keep")
    tap.ok("Order O-1" in process.stdout, "orders are kept", process.stdout + process.stderr)
    answer = tap.answer("compare", JOB, "M1", "M2", "--cut", *STORE, "--date", tap.DATE)
    extra = " ".join(answer["cures"][0]["extra"]) if answer else ""
    tap.ok("on order" in extra, "measured again before it comes, what is on order is laid first", extra)
    again = tap.run("order", JOB, *STORE, "--measure", "M1", "--date", tap.DATE, "--keep")
    tap.ok(again.returncode == 1 and "O-1" in again.stderr, "it is not ordered twice", again.stderr)
    check_supplement()
    tap.equal(store("arrived", "O-1").returncode, 0, "the mill delivers")
    listed = store("orders", "J-7").stdout
    tap.ok("Received" in listed and "To be sent" in listed, "one has come, the other is to be sent", listed)
    tap.equal(store("arrived", "O-2", "1", "1").returncode, 0, "something of the other comes, which nobody noted as sent")
    listed = store("orders", "J-7").stdout
    tap.ok("Partly received" in listed and "To be sent" not in listed, "so it is no longer to be sent", listed)
    tap.equal(store("arrived", "O-1", "1", "5").returncode, 1, "more than was ordered does not come in")


def supplement(measure, *arguments):
    return tap.answer("order", JOB, *STORE, "--measure", measure, "--date", tap.DATE, "--supplement", *arguments)


def check_supplement():
    """Measured again before anything has come: the difference is ordered, once."""
    same = supplement("M1")
    tap.equal(same["orders"], [], "nothing is missing as long as the room is the same")
    tap.ok(any("O-1" in line for line in same["from_stock"]), "and what is on its way is named", same["from_stock"])
    needs = {line["item"]: D(line["quantity"])
             for line in tap.answer("quantities", JOB, *STORE, "--measure", "M2")["lines"] if line["packs"]}
    orders = {order["supplier"]: order for order in supplement("M2", "--keep")["orders"]}
    mill = orders["Skerrow Mills"]
    tap.equal(mill["supplements"], "O-1", "the order for more carpet names the first")
    tap.ok("O-1" in mill["notes"][0] and "same dye lot" in mill["notes"][0], "on its paper too", mill["notes"])
    first = {order["supplier"]: order
             for order in tap.answer("order", JOB, *STORE, "--measure", "M1", "--date", tap.DATE)["orders"]}
    carpet = [D(order["lines"][0]["quantity"]) for order in (first["Skerrow Mills"], mill)]
    tap.ok(D(0) < carpet[1] < carpet[0], "and is for the strip that is missing, not for the room", carpet)
    bought = {}
    for order in (*first.values(), *orders.values()):
        for line in order["lines"]:
            bought[line["item"]] = bought.get(line["item"], D(0)) + D(line["quantity"])
    tap.ok(all(bought[item] == needs[item] for item in needs), "of all else the two orders are what it takes",
           f"{needs} {bought}")
    tap.equal(supplement("M2")["orders"], [], "ordered once, nothing is missing any more")
    listed = [line.split()[0] for line in store("orders", "J-7").stdout.splitlines()]
    for number in listed[2:]:
        tap.equal(store("cancel", number).returncode, 0, f"{number} is called off again")


def check_accounts():
    """Lines of the accounts add up to the documents, read by Python's csv."""
    listed = tap.answer("quote", JOB, *STORE, "--measure", "M1", "--date", tap.DATE)
    path = tap.home / "accounts.csv"
    process = store("accounts", path)
    if not tap.equal(process.returncode, 0, "the accounts are written"):
        return
    rows = list(csv.DictReader(path.open(encoding="utf-8", newline="")))
    sales = [row for row in rows if row["kind"] == "sale"]
    tap.equal({row["number"] for row in sales}, {"Q-1"}, "what was accepted is a sale, and nothing else")
    for name in ("net", "tax", "total"):
        tap.equal(sum(D(row[name]) for row in sales), D(listed[name]), f"the rates' {name} add up to the quotation's")
    tap.equal({row["party"] for row in sales}, {"Tamsin Oddlebury"}, "the customer is named")
    bought = [row for row in rows if row["kind"] == "purchase"]
    orders = tap.answer("order", JOB, *STORE, "--measure", "M1", "--date", tap.DATE)["orders"]
    tap.equal(sorted((row["party"], D(row["total"])) for row in bought),
              sorted((o["supplier"], D(o["total"])) for o in orders), "orders are purchases")
    tap.equal(store("accounts", path).returncode, 2, "a file that is there is not written over")
    tap.equal(store("accounts", path, "2999-01-01", "--replace").returncode, 0, "unless it is to be")
    tap.equal(len(path.read_text().splitlines()), 1, "nothing has happened in the year 2999")
    tap.equal(store("accounts", path, "tomorrow", "--replace").returncode, 2, "a day that is none is refused")


def check_stock():
    tap.equal(store("receive", "R-1", "fennel-twist-oat", "30 ft", "F-9").returncode, 0, "a roll comes into stock")
    tap.equal(store("reserve", "R-1", "J-7", "15 ft").returncode, 0, "half of it is kept for the job")
    refused = store("reserve", "R-1", "J-8", "16 ft")
    tap.ok(refused.returncode == 1 and "R-1" in refused.stderr, "another job cannot have that half", refused.stderr)
    cut = store("cut", "R-1", "J-7", "15 ft", "1:11'11\"x14'3\"", "remnant:4 ftx9 in")
    tap.equal(cut.returncode, 0, "the piece is cut")
    answer = tap.answer("store", "stock", *STORE)
    rolls = {roll["id"]: roll for roll in answer["rolls"]}
    tap.equal(rolls["R-1"]["length"], 15 * FT, "the balance is on the roll")
    tap.equal(rolls["R-1"]["free"], 15 * FT, "and free")
    remnants = [roll for roll in answer["rolls"] if roll["remnant"]]
    tap.equal([(r["length"], r["width"], r["lot"]) for r in remnants], [(228.6, 4 * FT, "F-9")], "the remnant is labelled")
    tap.ok("Cut" in store("history", "R-1").stdout, "the roll's history says so")


def check_remeasure():
    before = tap.answer("quote", JOB, *STORE, "--measure", "M1", "--date", tap.DATE)
    answer = tap.answer("compare", JOB, "M1", "M2", "--cut", *STORE, "--date", tap.DATE)
    if not tap.ok(answer is not None, "the second measure is planned with what is cut"):
        return
    text = " ".join(answer["shortfalls"])
    tap.ok("Parlour" in text and "4\" too narrow" in text, "it says that the piece is 4 in too narrow", text)
    costs = [D(cure["cost"]) for cure in answer["cures"]]
    tap.equal(costs, sorted(costs), "the cheapest cure comes first")
    tap.ok(len(costs) > 1, "and there is another to choose")
    extra = " ".join(answer["cures"][0]["extra"])
    tap.ok("R-1" in extra and "bought" not in extra, "what it takes besides comes from the same roll", extra)
    tap.ok("14' 3\"" not in extra, "in joined pieces, which take less carpet than one along the wall", extra)
    variation = answer["variation"]
    tap.equal(D(variation["total"]), D(variation["net"]) + D(variation["tax"]), "the variation adds up")
    tap.ok(D(variation["total"]) > 0 and before is not None, "and is charged")
    tap.equal(store("check").returncode, 0, "the store is sound")


check_quotation()
check_orders()
check_accounts()
check_stock()
check_remeasure()
tap.done()
