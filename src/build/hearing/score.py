"""Scores transcriptions of the labelled set: how many notes are right, and what they were taken for.

usage: score.py SET --answers FOLDER            NAME.json or NAME.txt for each NAME.wav of the set
       score.py SET --notes-from 'COMMAND {}'   run for each sound ({} is its path); its standard output is the answer

An answer is JSON as `hingetone transcribe --json` writes it, or lines of three numbers: MIDI pitch, start and end in
seconds (aubionotes). --late SECONDS is taken off every start; `--late best` tries 0 to 150 ms and keeps the best.
--keep FOLDER keeps the answers got by --notes-from. --floor GROUP=F1 (repeatable) makes the exit status 1 below it.

A note is right when it starts within 50 ms of the label's start and reaches a pitch within 20 cents of the label's;
pairs are chosen so that as many notes as possible are right, each label and each answer used once. An answer in the
place of a dead stroke or an echo is wrong. Needs python3-numpy and python3-scipy.
"""

import argparse
import collections
import json
import pathlib
import shlex
import subprocess
import sys

import numpy as np
from scipy.optimize import linear_sum_assignment

NEAR, IN_TUNE = 0.050, 0.20  # seconds, semitones
BEND_FAMILY = ("bend", "prebend", "release")
CLASSES = ("plain", "vibrato", "bend", "slide", "legato")

# Groups by name: which sounds belong to them, from a label file's phrase, condition and sound.
GROUPS = {
    "all": lambda phrase, condition, sound: True,
    "picked-clean": lambda phrase, condition, sound: phrase == "picked" and condition in ("dry", "hiss", "hum") and sound == "clean",
    "picked-driven": lambda phrase, condition, sound: phrase == "picked" and (condition in ("overdrive", "feedback") or sound == "driven"),
    "picked-room": lambda phrase, condition, sound: phrase == "picked" and condition == "room",
    "picked-delay": lambda phrase, condition, sound: phrase == "picked" and condition == "delay",
    "picked-band": lambda phrase, condition, sound: phrase == "picked" and condition == "band",
    "fingered-dry": lambda phrase, condition, sound: phrase == "fingered" and condition in ("dry", "hiss") and sound == "clean",
    "fingered-room": lambda phrase, condition, sound: phrase == "fingered" and condition == "room",
    "fingered-delay": lambda phrase, condition, sound: phrase == "fingered" and condition == "delay",
    "fingered-driven": lambda phrase, condition, sound: phrase == "fingered" and (condition == "overdrive" or sound == "driven"),
    "fingered-band": lambda phrase, condition, sound: phrase == "fingered" and condition == "band",
    "stops": lambda phrase, condition, sound: phrase == "stops",
    "octaves": lambda phrase, condition, sound: phrase == "octaves",
}


def main():
    wanted = arguments()
    sounds = {path.stem: json.loads(path.read_text()) for path in sorted(wanted.set.glob("*.json"))}
    if not sounds:
        raise SystemExit(f"{wanted.set} holds no label files")
    answers = {name: read_answer(answer_text(name, wanted)) for name in sounds}
    late = best_lateness(sounds, answers) if wanted.late == "best" else float(wanted.late)
    answers = {name: earlier(notes, late) for name, notes in answers.items()}
    if late:
        print(f"{1000 * late:.0f} ms taken off every start")
    scores = report_groups(sounds, answers)
    report_techniques(sounds, answers)
    report_tuning(sounds, answers)
    report_misses(sounds, answers, wanted.worst)
    sys.exit(below_floors(scores, wanted.floor))


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("set", type=pathlib.Path)
    source = parser.add_mutually_exclusive_group(required=True)
    source.add_argument("--answers", type=pathlib.Path)
    source.add_argument("--notes-from", metavar="COMMAND")
    parser.add_argument("--keep", type=pathlib.Path)
    parser.add_argument("--late", default="0")
    parser.add_argument("--worst", type=int, default=10)
    parser.add_argument("--floor", action="append", default=[], metavar="GROUP=F1")
    return parser.parse_args()


# Answers.

def answer_text(name, wanted):
    if wanted.answers:
        files = [wanted.answers / (name + ending) for ending in (".json", ".txt")]
        found = [file for file in files if file.exists()]
        if not found:
            raise SystemExit(f"no answer for {name} in {wanted.answers}")
        return found[0].read_text()
    sound = str(wanted.set / (name + ".wav"))
    command = [sound if word == "{}" else word for word in shlex.split(wanted.notes_from)]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode != 0:
        print(f"{name}: no answer (exit status {done.returncode}): {done.stderr.strip().splitlines()[:1]}")
        return ""
    if wanted.keep:
        wanted.keep.mkdir(parents=True, exist_ok=True)
        ending = ".json" if done.stdout.lstrip().startswith("{") else ".txt"
        (wanted.keep / (name + ending)).write_text(done.stdout)
    return done.stdout


