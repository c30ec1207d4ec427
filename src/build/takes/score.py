"""Compares what `hingetone review TAKE.mid --chart CHART --json` says of the labelled takes with their labels.

usage: score.py SET --answers FOLDER [--instead FOLDER] [--worst N] [--floor WHAT=VALUE ...]

SET holds the labels (NAME.json beside NAME.mid), the answers' folder a NAME.json for each; one that is missing counts as
an answer that says nothing. --instead takes the truth from another folder of answers, so that two people's marks are
compared with each other over the takes that both have. --floor (repeatable) makes the exit status 1 below a value; WHAT is
boundaries, roles, returns, kinds, crossings or landings. README.md says what counts as right.
"""

import argparse
import collections
import json
import pathlib
import sys

from music import METERS, midi_number

SURE = 0.8
NEAR = 0.25          # quarters from the labelled place of a landing
ROLES = ("statement", "reply", "other")
WAYS = ("run", "hold", "rest", "plain")
KINDS = ("other key", "octave", "shifted", "other ending", "exact", "ornamented")


class Take:
    """A take's strokes, by which places in bars become numbers of strokes; a double stop is one."""

    def __init__(self, labels):
        self.meter = next(meter for meter in METERS if meter.name == labels["meter"])
        self.strokes = [note for note in labels["notes"] if note["touch"] != "double"]
        count_in = float(self.meter.bar)
        self.places = [(float(self.meter.quarters(note["at"])), note["seconds"] / labels["quarterSeconds"] - count_in)
                       for note in self.strokes]

    def quarters(self, position):
        return float(self.meter.quarters(position))

    def stroke(self, position):
        """The stroke nearest to a place, by where it was meant or by where it was played."""
        at = self.quarters(position)
        return min(range(len(self.places)), key=lambda number: min(abs(at - place) for place in self.places[number]))

    def phrases(self, answer):
        """The answer's phrases, each with the strokes it holds: up to the next one's first."""
        told = sorted(answer.get("phrases", []), key=lambda phrase: self.quarters(phrase["start"]))
        firsts = [self.stroke(phrase["start"]) for phrase in told]
        return [{**phrase, "strokes": range(first, max(first, after))}
                for phrase, first, after in zip(told, firsts, firsts[1:] + [len(self.strokes)])]


class Tally:
    """Right and wrong answers of one kind, and how sure they were."""

    def __init__(self):
        self.right = self.wrong = self.missed = self.sure = self.sure_right = self.said = 0
        self.confused = collections.Counter()

    def count(self, right, confused=None):
        self.right += right
        self.wrong += not right
        if confused:
            self.confused[confused] += 1

    def said_with(self, confidence, right):
        self.said += confidence is not None
        if confidence is not None and confidence >= SURE:
            self.sure += 1
            self.sure_right += bool(right)

    @property
    def share(self):
        return self.right / max(1, self.right + self.wrong)

    @property
    def f1(self):
        return 2 * self.right / max(1, 2 * self.right + self.wrong + self.missed)


def main():
    wanted = arguments()
    tallies = collections.defaultdict(Tally)
    wrong_by_take, silent = collections.Counter(), []
    for file in sorted(wanted.set.glob("*.json")):
        labels = json.loads(file.read_text())
        truth, answer = labels, wanted.answers / file.name
        if wanted.instead:
            if not (wanted.instead / file.name).exists() or not answer.exists():
                continue
            truth = json.loads((wanted.instead / file.name).read_text())
        silent += [] if answer.exists() else [file.stem]
        told = json.loads(answer.read_text()) if answer.exists() else {}
        before = mistakes(tallies)
        compare(Take(labels), truth, told, tallies)
        wrong_by_take[file.stem] = mistakes(tallies) - before
    if not wrong_by_take:
        raise SystemExit("nothing to compare")
    report(tallies, wrong_by_take, silent, wanted.worst)
    sys.exit(below_floors(tallies, wanted.floor))


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("set", type=pathlib.Path)
    parser.add_argument("--answers", type=pathlib.Path, required=True)
    parser.add_argument("--instead", type=pathlib.Path)
    parser.add_argument("--worst", type=int, default=10)
    parser.add_argument("--floor", action="append", default=[], metavar="WHAT=VALUE")
    return parser.parse_args()


