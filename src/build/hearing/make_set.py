"""Renders one part of the labelled set of guitar recordings: WAV files, each beside a JSON file of its notes.

usage: make_set.py PART FOLDER [--banks FOLDER] [--samples FOLDER]

PART is a recipe in this folder (tuning, sealed, small): seed, guitars, and how many phrases of each kind. The same
recipe, banks and samples give the same files. The sealed part is refused unless everything it is made of has the
hashes in sealed.sha256. Needs fluidsynth, python3-numpy, python3-scipy and python3-mido; recorded guitars are npm
packages, installed into the samples folder by `npm install --prefix FOLDER NAME@VERSION`.
"""

import argparse
import hashlib
import json
import pathlib

import numpy as np
from scipy import signal
from scipy.io import wavfile

from conditions import conditions, decibels, loudness
from guitars import LEAD, BankGuitar, RecordedGuitar
from phrases import Composer

HERE = pathlib.Path(__file__).parent


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("part")
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--banks", type=pathlib.Path, default=pathlib.Path("/usr/share/sounds/sf2"))
    parser.add_argument("--samples", type=pathlib.Path, default=pathlib.Path("samples"))
    wanted = parser.parse_args()
    recipe = json.loads((HERE / (wanted.part + ".json")).read_text())
    if wanted.part == "sealed":
        check_seal(recipe, wanted)
    wanted.folder.mkdir(parents=True, exist_ok=True)
    workshop = Workshop(recipe, wanted.banks, wanted.samples)
    for number, (manner, condition, kind) in enumerate(listed(recipe)):
        name = f"{number + 1:03d}-{manner}-{condition}"
        workshop.make(number, manner, condition, kind, wanted.folder / name)


def check_seal(recipe, wanted):
    """Compares the generator, the recipe and all sounds with the hashes fixed beforehand."""
    for line in (HERE / "sealed.sha256").read_text().splitlines():
        expected, name = line.split()
        found = [folder / name for folder in (HERE, wanted.banks, wanted.samples / "node_modules")
                 if (folder / name).exists()]
        if not found or digest(found[0]) != expected:
            raise SystemExit(f"the seal is broken: {name} is not what was fixed in sealed.sha256")


def digest(path):
    """SHA-256 of a file, or of a folder's WAV files one after the other by name."""
    files = sorted(path.glob("*.wav")) if path.is_dir() else [path]
    total = hashlib.sha256()
    for file in files:
        total.update(file.read_bytes())
    return total.hexdigest()


def listed(recipe):
    """The phrases one by one: manner, condition, and the kind of guitar (clean or driven)."""
    return [(manner, condition, kind) for manner, condition, kind, count in recipe["phrases"] for _ in range(count)]


class Workshop:
    """Guitars and conditions of one recipe, kept while its phrases are made."""

    def __init__(self, recipe, banks, samples):
        self.recipe, self.banks, self.samples = recipe, banks, samples
        self.conditions = conditions(banks / recipe["band"])
        self.guitars = {}

    def guitar(self, described, rate):
        key = (described["name"], rate)
        if key not in self.guitars:
            if "bank" in described:
                self.guitars[key] = BankGuitar(self.banks / described["bank"], described["program"], rate)
            else:
                self.guitars[key] = RecordedGuitar(self.samples / "node_modules" / described["package"], rate)
        return self.guitars[key]

    def make(self, number, manner, condition, kind, path):
        chance = np.random.default_rng([self.recipe["seed"], number])
        rate = int(chance.choice([44100, 48000]))
        fitting = [guitar for guitar in self.recipe["guitars"] if guitar["kind"] == kind]
        described = fitting[int(chance.integers(len(fitting)))]
        guitar = self.guitar(described, rate)
        phrase = Composer(chance, manner, condition, guitar.highest)
        tuning = chance.uniform(-0.35, 0.35) if condition != "band" and chance.random() < 0.15 else 0.0
        for stroke in phrase.strokes:
            stroke.curve = [(at, offset + tuning) for at, offset in stroke.curve]
        sound = assemble(phrase, guitar.play(phrase.strokes), rate, chance)
        sound = self.conditions[condition](sound, rate, chance, phrase)
        sound *= chance.uniform(0.3, 0.9) / np.abs(sound).max()
        wavfile.write(path.with_suffix(".wav"), rate, np.round(sound * 32767).astype("<i2"))
        labels = {"rate": rate, "seconds": len(sound) / rate, "tempo": phrase.tempo, "phrase": manner,
                  "condition": condition, "sound": kind, "tuningCents": round(100 * tuning, 1),
                  "notes": [rounded(label) for label in phrase.labels], "dead": [round(at, 4) for at in phrase.dead]}
        path.with_suffix(".json").write_text(json.dumps(labels, indent=1) + "\n")