def read_answer(text):
    """A dict with the notes, by start, and the tuning found; lines of numbers know neither tuning nor technique."""
    if text.lstrip().startswith("{"):
        answer = json.loads(text)
        return {"tuningCents": answer["tuningCents"] or 0.0, "knows": True,
                "notes": sorted(answer["notes"], key=lambda note: note["at"])}
    rows = [[float(word) for word in line.split()] for line in text.splitlines()]
    notes = [{"at": row[1], "end": row[2], "struck": row[0], "reached": row[0], "technique": "plain", "vibrato": False}
             for row in rows if len(row) == 3]
    return {"tuningCents": 0.0, "knows": False, "notes": sorted(notes, key=lambda note: note["at"])}


def earlier(answer, seconds):
    return {**answer, "notes": [{**note, "at": note["at"] - seconds} for note in answer["notes"]]}


def best_lateness(sounds, answers):
    """The constant, in steps of 5 ms, with which most notes are right."""
    def right(late):
        return sum(len(matched(label, earlier(answers[name], late))) for name, label in sounds.items())
    return max(np.arange(0, 0.151, 0.005), key=right)


# Matching.

def tuning_apart(sound, answer):
    """Semitones to add to an answer's pitches to compare them with the labels: two when the answer knows no tuning.

    Both count from the recording's own tuning, so that what is compared is what sounds. An answer that only knows
    pitches is taken as it is or rid of the recording's tuning, whichever is right.
    """
    if answer["knows"]:
        return [(answer["tuningCents"] - sound["tuningCents"]) / 100]
    return [0.0, -sound["tuningCents"] / 100]


def pitch_error(label, note, away):
    """Semitones between answer and label; a vibrato or a release has two right pitches."""
    return min(abs(note["reached"] + shift - pitch)
               for shift in away for pitch in [label["reached"], *label["orReached"]])


def matched(sound, answer, fits=None):
    """Pairs (label number, answer number) of right notes: as many as possible, and of those the nearest in time."""
    labels, notes = sound["notes"], answer["notes"]
    away = tuning_apart(sound, answer)
    fits = fits or (lambda label, note: pitch_error(label, note, away) <= IN_TUNE)
    apart = np.abs(np.subtract.outer([label["at"] for label in labels], [note["at"] for note in notes]))
    cost = np.ones(apart.shape)
    for row, column in np.argwhere(apart <= NEAR):
        if fits(labels[row], notes[column]):
            cost[row, column] = -1 + apart[row, column]
    return [(int(row), int(column)) for row, column in zip(*linear_sum_assignment(cost)) if cost[row, column] < 0]


def f1(right, labels, notes):
    return 2 * right / (labels + notes) if labels + notes else 0.0


# Reports.

def report_groups(sounds, answers):
    """Prints F1, precision and recall of every group, and F1 of the starts alone; gives F1 by group."""
    print(f"{'group':16} {'sounds':>6} {'notes':>6} {'F1':>6} {'prec.':>6} {'recall':>6} {'starts':>7}")
    scores = {}
    for group, belongs in GROUPS.items():
        names = [name for name, sound in sounds.items() if belongs(sound["phrase"], sound["condition"], sound["sound"])]
        if not names:
            continue
        right = sum(len(matched(sounds[name], answers[name])) for name in names)
        starts = sum(len(matched(sounds[name], answers[name], lambda label, note: True)) for name in names)
        labels = sum(len(sounds[name]["notes"]) for name in names)
        notes = sum(len(answers[name]["notes"]) for name in names)
        scores[group] = f1(right, labels, notes)
        print(f"{group:16} {len(names):6} {labels:6} {scores[group]:6.3f} {right / max(1, notes):6.3f} "
              f"{right / max(1, labels):6.3f} {f1(starts, labels, notes):7.3f}")
    return scores


def technique(kind, vibrato):
    if kind in BEND_FAMILY:
        return "bend"
    if kind in ("plain", "curl"):
        return "vibrato" if vibrato else "plain"
    return kind