def mistakes(tallies):
    return sum(tallies[name].wrong + tallies[name].missed
               for name in ("boundaries", "roles", "returns", "kinds", "crossings", "landings"))


# One take.

def compare(take, truth, told, tallies):
    labelled, answered = take.phrases(truth), take.phrases(told)
    compare_boundaries(labelled, answered, tallies)
    pairs = [(label, most_shared(label, answered)) for label in labelled]
    compare_roles(pairs, labelled, answered, tallies)
    compare_landings(take, pairs, tallies)
    compare_returns(pairs, labelled, answered, tallies)
    compare_crossings(truth, told, tallies)


def most_shared(one, others):
    """The phrase that holds most of this one's strokes, or None."""
    shared = [(len(set(one["strokes"]) & set(other["strokes"])), -number) for number, other in enumerate(others)]
    count, number = max(shared, default=(0, 0))
    return others[-number] if count else None


def compare_boundaries(labelled, answered, tallies):
    """First notes of phrases, the take's own first note left out; each is matched once, exact places first."""
    wanted = [phrase["strokes"].start for phrase in labelled[1:]]
    said = [phrase["strokes"].start for phrase in answered[1:]]
    for name, reach in (("boundaries", 1), ("boundaries, to the note", 0)):
        left, matched = list(wanted), set()
        for near in range(reach + 1):
            for number, place in enumerate(said):
                found = [one for one in left if abs(one - place) == near]
                if number not in matched and found:
                    left.remove(found[0])
                    matched.add(number)
        tally = tallies[name]
        tally.right += len(matched)
        tally.wrong += len(said) - len(matched)
        tally.missed += len(left)
        if reach:
            for number, phrase in enumerate(answered[1:]):
                tally.said_with(phrase.get("confidence"), number in matched)


def compare_roles(pairs, labelled, answered, tallies):
    for label, answer in pairs:
        role = answer["role"] if answer else "nothing"
        tallies["roles"].count(role == label["role"], (label["role"], role))
        if label["role"] == "reply" and role == "reply":
            asked = next((one for one in answered if one["index"] == answer.get("repliesTo")), None)
            meant = most_shared(asked, labelled) if asked else None
            tallies["what a reply answers"].count(bool(meant) and meant["index"] == label["repliesTo"])
    for answer in answered:
        label = most_shared(answer, labelled)
        tallies["roles"].said_with(answer.get("roleConfidence"), label and label["role"] == answer["role"])


def compare_landings(take, pairs, tallies):
    for label, answer in pairs:
        meant = label.get("landing")
        if not meant:
            continue
        said = answer.get("landing") if answer else None
        if not said:
            tallies["landings"].count(False)
            continue
        places = [take.quarters(place) for place in (meant["at"], *meant.get("orAt", []))]
        stroke = take.strokes[take.stroke(meant["at"])]
        pitches = {midi_number(name) for name in (meant["note"], stroke["note"], stroke["struck"])}
        near = any(abs(take.quarters(said["at"]) - place) <= NEAR for place in places)
        tallies["landings"].count(near and midi_number(said["note"]) in pitches)


def kind(returns):
    """One word for a return: the first that applies."""
    if returns["semitones"] % 12:
        return "other key"
    if returns["semitones"]:
        return "octave"
    if returns["shiftBeats"]:
        return "shifted"
    return "other ending" if returns["ending"] == "different" else "same"


