#!/usr/bin/env python3
"""Prints TAP: `rowcut-cli plan` on published layouts, and what its JSON promises."""
import jobs
import tap

FOOT = 304.8  # mm, exactly (encyclopaedia and NIST SP 811 App. B)


def near(a, b, by=0.01):
    return abs(a - b) <= by


def plan(rooms, settings, *options):
    path = tap.write("job.xml", jobs.job(rooms, settings=settings))
    return tap.answer("plan", path, *options)


def feet(answer):
    return round(answer["carpet_length"] / FOOT, 4) if answer else None


def joins(answer):
    return [o["joins"] for o in answer["areas"][0]["options"] if o["chosen"]][0] if answer else None


def check_published_layouts():
    # hasslefreeflooring.com/measure-room-carpet: 15 x 20 ft, 12 ft roll: 12 x 20 and three 4 x 7 ft fills, 27 ft of roll,
    # 324 sq ft, two cross seams. Three pieces of 6 ft 8 in are enough for the 20 ft; bought by the whole foot that is 27.
    parlour = jobs.room("Parlour", "15 ft", "20 ft")
    by_the_foot = jobs.GOODS.replace("roll-width", 'length-step="1 ft" roll-width')
    path = tap.write("job.xml", jobs.job(parlour, settings='trim="0" most-joins="2"', goods=by_the_foot))
    answer = tap.answer("plan", path, "--option", "least-carpet")
    tap.equal(joins(answer), 2, "15 x 20 ft, at most two joins: the fill has two")
    fills = [p for p in answer["areas"][0]["pieces"] if p["kind"] == "fill"] if answer else []
    tap.equal(len(fills), 3, "three pieces")
    tap.ok(answer and feet(answer) <= 27, "and no more than 27 running feet", feet(answer))
    tap.equal(answer and [round(r["length"] / FOOT, 4) for r in answer["rolls"]], [27], "27 are to be bought")
    tap.ok(answer and near(answer["areas"][0]["floor_area"], 300 * 0.09290304, 1e-6), "for a floor of 300 sq ft")
    quantities = tap.answer("quantities", path, "--option", "least-carpet")
    carpet = [line for line in quantities["lines"] if line["item"] == "twist"][0] if quantities else {}
    tap.equal((carpet.get("quantity"), carpet.get("unit")), (36, "sq yd"), "which are 36 sq yd")
    answer = plan(parlour, 'trim="0"')
    tap.ok(answer and feet(answer) <= 27, "with the usual settings it takes no more than 27 ft either", feet(answer))
    # ehow 6737804: 14 x 16 ft, 12 ft roll, drops along 14: two drops, 28 ft; with the fill split in two, 14 + 7 = 21 ft.
    lounge = jobs.room("Lounge", "14 ft", "16 ft")
    answer = plan(lounge, 'trim="0" most-joins="0"', "--option", "least-carpet")
    tap.equal((feet(answer), joins(answer)), (28, 0), "14 x 16 ft without joins takes 28 running feet")
    tap.equal(answer and sorted(p["kind"] for p in answer["areas"][0]["pieces"]), ["drop", "fill"],
              "a drop and a fill along the 14 ft")
    answer = plan(lounge, 'trim="0" most-joins="1"', "--option", "least-carpet")
    tap.equal((feet(answer), joins(answer)), (21, 1), "with at most one join in a fill, 21 running feet")
    answer = plan(lounge, 'trim="0" most-joins="1"', "--option", "fewest-seams")
    tap.equal((feet(answer), joins(answer)), (28, 0), "and the option with the fewest seams is the 28 ft one")


def ring_area(ring):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1]))) / 2e6


def check_promises():
    hall = '<door wall="2" offset="4 ft" width="3 ft" depth="6 in" to="hall"/>'
    rooms = (jobs.room("Parlour", "15 ft", "20 ft", hall) + jobs.room("Hall", "5 ft", "22 ft")
             + '<stair name="Stair" steps="13" rise="7 1/2 in" going="10 in" width="36 in"/>')
    answer = plan(rooms, 'trim="3 in"')
    if not tap.ok(answer is not None, "two rooms and a stair are planned"):
        return
    for field in ("areas", "cuts", "carpet_length", "carpet_area", "waste_percent"):
        tap.ok(field in answer, f"the plan says {field}")
    for area in answer["areas"]:
        name = area["name"]
        for field in ("name", "floor_area", "pile_degrees", "pieces", "seams", "rules_broken", "options"):
            tap.ok(field in area, f"{name} says {field}")
        covered = sum(ring_area(p["outline"]) for p in area["pieces"])
        tap.ok(near(covered, area["floor_area"], 1e-4), f"{name}: the pieces cover the floor",
               f"{covered} of {area['floor_area']}")
        tap.ok(sum(o["chosen"] for o in area["options"]) == 1, f"{name}: one option is chosen")
        measures = [(float(o["cost"]), o["carpet_length"], o["side_seam"] + o["cross_seam"], o["joins"])
                    for o in area["options"] if o["name"] != "with-the-job"]
        tap.ok(not any(a != b and all(x <= y for x, y in zip(a, b)) for a in measures for b in measures),
               f"{name}: no option beats another in everything", measures)
        for option in area["options"]:
            for field in ("name", "chosen", "carpet_length", "length_lower_bound", "carpet_area", "side_seam",
                          "cross_seam", "joins", "cost", "cost_lower_bound", "carpet_cost", "seam_cost", "rule_cost"):
                tap.ok(field in option, f"{name}, {option['name']} says {field}")
            tap.ok(option["length_lower_bound"] <= option["carpet_length"]
                   and float(option["cost_lower_bound"]) <= float(option["cost"]),
                   f"{name}, {option['name']}: bounds are not above what they bound")
        chosen = [o for o in area["options"] if o["chosen"]][0]
        for kind, total in (("side", chosen["side_seam"]), ("cross", chosen["cross_seam"])):
            tap.ok(near(sum(s["length"] for s in area["seams"] if s["kind"] == kind), total, 0.02),
                   f"{name}: the {kind} seams are as long as the option says")
    pieces = [p for area in answer["areas"] for p in area["pieces"]] + answer["stairs"]
    tap.equal(sorted(p["cut"] for p in pieces), sorted(c["label"] for c in answer["cuts"]), "every piece is one cut")
    used = {}
    for cut in answer["cuts"]:
        used[cut["roll"]] = max(used.get(cut["roll"], 0), cut["along"] + cut["length"])
    tap.ok(near(sum(used.values()), answer["carpet_length"]), "the carpet's length is what the cuts reach")
    # Litchfield, Renovation: (10 + 7 1/2 + 1) x 13 + 6 = 246 1/2 in, 36 + 2 1/2 = 38 1/2 in wide.
    stair = answer["stairs"][0]
    tap.ok(near(stair["cut_length"], 246.5 * 25.4) and near(stair["cut_width"], 38.5 * 25.4),
           "a 13 step stair 36 in wide takes a cut of 38 1/2 by 246 1/2 in")


def check_seconds_and_seed():
    path = tap.write("job.xml", jobs.job(jobs.room("Parlour", "15 ft", "20 ft")))
    first = tap.answer("plan", path)
    longer = tap.answer("plan", path, "--seconds", "0.3", "--seed", "5")
    tap.ok(longer and longer["carpet_length"] > 0
           and [o["cost"] for o in longer["areas"][0]["options"] if o["chosen"]]
           <= [o["cost"] for o in first["areas"][0]["options"] if o["chosen"]], "more time never costs more")


check_published_layouts()
check_promises()
check_seconds_and_seed()
tap.done()
