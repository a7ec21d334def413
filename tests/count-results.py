#!/usr/bin/env python3
"""Adds up what meson's test runs reported.

usage: count-results.py BUILD_FOLDER...
What a program that did not end well printed last is shown again: after a crash nothing else tells where it was.
The last line is "N passed, N failed, N skipped", counting single checks, and once each program that did not end well
though its checks passed. Exit status 0 only when there were results in every folder and none failed.
"""
import json
import pathlib
import sys
import xml.etree.ElementTree as ElementTree

N_LAST_LINES = 40


def count(path):
    """Passed, failed and skipped checks of one results file."""
    passed = failed = skipped = 0
    for suite in ElementTree.parse(path).getroot().iter("testsuite"):
        for case in suite.iter("testcase"):
            if case.find("failure") is not None or case.find("error") is not None:
                failed += 1
            elif case.find("skipped") is not None:
                skipped += 1
            else:
                passed += 1
        # A program that stopped early reports itself, not a check.
        if suite.find("error") is not None or suite.find("failure") is not None:
            failed += 1
    return passed, failed, skipped


def find_bad_ends(path):
    """Programs that ended in an error though none of their checks is reported as failed: of leaks, or too early."""
    lines = [json.loads(line) for line in path.read_text().splitlines()]
    return [line for line in lines if line["result"] in ("ERROR", "TIMEOUT", "INTERRUPT")]


def show_end(program):
    """The last of what a program printed."""
    print(f"{program['name']} ended with {program['result']}, after:")
    for line in program.get("stdout", "").splitlines()[-N_LAST_LINES:]:
        print("  " + line)


def main():
    total = [0, 0, 0]
    complete = len(sys.argv) > 1
    for folder in sys.argv[1:]:
        results = sorted(pathlib.Path(folder, "meson-logs").glob("testlog*.junit.xml"))
        if not results:
            print(f"count-results: no results in {folder}", file=sys.stderr)
            complete = False
        for path in results:
            total = [a + b for a, b in zip(total, count(path))]
        for path in pathlib.Path(folder, "meson-logs").glob("testlog*.json"):
            for program in find_bad_ends(path):
                show_end(program)
                total[1] += 1
    print(f"{total[0]} passed, {total[1]} failed, {total[2]} skipped")
    sys.exit(0 if complete and total[1] == 0 and total[0] > 0 else 1)


main()