def compare_returns(pairs, labelled, answered, tallies):
    """A return is right when phrase and source are; its kind is judged by the label of that source."""
    tally, kinds = tallies["returns"], tallies["kinds"]
    verdicts = {}
    for label, answer in pairs:
        meant = label.get("returns")
        said = answer.get("returns") if answer and most_shared(answer, labelled) is label else None
        options = [meant, *meant.get("or", [])] if meant else []
        source = next((one for one in answered if said and one["index"] == said["of"]), None)
        of = most_shared(source, labelled)["index"] if source else None
        right = next((option for option in options if option["of"] == of), None)
        tally.right += right is not None
        tally.wrong += said is not None and right is None
        tally.missed += meant is not None and right is None
        if right:
            name, heard = right.get("kind", kind(right)), kind(said)
            kinds.count(heard == kind(right), (name, heard))
            tallies["semitones"].count(said["semitones"] == right["semitones"])
            tallies["shift"].count(abs(said["shiftBeats"] - right["shiftBeats"]) < 0.05)
            tallies["ending"].count(said["ending"] == right["ending"])
        if said:
            verdicts[answer["index"]] = right is not None and kind(said) == kind(right)
    for answer in answered:
        if answer.get("returns"):
            if answer["index"] not in verdicts:
                tally.wrong += 1
            tally.said_with(answer["returns"].get("confidence"), verdicts.get(answer["index"]))


def compare_crossings(truth, told, tallies):
    said = {one["atBar"]: one for one in told.get("crossings", [])}
    for meant in truth.get("crossings", []):
        answer = said.get(meant["atBar"])
        way = answer["kind"] if answer else "nothing"
        tallies["crossings"].count(way == meant["kind"], (meant["kind"], way))
        if answer:
            tallies["crossings"].said_with(answer.get("confidence"), way == meant["kind"])
        if way == "hold" and meant.get("held") and answer.get("held"):
            tallies["held note"].count(midi_number(answer["held"]["note"]) == midi_number(meant["held"]["note"]))
            tallies["held note common or not"].count(answer["held"]["common"] == meant["held"]["common"])


# The report.

def report(tallies, wrong_by_take, silent, worst):
    print(f"{len(wrong_by_take)} takes" + (f", {len(silent)} without an answer: {' '.join(silent[:5])}" if silent else ""))
    for name in ("boundaries", "boundaries, to the note", "returns"):
        tally = tallies[name]
        precision, recall = tally.right / max(1, tally.right + tally.wrong), tally.right / max(1, tally.right + tally.missed)
        print(f"{name:26} F1 {tally.f1:.3f}  precision {precision:.3f}  recall {recall:.3f}  ({tally.right + tally.missed} labelled)")
    for name in ("roles", "what a reply answers", "kinds", "semitones", "shift", "ending", "crossings", "held note",
                 "held note common or not", "landings"):
        tally = tallies[name]
        print(f"{name:26} {tally.share:.3f}  ({tally.right} of {tally.right + tally.wrong})")
    for name, rows, columns in (("roles", ROLES, ROLES), ("kinds", KINDS, KINDS[:4] + ("same",)), ("crossings", WAYS, WAYS)):
        table(name, rows, (*columns, "nothing"), tallies[name].confused)
    print("\nsure (confidence 0.8 or more)")
    sums = [0, 0, 0]
    for name in ("boundaries", "roles", "returns", "crossings"):
        tally = tallies[name]
        sums = [a + b for a, b in zip(sums, (tally.said, tally.sure, tally.sure_right))]
        sure_line(name, tally.said, tally.sure, tally.sure_right)
    sure_line("all", *sums)
    print("\nmost mistakes: " + "  ".join(f"{name} {count}" for name, count in wrong_by_take.most_common(worst)))


def sure_line(name, said, sure, right):
    print(f"{name:26} {sure} of {said} ({sure / max(1, said):.3f}), right {right / max(1, sure):.3f}")


def table(name, rows, columns, confused):
    print(f"\n{name}: labelled (rows), answered (columns)")
    print(" " * 14 + "".join(f"{column:>14}" for column in columns))
    for row in rows:
        if any(confused[row, column] for column in columns):
            print(f"{row:14}" + "".join(f"{confused[row, column]:14}" for column in columns))


def below_floors(tallies, floors):
    below = 0
    for floor in floors:
        name, value = floor.split("=")
        if name not in ("boundaries", "roles", "returns", "kinds", "crossings", "landings"):
            raise SystemExit(f"no such floor: {name}")
        reached = tallies[name].f1 if name in ("boundaries", "returns") else tallies[name].share
        if reached < float(value):
            print(f"{name}: {reached:.3f} is below {value}")
            below = 1
    return below


if __name__ == "__main__":
    main()
