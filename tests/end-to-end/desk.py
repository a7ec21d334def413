"""What the tests of the running desk share: the program with a keyboard in front of it, made of real key events of the
display, and the keys counted. Every key pressed is one: a letter, Return, Ctrl+R.
"""
import os
import subprocess
import time

import tap

NS = {"j": "urn:rowcut:job:1"}
PATIENCE = 40  # seconds for anything that takes time on a busy machine


def make_locale():
    """Where one measures in feet: a new job takes its units from the locale."""
    folder = tap.home / "locale"
    folder.mkdir()
    subprocess.run(["localedef", "-c", "-i", "en_US", "-f", "UTF-8", str(folder / "en_US.UTF-8")], capture_output=True)
    return {"LOCPATH": str(folder), "LC_ALL": "en_US.UTF-8", "LANGUAGE": "en"}


class Desk:
    """The program with the keyboard in front of it."""

    def __init__(self, store):
        self.keys = 0
        env = dict(os.environ, HOME=str(tap.home), XDG_DATA_HOME=str(tap.home / "data"), **make_locale())
        self.process = subprocess.Popen([os.environ["ROWCUT"], "--store", str(store)], env=env, stderr=subprocess.PIPE,
                                        text=True)
        found = self.wait(lambda: self.xdotool("search", "--onlyvisible", "--pid", str(self.process.pid)).split())
        self.window = found[0] if found else None
        if self.window:
            self.xdotool("windowfocus", "--sync", self.window)

    def xdotool(self, *words):
        return subprocess.run(["xdotool", *words], capture_output=True, text=True, timeout=PATIENCE).stdout

    def wait(self, ask):
        """Until there is an answer; None when there is none in time."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end and self.process.poll() is None:
            answer = ask()
            if answer:
                return answer
            time.sleep(0.1)
        return None

    def press(self, *keys):
        """Presses keys, each by its X name."""
        self.xdotool("key", "--delay", "6", *keys)
        self.keys += len(keys)

    def count(self, what, most=None):
        """Tells what the keys since the last count were for, and how many they were."""
        keys, self.keys = self.keys, 0
        print(f"# {keys} keys: {what}", flush=True)
        if most:
            tap.ok(keys < most, f"{what}: under {most} keys", f"{keys} keys")
        return keys

    def quit(self):
        self.press("ctrl+q")
        try:
            self.process.wait(PATIENCE)
        except subprocess.TimeoutExpired:
            self.process.kill()
            return False
        return self.process.returncode == 0

    def check_end(self, store):
        """Quits; nothing was complained of and the store is sound."""
        tap.ok(self.quit(), "Ctrl+Q quits")
        errors = [line for line in self.process.stderr.read().splitlines() if "WARNING" in line or "CRITICAL" in line]
        tap.equal(errors, [], "no warnings of the toolkit")
        tap.ok(tap.run("store", "check", "--store", str(store)).returncode == 0, "the store is sound")


KEYS = {" ": "space", "'": "apostrophe", '"': "quotedbl", "/": "slash", ".": "period", ",": "comma", "-": "minus"}


def keys_of(text):
    """The keys that type a text."""
    return [KEYS.get(letter, letter) for letter in text]


def feet(length):
    """The keys of a length in feet: a bare number is inches."""
    return keys_of(f"{length}'")
