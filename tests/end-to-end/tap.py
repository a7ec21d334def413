"""What the end-to-end tests share: running rowcut-cli in a clean home, and reporting TAP.

The program is named by ROWCUT_CLI. Every test program works in a folder of its own that is removed at the end.
"""
import json
import os
import pathlib
import shutil
import subprocess
import tempfile

CLI = os.environ["ROWCUT_CLI"]
SOURCE = pathlib.Path(__file__).resolve().parents[2]
SHARED = pathlib.Path(os.environ["RC_SHARED"]) if os.environ.get("RC_SHARED") else None
DATE = "2026-03-02"

_count = 0
home = pathlib.Path(tempfile.mkdtemp(prefix="rowcut-test-"))


def ok(condition, name, detail=""):
    """Reports one check."""
    global _count
    _count += 1
    print(f"{'ok' if condition else 'not ok'} {_count} - {name}", flush=True)
    if not condition:
        for line in str(detail).splitlines():
            print(f"# {line}", flush=True)
    return bool(condition)


def equal(got, wanted, name):
    return ok(got == wanted, name, f"got {got!r}, wanted {wanted!r}")


def skip(name, why):
    global _count
    _count += 1
    print(f"ok {_count} - {name} # SKIP {why}", flush=True)


def done():
    print(f"1..{_count}", flush=True)
    shutil.rmtree(home, ignore_errors=True)


def run(*arguments, **environment):
    """Runs rowcut-cli in the clean home; returns the finished process, its output as text."""
    env = {k: v for k, v in os.environ.items() if not k.startswith(("LC_", "LANG")) or k == "LOCPATH"}
    env.update(HOME=str(home), XDG_DATA_HOME=str(home / "data"), LC_ALL="C.UTF-8")
    env.update(environment)
    return subprocess.run([CLI, *map(str, arguments)], cwd=home, env=env, capture_output=True, text=True,
                          encoding="utf-8", timeout=120)


def answer(*arguments, **environment):
    """The JSON object a command prints; None, with the reason reported, when it fails."""
    process = run(*arguments, "--json", **environment)
    if process.returncode != 0:
        print(f"# {' '.join(map(str, arguments))}: exit {process.returncode}: {process.stderr}", flush=True)
        return None
    return json.loads(process.stdout)


def write(name, text):
    path = home / name
    path.write_text(text, encoding="utf-8")
    return path
