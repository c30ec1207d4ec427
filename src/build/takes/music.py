"""Meters, keys, names of notes, and charts drawn by lot. Lengths are exact fractions of a quarter note."""

from dataclasses import dataclass
from fractions import Fraction as F


@dataclass(frozen=True)
class Meter:
    name: str
    beat: F          # what a position's `beat` counts, in quarters
    groups: tuple    # the felt groups of a bar, in quarters
    strong: tuple    # numbers of the groups that carry weight, the bar line (0) first
    grouping: str = ""

    @property
    def bar(self):
        return sum(self.groups)

    def group_starts(self):
        starts, at = [], F(0)
        for group in self.groups:
            starts.append(at)
            at += group
        return starts

    def position(self, quarters):
        """{"bar", "beat"} of a place counted from bar 1 beat 1."""
        bar, inside = divmod(F(quarters), self.bar)
        whole, part = divmod(inside / self.beat, 1)
        return {"bar": int(bar) + 1, "beat": f"{whole + 1}+{part}" if part else str(whole + 1)}

    def quarters(self, position):
        """The place of a position, counted from bar 1 beat 1; other programs may write the beat as a number."""
        beat = sum(F(word.strip()) for word in str(position["beat"]).split("+"))
        return (position["bar"] - 1) * self.bar + (beat - 1) * self.beat


QUARTER, DOTTED = F(1), F(3, 2)
METERS = [
    Meter("2/4", QUARTER, (QUARTER,) * 2, (0,)),
    Meter("3/4", QUARTER, (QUARTER,) * 3, (0, 1)),
    Meter("4/4", QUARTER, (QUARTER,) * 4, (0, 2)),
    Meter("5/4", QUARTER, (QUARTER,) * 5, (0, 3)),
    Meter("5/4", QUARTER, (QUARTER,) * 5, (0, 2), "2+3"),
    Meter("6/8", DOTTED, (DOTTED,) * 2, (0, 1)),
    Meter("7/8", F(1, 2), (QUARTER, QUARTER, DOTTED), (0, 2)),
    Meter("7/8", F(1, 2), (DOTTED, QUARTER, QUARTER), (0, 1), "3+2+2"),
    Meter("9/8", DOTTED, (DOTTED,) * 3, (0, 1)),
    Meter("12/8", DOTTED, (DOTTED,) * 4, (0, 2)),
]

LETTERS = "CDEFGAB"
NATURAL = dict(zip(LETTERS, (0, 2, 4, 5, 7, 9, 11)))
SCALES = {
    "minor": (0, 2, 3, 5, 7, 8, 10), "dorian": (0, 2, 3, 5, 7, 9, 10), "blues": (0, 2, 3, 5, 7, 9, 10),
    "major": (0, 2, 4, 5, 7, 9, 11), "mixolydian": (0, 2, 4, 5, 7, 9, 10),
}
TONICS = {
    "minor": "C C# D Eb E F F# G G# Bb B".split(),
    "major": "C Db D Eb E F F# G Ab A Bb".split(),
}
CHROMATIC = {1: 1, 2: 1, 3: 2, 4: 2, 6: 4, 8: 5, 9: 5, 10: 6, 11: 6}  # semitones above the tonic: scale degree, from 0
LADDERS = {
    ("minor", "pentatonic"): (0, 3, 5, 7, 10), ("minor", "blues"): (0, 3, 5, 6, 7, 10),
    ("major", "pentatonic"): (0, 2, 4, 7, 9), ("major", "blues"): (0, 2, 3, 4, 7, 9),
}
# Chords on scale degrees: (degree counted from 0, semitones above the tonic, quality), the tonic's chord first.
CHORDS = {
    "minor": [(0, 0, "m7"), (3, 5, "m7"), (6, 10, "7"), (5, 8, "maj7"), (4, 7, "m7")],
    "dorian": [(0, 0, "m7"), (3, 5, "7"), (1, 2, "m7"), (6, 10, "maj7"), (4, 7, "m7")],
    "blues": [(0, 0, "7"), (3, 5, "7"), (4, 7, "7")],
    "major": [(0, 0, "maj7"), (3, 5, "maj7"), (1, 2, "m7"), (5, 9, "m7"), (4, 7, "7")],
    "mixolydian": [(0, 0, "7"), (3, 5, "7"), (6, 10, "maj7"), (4, 7, "m7")],
}
QUALITIES = {"m7": (0, 3, 7, 10), "7": (0, 4, 7, 10), "maj7": (0, 4, 7, 11)}


def pitch_class(name):
    return NATURAL[name[0]] + name.count("#") - name.count("b")


def spelled(tonic, degree, semitones):
    """The name of the note that lies this many letters and semitones above a tonic."""
    letter = LETTERS[(LETTERS.index(tonic[0]) + degree) % 7]
    away = (pitch_class(tonic) + semitones - NATURAL[letter] + 6) % 12 - 6
    return letter + ("#" * away if away >= 0 else "b" * -away)


def midi_number(name):
    """F#4 is 66, middle C is C4."""
    letter, rest = name[0], name[1:]
    signs = rest[:len(rest) - len(rest.lstrip("#b"))]
    return 12 * (int(rest[len(signs):]) + 1) + NATURAL[letter] + signs.count("#") - signs.count("b")


