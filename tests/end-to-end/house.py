#!/usr/bin/env python3
"""Prints TAP: the demo house entered from nothing by keyboard alone, by real key events of the display, and how many
keys each room, area and stair took. What the shop keeps, its price book and its rolls, is there before; what is typed
is read from the demo job as the estimator reads the sketch. Floors, carpet and total come out as the demo job's.
"""
import os
import re
import shutil
import xml.etree.ElementTree as ET
from fractions import Fraction

import tap
from desk import NS, Desk, keys_of

STORE = tap.home / "house.db"
DEMO = tap.SOURCE / "data" / "demo-job.xml"
QUARTER_TURNS = ["N", "E", "S", "W"]
USUAL = {"door": ("32\"", "4 1/2\""), "archway": ("4'", "4 1/2\""), "window": ("4'", "4 1/2\"")}
LEAVES = {"in": [], "out": ["o"], None: ["n"]}


def read_inches(text):
    """The length in inches, exactly."""
    if text == "0":
        return Fraction(0)
    metric = re.fullmatch(r"([\d.]+) (m|mm)", text)
    if metric:
        return Fraction(metric[1]) * (1000 if metric[2] == "m" else 1) / Fraction("25.4")
    feet, rest = re.fullmatch(r"(?:(\d+)')? ?(?:([\d /]+)\")?", text).groups()
    return 12 * int(feet or 0) + sum(Fraction(part) for part in (rest or "0").split())


def write_length(inches, metric):
    """As it is typed: 12'6 1/2, bare inches below a foot, millimetres."""
    if metric:
        return f"{round(inches * Fraction('25.4'))}mm"
    feet, rest = divmod(inches, 12)
    whole, part = divmod(rest, 1)
    tail = " ".join(filter(None, [str(whole) if whole else "", str(part) if part else ""]))
    return f"{feet}'{tail}" if feet else tail


def compact(text):
    return write_length(read_inches(text), text.endswith("m"))


class Estimator(Desk):
    """Types a job from the sketch."""

    def __init__(self, demo):
        super().__init__(STORE)
        self.measure = demo.findall("j:measure", NS)[-1]
        self.names = {room.get("id"): room.get("name") for room in self.measure.findall("j:room", NS)}
        self.entered = []

    def name(self, text, *then):
        self.press("F2", *keys_of(text), *then)

    def enter_rectangle(self, walls):
        self.press("F3", "r", *keys_of(compact(walls[0].get("length"))), "Tab", *keys_of(compact(walls[1].get("length"))),
                   "Return")

    def enter_walls(self, walls):
        """Wall by wall, the way before the length: E12' Return N3' ..."""
        self.press("ctrl+r")
        for i, wall in enumerate(walls):
            way = wall.get("bearing") or wall.get("turn")[0]
            self.press(*keys_of(way.lower() + compact(wall.get("length"))), *(["Return"] if i + 1 < len(walls) else []))

    def press_leads_to(self, opening):
        """The first letter picks the likeliest opening, or the next room that begins with it."""
        room = opening.get("to")
        if room not in self.entered:
            return []
        return [self.names[room][0].lower()]

    def enter_opening(self, opening, wall, offset, metric):
        kind = opening.tag.split("}")[1]
        width, depth = (opening.get(field) for field in ("width", "depth"))
        usual_width, usual_depth = USUAL[kind]
        self.press("F4", *["Down"] * wall, f"alt+{kind[0]}", *keys_of(write_length(offset, metric)))
        fields = [keys_of(compact(width)) if width != usual_width else [],
                  keys_of(compact(depth)) if depth and depth != usual_depth else []]
        if kind == "door":
            fields.append(LEAVES[opening.get("swing")])
        if kind != "window":
            fields.append(self.press_leads_to(opening))
        if opening.get("transition"):
            fields.append([opening.get("transition")[0]])
        while fields and not fields[-1]:
            fields.pop()
        for field in fields:
            self.press("Tab", *field)

    def enter_room(self, room):
        walls = room.findall("j:wall", NS)
        lengths = [read_inches(wall.get("length")) for wall in walls]
        square = [wall.get("bearing") for wall in walls] == ["E", "N", "W", "S"]
        if square:
            self.enter_rectangle(walls)
        else:
            self.enter_walls(walls)
        self.name(room.get("name"))
        if room.get("spread"):
            self.press("alt+s")
        for i, wall in enumerate(walls):
            if wall.get("bow"):
                self.press("F4", *["Down"] * (3 - i), "Tab", *keys_of(compact(wall.get("bow"))))
        for cutout in room.findall("j:cutout", NS):
            self.enter_hearth(cutout)
        for opening in room:
            if opening.tag.split("}")[1] not in USUAL:
                continue
            wall = int(opening.get("wall")) - 1
            offset = read_inches(opening.get("offset"))
            if square:  # a rectangle is walked the other way round, from its west side
                offset = lengths[wall] - offset - read_inches(opening.get("width"))
                wall = 3 - wall
            self.enter_opening(opening, wall, offset, opening.get("width").endswith("m"))
        self.entered.append(room.get("id"))
        return self.count(room.get("name"))

    def enter_hearth(self, cutout):
        """At the west wall, the first of a rectangle: its place from the south-west corner, its size."""
        xs, ys = ([read_inches(point.get(axis)) for point in cutout.findall("j:point", NS)] for axis in "xy")
        self.press("F4", "alt+h", "shift+Tab", "1", "Tab", *keys_of(write_length(min(ys), False)), "Tab", "0", "Tab",
                   *keys_of(write_length(max(ys) - min(ys), False)), "Tab", *keys_of(write_length(max(xs), False)))

    def enter_area(self, area, is_first):
        self.press(*(["F5", "Down", "F2"] if is_first else ["ctrl+l"]))
        self.press(*keys_of(area.get("name")), "Tab", area.get("carpet")[0])
        cushion = (area.get("cushion") or "none")[0]
        self.press("Tab", cushion)
        if area.get("fixing") == "glue":
            self.press("Tab", "s")
        return self.count(f"area {area.get('name')}")

    def enter_stair(self, stair):
        self.press("ctrl+t", *keys_of(stair.get("name")))
        for field in ("steps", "rise", "going", "width"):
            value = stair.get(field)
            self.press("Tab", *keys_of(value if field == "steps" else compact(value)))
        self.press("Tab", stair.get("style")[0], "Tab", "Tab", "Tab", stair.get("carpet")[0], "Tab",
                   stair.get("cushion")[0], "Tab")
        for turn in stair.findall("j:turn", NS):
            self.press("Tab", "space", turn.get("kind")[0], "Tab", "Tab", *keys_of(turn.get("after")), "Tab", "Tab",
                       *keys_of(turn.get("winders")))
            for field in ("going", "width"):
                self.press("Tab", *keys_of(compact(turn.get(field))))
        return self.count(stair.get("name"))

    def enter_house(self):
        rooms = {room.get("id"): room for room in self.measure.findall("j:room", NS)}
        total = 0
        self.press("ctrl+n")
        for i, area in enumerate(self.measure.findall("j:area", NS)):
            total += self.enter_area(area, i == 0)
            for room in area.get("rooms").split():
                total += self.enter_room(rooms[room])
        for stair in self.measure.findall("j:stair", NS):
            total += self.enter_stair(stair)
        return total


