#!/usr/bin/env python3
"""Puts small faults into the program, one at a time, and sees whether the tests find them.

    src/build/mutants.py [--seed N] [--count N] [--tree TREE] [--beside TREE] [--list]

Works on a copy of the tree, this checkout unless another is named. A fault turns a comparison or a
sign, moves a bound by one, or drops a statement. With --beside only lines are taken that stand once
in each of two trees, in files of other paths: the same seed puts the same faults into moved code
before and after the move. One that does not compile counts for nothing and another is drawn. Ends
with status 1 where one is not found.
"""
import argparse
import collections
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

SOURCES = "src/main/java"
TURNS = [
    (r" <= ", " < "), (r" < ", " <= "), (r" >= ", " > "), (r" > ", " >= "),
    (r" == ", " != "), (r" != ", " == "), (r" \+ (?=\w)", " - "), (r" - (?=\w)", " + "),
    (r" && ", " || "), (r" \|\| ", " && "), (r"\.min\(", ".max("), (r"\.max\(", ".min("),
    (r"\.isBefore\(", ".isAfter("), (r"\.isAfter\(", ".isBefore("),
    (r"\.anyMatch\(", ".allMatch("), (r"\.plus\(", ".minus("), (r"\.minus\(", ".plus("),
]
STATEMENT = re.compile(r"^\s+(?!return|throw|super|this\.\w+ =)[a-z]\w*(\.\w+)*(\(.*\)|\+\+| [+-]?= .*);$")
TEXT = re.compile(r'"|^\s*(\*|//|/\*|import|package)')


def lines(tree):
    """Every line of code with its file and number."""
    for path in sorted((tree / SOURCES).rglob("*.java")):
        for number, line in enumerate(path.read_text().splitlines()):
            if not TEXT.search(line):
                yield path, number, line


def single(tree):
    """The lines that stand once in a tree, with their file, from the tree on, and number."""
    counts = collections.Counter(line for _, _, line in lines(tree))
    return {
        line: (path.relative_to(tree), number)
        for path, number, line in lines(tree) if counts[line] == 1
    }


def faults(line, draw):
    """The ways to change a line."""
    ways = []
    for pattern, other in TURNS:
        ways += [line[:m.start()] + other + line[m.end():] for m in re.finditer(pattern, line)]
    for m in re.finditer(r"(?<![\w.])\d+(?![\w.])", line):
        moved = int(m.group()) + draw.choice([-1, 1])
        if moved >= 0:
            ways.append(line[:m.start()] + str(moved) + line[m.end():])
    if STATEMENT.match(line):
        ways.append("")
    return ways


def drawn(tree, beside, seed):
    """Faults without end, in an order that depends on the seed and the lines alone."""
    places = single(tree)
    if beside:
        there = single(beside)
        moved = lambda line: line in there and there[line][0] != places[line][0]
        places = {line: place for line, place in places.items() if moved(line)}
    choices = sorted(places)
    draw = random.Random(seed)
    while True:
        line = draw.choice(choices)
        ways = faults(line, draw)
        if ways:
            yield places[line], line, draw.choice(ways)


def maven(tree, *goals):
    command = ["mvn", "-B", "-q", *goals, "-Dsurefire.skipAfterFailureCount=1"]
    return subprocess.run(command, cwd=tree, capture_output=True, text=True)


def verdict(copy, path, number, change):
    """What the tests say: found, NOT FOUND, or nothing where it does not compile."""
    place = copy / path
    whole = place.read_text()
    changed = whole.splitlines()
    changed[number] = change
    place.write_text("\n".join(changed) + "\n")
    try:
        if maven(copy, "compile").returncode != 0:
            return None
        return "NOT FOUND" if maven(copy, "test").returncode == 0 else "found"
    finally:
        place.write_text(whole)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--tree", type=pathlib.Path, default=pathlib.Path(__file__).parents[2])
    parser.add_argument("--beside", type=pathlib.Path)
    parser.add_argument("--list", action="store_true", help="only names them")
    args = parser.parse_args()
    missed = tried = 0
    with tempfile.TemporaryDirectory() as folder:
        copy = pathlib.Path(folder) / "copy"
        shutil.copytree(args.tree, copy, ignore=shutil.ignore_patterns("target", ".git"))
        if not args.list and maven(copy, "test").returncode != 0:
            sys.exit("The tests fail without a fault.")
        for (path, number), line, change in drawn(args.tree, args.beside, args.seed):
            if tried == args.count:
                break
            said = "drawn" if args.list else verdict(copy, path, number, change)
            if said:
                tried += 1
                missed += said == "NOT FOUND"
                into = change.strip() or "(dropped)"
                print(f"{said}: {path}:{number + 1}\n    {line.strip()}\n    {into}", flush=True)
    if not args.list:
        print(f"{tried - missed} of {tried} found")
    sys.exit(1 if missed else 0)


if __name__ == "__main__":
    main()
