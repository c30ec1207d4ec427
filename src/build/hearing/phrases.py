"""Composes the phrases of the labelled set: what is struck and when, what the fingers do, and the labels that say so."""

import dataclasses

import numpy as np

from lines import SCALES, SHORTEST, pitched, rhythm

FULL_SCALES = ("dorian", "mixolydian", "major")
STOPS = {"third": (3, 4), "fourth": (5,), "fifth": (7,), "sixth": (8, 9), "octave": (12,)}
# How likely each touch is, tried in this order on every note that is long enough for it.
TOUCHES = {
    "picked": {"release": 0.12, "prebend": 0.1, "bend": 0.32, "tremolo": 0.07, "palm": 0.04, "dead": 0.03},
    "fingered": {"slide": 0.18, "hammered": 0.4, "bend": 0.07, "grace slide": 0.1, "curl": 0.32},
    "stops": {"stop": 0.65}, "octaves": {"stop": 0.75},
}
LONG_ENOUGH = {"bend": 0.33, "prebend": 0.4, "release": 0.65, "curl": 0.3, "tremolo": 0.5, "palm": 0, "dead": 0,
               "hammered": 0, "slide": 0.16, "grace slide": 0.28, "stop": 0.14}


@dataclasses.dataclass
class Stroke:
    """One attack of a string. Times in seconds; the curve is points (seconds from the attack, semitones from the key)."""

    at: float
    key: int
    velocity: int
    length: float
    curve: list
    touch: str = "pick"  # pick, palm, soft (sounded by a finger of the fretting hand)
    moves: list = dataclasses.field(default_factory=list)  # (seconds from the attack, gain): a finger falls or leaves

    def offsets(self, at):
        """Semitones from the key at the times given (seconds from the attack)."""
        times, semitones = zip(*self.curve)
        return np.interp(at, times, semitones)


def ease(start, length, low, high):
    """Points of a curve that goes smoothly from one pitch to another."""
    return [(start + length * part, low + (high - low) * part * part * (3 - 2 * part)) for part in np.linspace(0, 1, 9)]


