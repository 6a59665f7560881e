#!/usr/bin/python3
"""Measures how the program stands damaged files, kills and mutations of its code, and prints docs/reliability.md's tables.

Needs the classes of the tests (mvn test-compile) and their class path:

    mvn -q dependency:build-classpath -Dmdep.outputFile=target/class-path
    src/bench/reliability.py --files 200000 --kills 200

Scores of mutation testing are read from target/pit-PACKAGE/mutations.xml, which
mvn -Ppit -Dpit.package=PACKAGE process-test-classes makes; packages without it are left out.
"""
import argparse
import csv
import subprocess
import sys
from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

ROOT = Path(__file__).resolve().parents[2]
KILLED = ("KILLED", "TIMED_OUT", "MEMORY_ERROR")


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--files", type=int, default=8000, help="damaged files of all kinds together (default 8000)")
    parser.add_argument("--kills", type=int, default=20, help="kills while a session is saved (default 20)")
    parser.add_argument("--seed", type=int, default=1000000, help="of the first file and of the kills")
    return parser.parse_args()


def java(name, *words, heap="500m"):
    """The rows that a program of the tests prints; what it says about faults goes to standard error."""
    path = ":".join([str(ROOT / "target/test-classes"), str(ROOT / "target/classes"),
                     (ROOT / "target/class-path").read_text().strip()])
    command = ["java", f"-Xmx{heap}", "-XX:+UseSerialGC", "-cp", path, f"org.epochrome.robustness.{name}", *map(str, words)]
    made = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
    return made.returncode, list(csv.reader(made.stdout.splitlines()))


def table(rows):
    head, *others = rows
    print("| " + " | ".join(head) + " |")
    print("| " + " | ".join("---" for _ in head) + " |")
    for row in others:
        print("| " + " | ".join(map(str, row)) + " |")
    print()


def mutations():
    rows = [["package", "mutations", "found by a test", "survived", "not covered", "score"]]
    for file in sorted((ROOT / "target").glob("pit-*/mutations.xml")):
        found = Counter(m.get("status") for m in ElementTree.parse(file).getroot())
        killed = sum(found[status] for status in KILLED)
        whole = sum(found.values())
        rows.append([f"`{file.parent.name[4:]}`", whole, killed, found["SURVIVED"], found["NO_COVERAGE"],
                     f"{100 * killed / whole:.0f} %"])
    return rows


def main():
    given = arguments()
    failed, rows = java("HostileFiles", given.files, given.seed)
    table(rows)
    lost, rows = java("Kills", given.kills, given.seed)
    table(rows)
    table(mutations())
    sys.exit(failed or lost)


if __name__ == "__main__":
    main()