def report_techniques(sounds, answers):
    """What notes of each technique were taken for, over notes found: in time, and struck or reached as labelled."""
    if not all(answer["knows"] for answer in answers.values()):
        print("\ntechniques: the answers name none")
        return
    told, curls = collections.Counter(), collections.Counter()
    for name, sound in sounds.items():
        if sound["phrase"] not in ("picked", "fingered"):
            continue
        away = tuning_apart(sound, answers[name])

        def found(label, note):
            return pitch_error(label, note, away) <= IN_TUNE or abs(note["struck"] + away[0] - label["struck"]) <= 0.5

        for row, column in matched(sound, answers[name], found):
            label, note = sound["notes"][row], answers[name]["notes"][column]
            if label["kind"] != "curl":
                told[technique(label["kind"], label["vibrato"]), technique(note["technique"], note["vibrato"])] += 1
            if label["kind"] in ("plain", "curl"):
                curls[label["kind"], "curl" if note["technique"] == "curl" else "other"] += 1
    print("\ntechniques (rows: labelled, columns: told; notes found only)")
    print(f"{'':9}" + "".join(f"{name:>9}" for name in CLASSES) + f"{'share':>9}")
    shares = []
    for row in CLASSES:
        total = sum(told[row, column] for column in CLASSES)
        if total:
            shares.append(told[row, row] / total)
            print(f"{row:9}" + "".join(f"{told[row, column]:9}" for column in CLASSES) + f"{shares[-1]:9.3f}")
    right, total = sum(told[name, name] for name in CLASSES), sum(told.values())
    if total:
        print(f"told apart: {right / total:.3f} of the notes; mean over the techniques {np.mean(shares):.3f}")
    hit, wrong = curls["curl", "curl"], curls["plain", "curl"]
    missed = curls["curl", "other"]
    share_plain = curls["plain", "other"] / max(1, curls["plain", "other"] + wrong)
    print(f"curl against plain: curls told {hit} of {hit + missed}, plain notes called curl {wrong}; "
          f"F1 {f1(hit, hit + missed, hit + wrong):.3f}, mean of both shares {(hit / max(1, hit + missed) + share_plain) / 2:.3f}")


def report_tuning(sounds, answers):
    if all(answer["knows"] for answer in answers.values()):
        errors = [abs(answers[name]["tuningCents"] - sound["tuningCents"]) for name, sound in sounds.items()]
        print(f"tuning of the whole recording: off by {np.median(errors):.1f} cents in the middle, at most {max(errors):.1f}")


def report_misses(sounds, answers, count):
    """The sounds with most wrong and missing notes, the first few of each, and which kinds are missed most."""
    kinds, rows = collections.Counter(), []
    totals = collections.Counter()
    for name, sound in sounds.items():
        pairs = matched(sound, answers[name])
        hit, used = {row for row, _ in pairs}, {column for _, column in pairs}
        missed = [label for number, label in enumerate(sound["notes"]) if number not in hit]
        invented = [note for number, note in enumerate(answers[name]["notes"]) if number not in used]
        totals.update(described(label) for label in sound["notes"])
        kinds.update(described(label) for label in missed)
        rows.append((f1(len(pairs), len(sound["notes"]), len(answers[name]["notes"])), name, missed, invented))
    print("\nmissed by kind: " + ", ".join(f"{kind} {number} of {totals[kind]}" for kind, number in kinds.most_common()))
    print(f"\nthe {count} worst sounds")
    for score, name, missed, invented in sorted(rows, key=lambda row: row[0])[:count]:
        print(f"{name} {score:.3f}: {len(missed)} missed, {len(invented)} invented")
        for label in missed[:3]:
            print(f"    missed   {label['at']:7.3f} s {described(label)} {label['struck']:.2f} -> {label['reached']:.2f}")
        for note in invented[:3]:
            print(f"    invented {note['at']:7.3f} s {note['technique']} {note['struck']:.2f} -> {note['reached']:.2f}")


def described(label):
    return (label["stop"]["kind"] if label["stop"] else label["kind"] if label["kind"] != "plain" else label["touch"]) \
        + (" with vibrato" if label["vibrato"] else "")


def below_floors(scores, floors):
    """1 when a group lies below its floor or has no sounds, else 0."""
    low = 0
    for group, floor in (floor.split("=") for floor in floors):
        if scores.get(group, 0.0) < float(floor):
            print(f"below the floor: {group} has F1 {scores.get(group, 0.0):.3f}, expected at least {floor}")
            low = 1
    return low


if __name__ == "__main__":
    main()
