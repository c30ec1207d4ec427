"""Plays a composed solo as people play: early and late, a note missed, another wrong, graces, bends, double stops."""

import statistics
from dataclasses import dataclass
from fractions import Fraction as F

import mido

from layout import Note

TICKS = 960
CLOSEST = 0.03  # seconds between notes struck one after the other


@dataclass
class Played:
    phrase: int
    note: Note
    main: bool
    start: float    # seconds from the beginning of the file
    end: float
    velocity: int
    off: float      # seconds late


@dataclass(frozen=True)
class Hand:
    lag: float      # seconds, late is positive
    spread: float
    slips: float    # how often, for one note
    bends: bool
    doubles: bool


def draw_hand(dice):
    return Hand(dice.uniform(-0.035, 0.045), dice.uniform(0.016, 0.028), dice.uniform(0.01, 0.035),
                dice.random() < 0.3, dice.random() < 0.15)


def perform(phrases, chart, hand, dice, ladder):
    """The notes as played, in order. `ladder` gives the notes of the line's scale at a place."""
    played = []
    for number, phrase in enumerate(phrases):
        drift = dice.gauss(0, 0.3 * hand.spread)
        for note, main in touched(phrase, hand, dice, ladder):
            off = hand.lag + drift + dice.gauss(0, 0.95 * hand.spread)
            played.append(sound(number, note, main, off, chart, dice))
    played.sort(key=lambda one: (one.note.at, one.note.touch == "double"))
    separate(played, chart, dice)
    return played


def touched(phrase, hand, dice, ladder):
    """The phrase's notes with slips and ornaments, each with whether it is the main note."""
    last = len(phrase.notes) - 1
    for number, note in enumerate(phrase.notes):
        main = number == phrase.main
        safe = main or number in (0, last) or note.touch != "plain"
        scale = ladder(note.at)
        if not safe and dice.random() < hand.slips:
            continue
        if not safe and dice.random() < hand.slips:
            yield Note(note.at, note.long, note.pitch + dice.choice((1, -1)), "wrong"), False
            continue
        if note.touch == "plain" and dice.random() < hand.slips and note.long >= F(1, 2):
            below = max((pitch for pitch in scale if pitch < note.pitch), default=note.pitch - 2)
            yield Note(note.at - F(1, 8), F(1, 8), below, "grace"), False
        if main and hand.bends and dice.random() < 0.6 and note.long >= 1:
            yield Note(note.at, note.long, note.pitch, "bend", note.pitch - dice.choice((1, 2, 2))), True
        else:
            yield note, main
        if main and hand.doubles and dice.random() < 0.5:
            thirds = [pitch for pitch in scale if 3 <= note.pitch - pitch <= 5]
            if thirds:
                yield Note(note.at, note.long, thirds[-1], "double"), False
        if note.long >= 1 and not main and dice.random() < hand.slips / 2:
            yield Note(note.at + note.long / 2, F(1, 8), note.pitch - dice.choice((1, 2)), "ghost"), False


def swung(at, chart):
    """Where a place of a straight beat lies when the off-beat is late."""
    if chart.swing == 50:
        return float(at)
    late, whole, inside = chart.swing / 100, at // 1, float(at % 1)
    return float(whole) + (2 * late * inside if inside < 0.5 else late + (2 * inside - 1) * (1 - late))


def sound(phrase, note, main, off, chart, dice):
    quarter = chart.quarter_seconds
    start = (swung(note.at, chart) + float(chart.meter.bar)) * quarter + off
    end = (swung(note.at + note.long, chart) + float(chart.meter.bar)) * quarter + off
    gate = dice.uniform(0.72, 0.98) if note.long < 1 else dice.uniform(0.9, 1.0)
    velocity = {"ghost": 28, "grace": 62}.get(note.touch, 100 if main else 80) + (6 if note.at % chart.meter.bar == 0 else 0)
    return Played(phrase, note, main, start, start + (end - start) * gate, velocity + dice.randint(-8, 8), off)


def separate(played, chart, dice):
    """Notes stay in order and end where the next one starts; the two of a double stop start and end together."""
    for one, other in zip(played, played[1:]):
        if other.note.touch == "double":
            other.start, other.end, other.off = one.start + dice.uniform(0, 0.012), one.end, one.off
        elif other.start < one.start + CLOSEST:
            other.end += one.start + CLOSEST - other.start
            other.off += one.start + CLOSEST - other.start
            other.start = one.start + CLOSEST
    for number, one in enumerate(played):
        following = next((other for other in played[number + 1:] if other.note.touch != "double"), None)
        if following and one.end > following.start - 0.004:
            one.end = max(one.start + 0.02, following.start - 0.004)


def timing(played):
    offsets = [1000 * one.off for one in played if one.note.touch in ("plain", "wrong", "bend")]
    return {"meanMs": round(statistics.mean(offsets), 1), "spreadMs": round(statistics.pstdev(offsets), 1), "latencyMs": None}


def midi_file(played, chart):
    """Format 1: a track with the tempo and one named Lead; a bar of count-in goes before bar 1."""
    quarter = round(chart.quarter_seconds * 1e6)
    file = mido.MidiFile(type=1, ticks_per_beat=TICKS)
    title = mido.MidiTrack()
    title.append(mido.MetaMessage("track_name", name=chart.title))
    numerator, denominator = (int(part) for part in chart.meter.name.split("/"))
    title.append(mido.MetaMessage("time_signature", numerator=numerator, denominator=denominator))
    title.append(mido.MetaMessage("set_tempo", tempo=quarter))
    events = [(0, 0, mido.Message("program_change", program=27))]
    if any(one.note.struck for one in played):
        events += [(0, 1, mido.Message("control_change", control=control, value=value))
                   for control, value in ((101, 0), (100, 0), (6, 2), (38, 0))]
    for one in played:
        events += note_events(one)
    lead, before = mido.MidiTrack(), 0
    lead.append(mido.MetaMessage("track_name", name="Lead"))
    for seconds, _, message in sorted(events, key=lambda event: event[:2]):
        tick = round(seconds * 1e6 / quarter * TICKS)
        lead.append(message.copy(time=tick - before))
        before = tick
    file.tracks += [title, lead]
    return file


def note_events(one):
    """(seconds, order at one instant, message). A bend starts 60 ms after the stroke and takes 110 ms."""
    pitch = one.note.struck or one.note.pitch
    velocity = max(1, min(127, one.velocity))
    events = [(one.start, 4, mido.Message("note_on", note=pitch, velocity=velocity)),
              (one.end, 2, mido.Message("note_off", note=pitch, velocity=0))]
    if one.note.struck:
        bent = round(8191 * (one.note.pitch - one.note.struck) / 2)
        for step in range(1, 7):
            at = one.start + 0.06 + 0.11 * step / 6
            if at < one.end:
                events.append((at, 3, mido.Message("pitchwheel", pitch=bent * step // 6)))
        events.append((one.end, 3, mido.Message("pitchwheel", pitch=0)))
    return events
