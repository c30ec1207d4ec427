"""The labels of a played solo, in the words of `review --json`, and crossings by their definition.

A crossing is judged by where its notes were meant to stand (a note that belongs to the line is struck on it, however
early it comes) and by how long they sounded.
"""

import itertools
from fractions import Fraction as F

from perform import timing


def labels(name, chart, phrases, played):
    meter = chart.meter
    keys = [section.key for section, _ in chart.bars()]

    def spelled(at, pitch):
        return keys[min(max(0, int(at // meter.bar)), len(keys) - 1)].note(pitch)

    notes = []
    for index, one in enumerate(played):
        note = one.note
        notes.append({
            "index": index, "at": meter.position(note.at), "seconds": round(one.start, 4), "endSeconds": round(one.end, 4),
            "note": spelled(note.at, note.pitch), "struck": spelled(note.at, note.struck or note.pitch), "touch": note.touch,
        })
    return {
        "version": 1, "take": name, "chart": f"{name}.yaml", "meter": meter.name, "tempo": chart.tempo,
        "quarterSeconds": chart.quarter_seconds, "swing": chart.swing, "timing": timing(played), "notes": notes,
        "phrases": [phrase_label(number, phrases, played, notes, meter) for number in range(len(phrases))],
        "crossings": [crossing_label(bar, chart, played, keys, spelled)
                      for bar in range(1, len(keys)) if keys[bar] != keys[bar - 1]],
    }


def phrase_label(number, phrases, played, notes, meter):
    phrase = phrases[number]
    own = [index for index, one in enumerate(played) if one.phrase == number]
    end = max(played[index].note.at + played[index].note.long for index in own)
    label = {
        "index": number + 1, "first": own[0], "last": own[-1], "start": notes[own[0]]["at"], "end": meter.position(end),
        "notes": len(own), "role": phrase.role, "made": phrase.how,
        "repliesTo": None if phrase.replies_to is None else phrase.replies_to + 1,
        "pickupBeats": None, "landing": None, "returns": None,
    }
    if phrase.main is not None and phrase.role != "other":
        index = next(index for index in own if played[index].main)
        at = played[index].note.at
        # A push belongs to the line an eighth after it: either place is right.
        places = [at] + ([at + F(1, 2)] if phrase.push else [])
        label["landing"] = {
            "index": index, "at": meter.position(at), "orAt": [meter.position(place) for place in places[1:]],
            "note": notes[index]["note"], "offsetMs": round(1000 * played[index].off, 1),
        }
        label["pickupBeats"] = float((at - played[own[0]].note.at) / meter.beat)
    relations = [relation(number, other, phrases, meter) for other in range(number) if related(phrase, phrases[other])]
    if relations:
        source = next((one for one in relations if one["of"] == (phrase.source or 0) + 1), relations[0])
        label["returns"] = {**source, "or": [one for one in relations if one is not source]}
    return label


def related(one, other):
    return one.lineage is not None and other.lineage is not None and one.lineage.root == other.lineage.root


def relation(number, other, phrases, meter):
    """How a phrase comes back from an earlier one of its root."""
    one, before = phrases[number].lineage, phrases[other].lineage
    semitones = one.semitones - before.semitones
    shift = (one.shift - before.shift + meter.bar / 2) % meter.bar - meter.bar / 2
    ornamented = one.ornamented or before.ornamented
    ending = "same" if one.ending == before.ending else "different"
    if semitones % 12:
        kind = "other key"
    elif semitones:
        kind = "octave"
    elif shift:
        kind = "shifted"
    elif ending == "different":
        kind = "other ending"
    else:
        kind = "ornamented" if ornamented else "exact"
    return {"of": other + 1, "kind": kind, "semitones": semitones, "octaves": int(semitones / 12),
            "shiftBeats": float(shift / meter.beat), "openingNotes": opening(phrases[number], phrases[other]),
            "ending": ending, "ornamented": ornamented}


def opening(one, other):
    """How many notes from the start lie alike around the main note."""
    def around(phrase):
        main = phrase.notes[phrase.main]
        return [(note.at - main.at, note.pitch - main.pitch) for note in phrase.notes if note.touch == "plain"]
    return sum(1 for _ in itertools.takewhile(lambda pair: pair[0] == pair[1], zip(around(one), around(other))))


def crossing_label(bar, chart, played, keys, spelled):
    meter, line = chart.meter, bar * chart.meter.bar
    kind, held = crossing_kind(line, chart, played, 1, 3)
    kinds = {crossing_kind(line, chart, played, scale, moves)[0] for scale in (0.87, 1, 1.15) for moves in (3, 4)}
    before, into = densities(line, meter, played)
    both = keys[bar].scale() & keys[bar - 1].scale()
    return {
        "atBar": bar + 1, "from": keys[bar - 1].name, "to": keys[bar].name, "kind": kind, "marginal": len(kinds) > 1,
        "held": {"note": spelled(held.note.at, held.note.pitch), "common": held.note.pitch % 12 in both} if held else None,
        "densityBefore": round(before, 3), "densityInto": round(into, 3),
    }


def sounding(one, chart):
    """From where to where a note sounds, in quarters, started where it was meant to."""
    return one.note.at, one.note.at + F(one.end - one.start).limit_denominator(10000) / F(chart.quarter_seconds).limit_denominator(100000)


def densities(line, meter, played):
    """Notes struck a beat in the four bars before the last one (those there are), and in the last one before a line."""
    struck = [one.note.at for one in played if one.note.touch != "double"]
    first = max(0, line - 5 * meter.bar)
    last = line - meter.bar
    before = sum(first <= at < last for at in struck) / float((last - first) / meter.beat)
    return before, sum(last <= at < line for at in struck) / float(meter.bar / meter.beat)


def crossing_kind(line, chart, played, scale, moves):
    """(kind, held note). `scale` stretches the thresholds, `moves` is how many single frets make four notes moved by them."""
    meter, beat = chart.meter, chart.meter.beat
    for one in played:
        start, end = sounding(one, chart)
        if start < line and float(end - line) >= 0.5 * scale * beat and float(end - start) >= 1.5 * scale * beat:
            return "hold", one
    from_, to = float(line) - scale * beat, float(line) + scale * beat
    if not any(float(sounding(one, chart)[0]) < to and float(sounding(one, chart)[1]) > from_ for one in played):
        return "rest", None
    before, into = densities(line, meter, played)
    if into >= 1.5 * scale * before or by_frets(line, beat, played) >= moves:
        return "run", None
    return "plain", None


def by_frets(line, beat, played):
    """The longest chain of single frets among the notes of the last two beats before a line."""
    inside = [one.note.pitch for one in played if line - 2 * beat <= one.note.at < line and one.note.touch != "double"]
    longest = chain = 0
    for one, other in zip(inside, inside[1:]):
        chain = chain + 1 if abs(one - other) == 1 else 0
        longest = max(longest, chain)
    return longest