def write_demo():
    """The demo job with the shop's rolls as they come into stock here: whole ones, none noted as a remnant."""
    ET.register_namespace("", NS["j"])
    demo = ET.parse(DEMO)
    tap.run("store", "import", "--prices", tap.SOURCE / "data" / "price-book.csv", "--store", STORE)
    for roll in demo.getroot().findall("j:rolls/j:roll", NS):
        roll.attrib.pop("remnant", None)
        tap.run("store", "receive", roll.get("id"), roll.get("goods"), roll.get("length"), roll.get("lot"),
                "--store", STORE)
    path = tap.home / "demo.xml"
    demo.write(path)
    return path, demo.getroot()


def export():
    path = tap.home / "house.xml"
    path.unlink(missing_ok=True)
    done = tap.run("store", "export", "J-1", path, "--store", STORE)
    return path if done.returncode == 0 else None


def get_floors(path):
    plan = tap.answer("plan", path, "--store", STORE, "--seconds", "0")
    return plan and ({area["name"]: area["floor_area"] for area in plan["areas"]}, plan["carpet_length"])


def get_stair(path):
    stair = ET.parse(path).getroot().findall("j:measure", NS)[-1].find("j:stair", NS)
    counts = {field: stair.get(field) for field in ("steps", "style")}
    lengths = {field: read_inches(stair.get(field)) for field in ("rise", "going", "width")}
    turns = [{field: turn.get(field) for field in ("kind", "bend", "after", "winders")}
             | {field: read_inches(turn.get(field)) for field in ("going", "width")}
             for turn in stair.findall("j:turn", NS)]
    return counts | lengths | {"turns": turns}


def compare(demo):
    tap.equal(get_stair(export()), get_stair(demo), "the stair is the demo job's")
    wanted, typed = get_floors(demo), get_floors(export())
    if not tap.ok(wanted and typed, "both jobs can be planned"):
        return
    tap.equal(typed[0], wanted[0], "the floors are the demo job's")
    tap.equal(typed[1], wanted[1], "the carpet is as long as the demo job's")
    quotes = [tap.answer("quote", path, "--store", STORE, "--seconds", "0") for path in (tap.home / "house.xml", demo)]
    lines = [{line["item"]: (line["quantity"], line["amount"]) for line in quote["lines"]} for quote in quotes if quote]
    tap.equal(lines[0], lines[-1], "every line of the quotation is the demo job's")
    tap.equal(*[quote and (quote["net"], quote["total"]) for quote in quotes], "the total is the demo job's")


def main():
    if shutil.which("xdotool") is None or "DISPLAY" not in os.environ:
        print("1..0 # SKIP xdotool or a display is missing")
        return
    demo, root = write_demo()
    user = Estimator(root)
    if tap.ok(user.window is not None, "the window appears"):
        total = user.enter_house()
        print(f"# {total} keys: the whole house", flush=True)
        last = f'width="{read_inches(root.findall("j:measure", NS)[-1].find(".//j:turn", NS).get("width"))}'
        user.wait(lambda: export() and last in export().read_text().rpartition("<turn ")[2].replace("&quot;", '"'))
        compare(demo)
    user.check_end(STORE)
    tap.done()


main()
