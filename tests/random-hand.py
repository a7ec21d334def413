#!/usr/bin/env python3
"""A hand that clicks, drags and types at random in the real desktop, until it ends or the time is up.

usage: xvfb-run -a -s "-screen 0 1280x800x24" dbus-run-session -- python3 tests/random-hand.py BUILD_FOLDER SECONDS SEED
Best with a build under the sanitizers. The desktop has a home of its own, with the demo job open. The same seed does the
same things, though what they meet depends on time. What the desktop printed is shown; exit status 1 when it ended by
itself, and then what the hand did last is shown too. Needs xdotool.
"""
import os
import pathlib
import random
import subprocess
import sys
import tempfile
import time

WIDTH, HEIGHT = 1280, 800
# All but those that leave the desktop or open the toolkit's own inspector (Ctrl+Q, Ctrl+Shift+D, Ctrl+Shift+I).
KEYS = """Return Escape Tab Tab Tab Down Up Left Right space Delete BackSpace F1 F2 F3 F5 F8 F9 F10 Home End Page_Down
    Page_Up plus minus shift+Tab shift+F10 alt+Left alt+Right alt+d ctrl+z ctrl+z ctrl+shift+z ctrl+y ctrl+n ctrl+shift+n ctrl+b ctrl+p ctrl+d
    ctrl+f ctrl+k ctrl+j ctrl+l ctrl+e ctrl+t ctrl+g ctrl+i ctrl+m ctrl+r ctrl+u ctrl+a ctrl+c ctrl+v ctrl+x ctrl+s ctrl+0
    ctrl+1 ctrl+2 ctrl+3 ctrl+8 ctrl+shift+s ctrl+shift+e ctrl+shift+q ctrl+shift+p ctrl+shift+b ctrl+shift+j ctrl+shift+r
    ctrl+question a c d e j m o p r s t w x 1 2 3""".split()
TEXTS = ["12", "3'4", "12'6 1/2", "0", "-5", "99999'", "abc", "7/8", "3.66 m", "2/7", "1e9", "ñ", "0.5", "100%", "=1+1"]
N_LAST = 25


def choose(hand):
    """The words of one xdotool command."""
    x, y = str(hand.randrange(WIDTH)), str(hand.randrange(HEIGHT))
    share = hand.random()
    if share < 0.45:
        return ["mousemove", x, y, "click", hand.choice("111113")]
    if share < 0.6:
        to = [str(hand.randrange(WIDTH)), str(hand.randrange(HEIGHT))]
        return ["mousemove", x, y, "mousedown", "1", "mousemove", *to, "mouseup", "1"]
    if share < 0.65:
        return ["mousemove", x, y, "click", "--repeat", "3", hand.choice("145")]
    if share < 0.87:
        return ["key", hand.choice(KEYS)]
    if share < 0.97:
        return ["type", "--delay", "2", hand.choice(TEXTS)]
    return ["key", "Escape", "Escape"]


def start(build, home, output):
    """The desktop, with the demo job."""
    places = {name: str(home / name) for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME")}
    environment = dict(os.environ, HOME=str(home), GSK_RENDERER="cairo", LC_ALL="C.UTF-8",
                       ASAN_OPTIONS="detect_leaks=0:abort_on_error=1",
                       UBSAN_OPTIONS="halt_on_error=1:print_stacktrace=1", ROWCUT_LOCALE_DIR=str(build / "po"), **places)
    desktop = subprocess.Popen([build / "rowcut"], cwd=home, env=environment, stdout=output, stderr=output)
    time.sleep(8)
    subprocess.run(["xdotool", "key", "ctrl+shift+o"], check=True)
    time.sleep(5)
    return desktop


def main():
    build, seconds, seed = pathlib.Path(sys.argv[1]).resolve(), float(sys.argv[2]), int(sys.argv[3])
    hand = random.Random(seed)
    done = []
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryFile("w+") as output:
        desktop = start(build, pathlib.Path(folder), output)
        end = time.monotonic() + seconds
        while desktop.poll() is None and time.monotonic() < end:
            done.append(choose(hand))
            subprocess.run(["xdotool", *done[-1]], check=False)
            time.sleep(hand.random() * 0.15)
        ended = desktop.poll()
        print(f"seed {seed}: {len(done)} things done, the desktop", "goes on" if ended is None else f"ended with {ended}")
        if ended is None:
            desktop.kill()
            desktop.wait()
        else:
            print("\n".join(" ".join(words) for words in done[-N_LAST:]))
        output.seek(0)
        print(output.read())
        return 0 if ended is None else 1


sys.exit(main())