@dataclass(frozen=True)
class Key:
    tonic: str
    mode: str

    @property
    def name(self):
        return f"{self.tonic} {self.mode}"

    @property
    def kind(self):
        return "major" if self.mode in ("major", "mixolydian") else "minor"

    @property
    def number(self):
        return pitch_class(self.tonic) % 12

    def scale(self):
        """Pitch classes of the scale; a blues key has its minor pentatonic and the major third and sixth of its chords."""
        return {(self.number + step) % 12 for step in SCALES[self.mode]}

    def ladder(self, style):
        """Semitones above the tonic of the notes that lines are made of."""
        return SCALES[self.mode] if style == "diatonic" else LADDERS[self.kind, style]

    def note(self, number):
        away = (number - self.number) % 12
        if away in SCALES[self.mode]:
            name = spelled(self.tonic, SCALES[self.mode].index(away), away)
        else:
            name = spelled(self.tonic, CHROMATIC[away], away)
        octave = (number - (name.count("#") - name.count("b"))) // 12 - 1
        return f"{name}{octave}"


@dataclass(frozen=True)
class Section:
    name: str
    key: Key
    chords: tuple    # (symbol, pitch classes), one a bar


@dataclass(frozen=True)
class Chart:
    title: str
    tempo: int
    meter: Meter
    swing: int       # per cent, 50 is straight
    sections: tuple
    form: tuple      # numbers of sections
    laps: int

    @property
    def quarter_seconds(self):
        return 60 / (self.tempo * (1.5 if self.meter.beat == DOTTED else 1))

    def bars(self):
        """Section of each bar, through all laps."""
        lap = [(section, bar) for number in self.form for section in [self.sections[number]]
               for bar in range(len(section.chords))]
        return lap * self.laps

    def text(self):
        lines = [f"title: {self.title}", f"tempo: {self.tempo}", f"meter: {self.meter.name}"]
        if self.meter.grouping:
            lines.append(f"grouping: {self.meter.grouping}")
        if self.swing > 50:
            lines.append(f"swing: {self.swing}%")
        lines.append("sections:")
        for section in self.sections:
            lines += [f"  {section.name}:", f"    key: {section.key.name}", "    bars: |"]
            symbols = [symbol for symbol, _ in section.chords]
            lines += ["      | " + " | ".join(symbols[at:at + 4]) + " |" for at in range(0, len(symbols), 4)]
        lines.append("form: " + " ".join(self.sections[number].name for number in self.form))
        return "\n".join(lines) + "\n"


FIRST = "amber brick cedar copper dusty early frosted gravel hollow ivory lower mossy narrow paper quiet rusty salted slate tin upper wooden".split()
SECOND = "attic bridge cellar crossing ferry gate garden hinge kettle ladder lantern meadow orchard pier quarry stairs tunnel wharf window yard".split()
SECTIONS = ("near", "far", "beyond")


def draw_chart(dice, meter, tempo, swing, bars_a_slot):
    """A chart with two or three keys, its sections long enough for several phrases each."""
    keys = draw_keys(dice, 3 if dice.random() < 0.2 else 2)
    form, laps = dice.choice([((0, 1, 0, 1), 1), ((0, 1, 0), 1), ((0, 0, 1, 0), 1), ((0, 1), 2), ((0, 1, 1, 0), 1)])
    if len(keys) == 3:
        form, laps = dice.choice([((0, 1, 2, 0), 1), ((0, 1, 2), 1), ((0, 2, 1, 0), 1)])
    sections = []
    for name, key in zip(SECTIONS, keys):
        bars = max(4, bars_a_slot * dice.choice((4, 4, 5, 6)))
        sections.append(Section(name, key, tuple(draw_chords(dice, key, bars))))
    title = f"{dice.choice(FIRST).capitalize()} {dice.choice(SECOND)}"
    return Chart(title, tempo, meter, swing, tuple(sections), form, laps)


def draw_keys(dice, count):
    """Keys a few steps apart, as a rule of one kind; the tonics differ."""
    modes = {"minor": ("minor", "minor", "dorian", "blues"), "major": ("major", "major", "mixolydian")}
    kind = dice.choice(("minor", "minor", "minor", "major"))
    keys = []
    while len(keys) < count:
        wanted = kind if dice.random() < 0.85 else ("major" if kind == "minor" else "minor")
        key = Key(dice.choice(TONICS[wanted]), dice.choice(modes[wanted]))
        if all(key.number != other.number for other in keys):
            keys.append(key)
    return keys


def draw_chords(dice, key, bars):
    choices, chords = CHORDS[key.mode], []
    for bar in range(bars):
        tonic = bar == 0 or dice.random() < 0.45 and bar < bars - 1
        degree, semitones, quality = choices[0] if tonic else dice.choice(choices[1:])
        root = (key.number + semitones) % 12
        chords.append((spelled(key.tonic, degree, semitones) + quality,
                       frozenset((root + step) % 12 for step in QUALITIES[quality])))
    return chords
