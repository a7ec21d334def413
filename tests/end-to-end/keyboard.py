#!/usr/bin/env python3
"""Prints TAP: the desk used by keyboard alone, by real key events of the display, and how many keys each thing took.

Key by key through the running program; what came of it is read back from the store by rowcut-cli. Counted is every key
pressed: a letter, Return, Ctrl+R are one each.
"""
import os
import shutil
import xml.etree.ElementTree as ET

import tap
from desk import NS, Desk, feet

STORE = tap.home / "keyboard.db"


def read_job():
    """The one job in the store; None before there is one, or while it is written."""
    path = tap.home / "keyboard.xml"
    path.unlink(missing_ok=True)
    if tap.run("store", "export", "J-1", str(path), "--store", str(STORE)).returncode != 0:
        return None
    return ET.parse(path).getroot()


def find_room(name):
    job = read_job()
    return job.find(f".//j:room[@name='{name}']", NS) if job is not None else None


def wait_for(desk, name, is_done):
    """The room of that name once it is as wanted."""

    def ask():
        room = find_room(name)
        return room if room is not None and is_done(room) else None

    return desk.wait(ask)


def get_lengths(room):
    return [wall.get("length") for wall in room.findall("j:wall", NS)]


def check_rectangle(desk):
    # On the floor: a room by two sides, then a door in its first wall.
    desk.press("F3", "r", *feet(15), "Tab", *feet(20), "Return", "alt+d")
    room = wait_for(desk, "Room 1", lambda room: room.find("j:door", NS) is not None)
    desk.count("a room of 15 by 20 ft with a door", 12)
    if tap.ok(room is not None, "the room and its door are in the store"):
        tap.equal(sorted(get_lengths(room)), sorted(["15' 0\"", "20' 0\""] * 2), "its walls are 15 and 20 ft")


def check_bay_fronted_l(desk):
    desk.press("ctrl+z", "ctrl+z")
    tap.ok(desk.wait(lambda: find_room("Room 1") is None), "undo takes the door and the room back")
    desk.count("undo of both")
    desk.press("F3", "o")
    for length, way in ((16, "Down"), (6, "Right"), (3, "Page_Down"), (4, "Right"), (3, "Page_Up"), (6, "Right"),
                        (10, "Up"), (8, "Left"), (6, "Up")):
        desk.press(*feet(length), way)
    desk.press("Return")
    room = wait_for(desk, "Room 1", lambda room: len(room.findall("j:wall", NS)) == 10)
    desk.count("a bay-fronted L", 40)
    if tap.ok(room is not None, "the L with its bay is in the store"):
        lengths = get_lengths(room)
        for length in ("16' 0\"", "4' 0\"", "10' 0\"", "8' 0\""):
            tap.ok(length in lengths, f"it has a wall of {length}")


def check_action_by_name(desk):
    # Whatever has no key that one remembers is found by its words.
    desk.press("ctrl+k", *"copy", "space", *"room", "Return")
    room = wait_for(desk, "Room 1", lambda room: len(read_job().findall(".//j:room", NS)) == 2)
    desk.count("an action found by its words")
    tap.ok(room is not None, "the room was copied")


def main():
    if shutil.which("xdotool") is None or "DISPLAY" not in os.environ:
        print("1..0 # SKIP xdotool or a display is missing")
        return
    desk = Desk(STORE)
    if tap.ok(desk.window is not None, "the window appears"):
        desk.press("ctrl+n")
        tap.ok(desk.wait(read_job) is not None, "a new job is in the store")
        desk.count("a new job")
        check_rectangle(desk)
        check_bay_fronted_l(desk)
        check_action_by_name(desk)
    desk.check_end(STORE)
    tap.done()


main()