def rounded(label):
    return {key: round(value, 4) if isinstance(value, float)
            else [round(one, 4) for one in value] if isinstance(value, list) else value for key, value in label.items()}


def assemble(phrase, clips, rate, chance):
    """The clips in their places, shaped by the fingers, through a pickup's tone."""
    ends = [stroke.at + stroke.length for stroke in phrase.strokes]
    sound = np.zeros(int((max(ends) + 1.0) * rate))
    for stroke, clip in zip(phrase.strokes, clips):
        shaped = shape(stroke, clip, rate, chance)
        start = int(round((stroke.at - LEAD) * rate))
        sound[start:start + len(shaped)] += shaped[:len(sound) - start]
    for at in phrase.dead:
        thump = dead_stroke(rate, chance) * loudness(sound)
        sound[int(at * rate):int(at * rate) + len(thump)] += thump
    treble = signal.butter(1, chance.uniform(2500, 9000), "lowpass", fs=rate, output="sos")
    return signal.sosfilt(treble, sound)


def shape(stroke, clip, rate, chance):
    """Fingers on the sounding string: damped by the palm, sounded softly, stirred by hammer-ons, stopped at the end."""
    times = np.arange(len(clip)) / rate - LEAD
    damp = chance.uniform(0.008, 0.03)
    gain = np.clip((stroke.length - times) / damp, 0, 1)
    if stroke.touch == "palm":
        gain = gain * np.exp(-np.maximum(0, times) / chance.uniform(0.07, 0.16))
        clip = signal.sosfilt(signal.butter(1, 1800, "lowpass", fs=rate, output="sos"), clip)
    if stroke.touch == "soft":
        gain = gain * np.clip(times / chance.uniform(0.008, 0.02), 0, 1)
    for at, factor in stroke.moves:
        factor = max(factor, stirred(clip * gain, at, rate, chance))
        gain = gain * (1 + (factor - 1) * np.clip((times - at) / 0.006, 0, 1))
    shaped = clip * gain
    for at, _ in stroke.moves:
        around = shaped[int((LEAD + at) * rate):int((LEAD + at + 0.05) * rate)]
        knock = tap(rate, chance) * np.sqrt((around ** 2).mean() + 1e-12) * chance.uniform(0.1, 0.7)
        start = int((LEAD + at - 0.001) * rate)
        shaped[start:start + len(knock)] += knock[:len(shaped) - start]
    return shaped


def stirred(clip, at, rate, chance):
    """What brings a string that has almost faded to 5 to 14 dB below its attack again, as a finger falling on it does."""
    def level(start):
        part = clip[int((LEAD + start) * rate):int((LEAD + start + 0.04) * rate)]
        return np.sqrt((part ** 2).mean() + 1e-12)
    return min(6.0, level(0) * decibels(-chance.uniform(5, 14)) / level(at))


def tap(rate, chance):
    """A finger falls on a string: a few milliseconds of coloured noise."""
    times = np.arange(int(0.02 * rate)) / rate
    noise = chance.normal(size=len(times)) * np.exp(-times / chance.uniform(0.002, 0.005))
    return signal.sosfilt(signal.butter(1, (300, 4000), "bandpass", fs=rate, output="sos"), noise) * 2


def dead_stroke(rate, chance):
    """A string struck while the fretting hand only touches it: a thump without a pitch."""
    times = np.arange(int(0.08 * rate)) / rate
    noise = chance.normal(size=len(times)) * np.exp(-times / chance.uniform(0.008, 0.02)) * np.minimum(1, times / 0.001)
    low = chance.uniform(100, 200)
    return signal.sosfilt(signal.butter(1, (low, chance.uniform(900, 2500)), "bandpass", fs=rate, output="sos"), noise) * 4


if __name__ == "__main__":
    main()