class Composer:
    """Writes one phrase from a stream of chance: strokes to be played, labels to be found, dead strokes in between."""

    def __init__(self, chance, manner, condition, highest):
        self.chance, self.manner = chance, manner
        self.calm = condition == "feedback"  # which needs long notes
        self.tempo = float(round(chance.uniform(60, 180)))
        self.beat = 60 / self.tempo
        names = FULL_SCALES if manner in ("stops", "octaves") else list(SCALES)
        self.tonic, self.scale = int(chance.integers(12)), str(chance.choice(names))
        low = int(chance.integers(40, 66)) if manner in ("picked", "fingered") else int(chance.integers(40, 60))
        self.ladder = [key for key in range(low, min(low + 22, highest - 2) + 1)
                       if (key - self.tonic) % 12 in SCALES[self.scale]]
        self.strokes, self.labels, self.dead = [], [], []
        self.stops = 0
        self.compose(chance)

    def compose(self, chance):
        slots = pitched(chance, rhythm(chance, self.beat, self.calm), self.ladder)
        index = 0
        while index < len(slots):
            index += self.play(slots, index)
        self.end_where_the_next_begins()

    # What the fingers do.

    def play(self, slots, index):
        """Plays the slot and says how many slots were used."""
        start, length, key = slots[index]
        for touch, likely in TOUCHES[self.manner].items():
            if length >= LONG_ENOUGH[touch] and self.chance.random() < likely:
                used = getattr(self, "play_" + touch.replace(" ", "_"))(slots, index)
                if used:
                    return used
        self.stroke(start, length, key, [(0, self.intonation())])
        return 1

    def play_bend(self, slots, index):
        start, length, key = slots[index]
        size = self.chance.choice([1, 2], p=[0.4, 0.6]) + self.chance.normal(0, 0.03)
        wait = self.chance.uniform(0, 0.2 * length)
        rise = min(self.chance.uniform(0.07, 0.24), 0.4 * length)
        self.stroke(start, length, key, [(0, 0)] + ease(wait, rise, 0, size), kind="bend")
        return 1

    def play_prebend(self, slots, index):
        start, length, key = slots[index]
        size = float(self.chance.choice([1, 2]))
        wait = self.chance.uniform(0.3, 0.45) * length
        fall = min(self.chance.uniform(0.08, 0.25), 0.25 * length)
        self.stroke(start, length, key, [(0, size)] + ease(wait, fall, size, 0), kind="prebend")
        return 1

    def play_release(self, slots, index):
        start, length, key = slots[index]
        size = float(self.chance.choice([1, 2]))
        rise = self.chance.uniform(0.08, 0.14)
        held = self.chance.uniform(0.35, 0.5) * length
        curve = [(0, 0)] + ease(0.03, rise, 0, size) + ease(held, self.chance.uniform(0.08, 0.16), size, 0)
        self.stroke(start, length, key, curve, kind="release", peak=size)
        return 1

    def play_curl(self, slots, index):
        start, length, key = slots[index]
        size = self.chance.uniform(0.38, 0.62)
        wait = self.chance.uniform(0.1, 0.35) * length
        rise = min(self.chance.uniform(0.08, 0.3), 0.35 * length)
        self.stroke(start, length, key, [(0, 0)] + ease(wait, rise, 0, size), kind="curl")
        return 1

    def play_tremolo(self, slots, index):
        start, length, key = slots[index]
        count = int(length * self.chance.uniform(8, 11.5))
        for stroke in range(count):
            at = start + stroke * length / count + float(np.clip(self.chance.normal(0, 0.003), -0.006, 0.006))
            self.stroke(at, length / count, key, [(0, 0.0)], quiet=stroke % 2 * 6)
        return 1

    def play_palm(self, slots, index):
        count = int(self.chance.integers(1, 4))
        for start, length, key in slots[index:index + count]:
            self.stroke(start, min(length, 0.3), key, [(0, 0.0)], touch="palm")
        return len(slots[index:index + count])

    def play_dead(self, slots, index):
        if index == len(slots) - 1:
            return 0
        self.dead.append(slots[index][0])
        return 1

    def play_grace_slide(self, slots, index):
        start, length, key = slots[index]
        away = float(self.chance.choice([-3, -2, -2, -1, 2]))
        wait, slide = self.chance.uniform(0.03, 0.06), self.chance.uniform(0.05, 0.11)
        self.stroke(start, length, key, [(0, away)] + self.over_frets(wait, slide, away, 0), kind="slide")
        return 1

    def over_frets(self, start, length, low, high):
        """A slide passes the frets one by one, each blurred."""
        points = []
        for part in np.linspace(0, 1, 25):
            smooth = low + (high - low) * part
            points.append((start + length * part, 0.5 * smooth + 0.5 * round(smooth)))
        return points[:-1] + [(start + length, high)]

    def play_slide(self, slots, index):
        """Into the next note without a new attack; the move lies around the next note's start."""
        if not self.follows(slots, index, 5):
            return 0
        start, length, key = slots[index]
        after, long_after, target = slots[index + 1]
        move = self.chance.uniform(0.04, 0.08)
        curve = [(0, 0.0)] + self.over_frets(after - start - move / 2, move, 0, target - key)
        gain = self.chance.uniform(0.85, 1.1)
        stroke = self.stroke(start, after - start + long_after, key, curve, until=after, moves=[(after - start, gain)])
        self.label(after, stroke.at + stroke.length, key, target, "slide", touch="slide")
        return 2

    def play_hammered(self, slots, index):
        """Two to four notes of which only the first is picked."""
        count = 1
        while count < self.chance.integers(2, 5) and self.follows(slots, index + count - 1, 4):
            count += 1
        if count == 1:
            return 0
        if self.chance.random() < 0.35:
            self.sound_softly(slots[index:index + count])
        else:
            self.step_within(slots[index:index + count])
        return count

    def step_within(self, notes):
        """The string goes on sounding; its length changes within a few milliseconds and it is stirred a little."""
        start, _, key = notes[0]
        curve, moves, before = [(0, 0.0)], [], 0
        for at, _, target in notes[1:]:
            change = self.chance.uniform(0.003, 0.009)
            curve += [(at - start - change / 2, before), (at - start + change / 2, target - key)]
            moves.append((at - start, self.chance.uniform(0.9, 1.5)))
            before = target - key
        last, long_last, _ = notes[-1]
        stroke = self.stroke(start, last - start + long_last, key, curve, until=notes[1][0], moves=moves)
        ends = [at for at, _, _ in notes[2:]] + [stroke.at + stroke.length]
        for (at, _, target), end in zip(notes[1:], ends):
            self.label(at, end, target, target, "legato", touch=self.finger(key, target))
            key = target

    def sound_softly(self, notes):
        """Each finger sounds its note anew, without the pick's edge."""
        start, length, key = notes[0]
        self.stroke(start, length, key, [(0, 0.0)])
        for at, long, target in notes[1:]:
            self.stroke(at, long, target, [(0, 0.0)], kind="legato", touch="soft", quiet=int(self.chance.integers(10, 25)),
                        named=self.finger(key, target))
            key = target

    @staticmethod
    def finger(key, target):
        return "hammer-on" if target > key else "pull-off"

    @staticmethod
    def follows(slots, index, widest):
        """Whether the next slot comes at once, at another pitch that the same string can reach."""
        if index + 1 >= len(slots):
            return False
        (start, length, key), (after, long_after, target) = slots[index:index + 2]
        return abs(start + length - after) < 0.03 and 1 <= abs(target - key) <= widest and min(length, long_after) >= SHORTEST

    def play_stop(self, slots, index):
        """Two strings at once, a little apart in time."""
        start, length, key = slots[index]
        kinds = ["octave"] if self.manner == "octaves" else ["third", "fourth", "fifth", "sixth"]
        fitting = [(kind, key + size) for kind in kinds for size in STOPS[kind]
                   if (key + size - self.tonic) % 12 in SCALES[self.scale] and key + size <= 84]
        if not fitting:
            return 0
        kinds = sorted({kind for kind, _ in fitting})
        kind = str(self.chance.choice(kinds))
        upper = next(key for fit, key in fitting if fit == kind)
        self.stops += 1
        stop = {"group": self.stops, "kind": kind}
        apart = self.chance.uniform(0, 0.016)
        self.stroke(start, length, key, [(0, self.intonation())], stop=stop)
        self.stroke(start + apart, length - apart, upper, [(0, self.intonation())], stop=stop)
        return 1

    # Strokes and labels.

    def intonation(self):
        return float(np.clip(self.chance.normal(0, 0.025), -0.06, 0.06))

    def stroke(self, at, length, key, curve, kind="plain", touch="pick", quiet=0, until=None, peak=None, stop=None,
               moves=(), named=None):
        """Plays and labels one attack; what the string does after `until` is labelled by the caller."""
        velocity = int(np.clip(self.chance.normal(92, 11) - quiet, 50, 120))
        sounding = length * (self.chance.choice([1, 1, 1, 0.9, 0.75, 0.6]) if kind == "plain" and not moves else 1)
        curve, swing = self.shaken(list(curve), sounding, kind, touch, until)
        stroke = Stroke(at, int(key), velocity, float(sounding), curve, touch, list(moves))
        self.strokes.append(stroke)
        struck = key + curve[0][1]
        if kind == "plain" and until is None and not swing:
            struck = key + curve[-1][1]
        reached = key + (curve[0][1] if until is not None else self.settled(curve, swing))
        others = [key + peak] if peak else [reached - swing] if swing else []
        self.label(at, until or at + sounding, struck, reached, kind, vibrato=swing is not None, stop=stop,
                   touch=named or {"pick": "picked", "palm": "palm", "soft": "soft"}[touch], others=others)
        return stroke

    @staticmethod
    def settled(curve, swing):
        return curve[-1][1] if swing is None else curve[-1][1] + swing

    def shaken(self, curve, length, kind, touch, until):
        """Perhaps adds vibrato; gives also how far its middle lies above the pitch without it, or None without vibrato."""
        settles = curve[-1][0]
        starts = settles + self.chance.uniform(0.05, 0.2)
        rate = self.chance.uniform(4.5, 6.8)
        room = length - starts
        if until or touch != "pick" or kind in ("curl", "release") or room < 2 / rate or self.chance.random() > 0.75:
            return curve, None
        from_above = self.chance.random() < 0.4 and kind == "plain"
        width = self.chance.uniform(0.12, 0.22) if from_above else self.chance.uniform(0.12, 0.4)
        times = np.arange(starts, length + 0.1, 0.008)
        wave = np.sin(2 * np.pi * rate * (times - starts)) * np.minimum(1, (times - starts) * rate / 0.8)
        middle = width if from_above else 0.0
        lifted = middle * np.minimum(1, (times - starts) * rate / 0.8)
        base = curve[-1][1]
        shaken = [(float(time), float(base + width * sway + lift)) for time, sway, lift in zip(times, wave, lifted)]
        return curve + [(starts, base)] + shaken + [(length + 0.11, base)], middle

    def sounding_alone(self):
        """Labels of single picked notes, each with its stroke."""
        strokes = {stroke.at: stroke for stroke in self.strokes if not stroke.moves}
        return [(label, strokes[label["at"]]) for label in self.labels if label["at"] in strokes and not label["stop"]]

    def label(self, at, end, struck, reached, kind, vibrato=False, stop=None, touch="picked", others=()):
        self.labels.append({"at": at, "end": end, "struck": float(struck), "reached": float(reached),
                            "orReached": [float(other) for other in others], "kind": kind, "vibrato": bool(vibrato),
                            "touch": touch, "stop": stop})

    def end_where_the_next_begins(self):
        """One hand, one line: a note ends at the latest where the next begins; double stops end together."""
        self.strokes.sort(key=lambda stroke: stroke.at)
        self.labels.sort(key=lambda label: label["at"])
        starts = sorted([label["at"] for label in self.labels] + self.dead)
        for label in self.labels:
            after = [start for start in starts if start > label["at"] + 0.03]
            label["end"] = min([label["end"]] + after[:1])
        heads = sorted([stroke.at for stroke in self.strokes] + self.dead)
        for stroke in self.strokes:
            after = [start for start in heads if start > stroke.at + 0.03]
            stroke.length = min([stroke.length] + [start - stroke.at for start in after[:1]])
