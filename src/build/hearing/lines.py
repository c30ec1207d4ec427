"""The line of a phrase before any technique: when a note is due, how long, and which."""

import numpy as np

SCALES = {
    "minor pentatonic": (0, 3, 5, 7, 10), "major pentatonic": (0, 2, 4, 7, 9), "blues": (0, 3, 5, 6, 7, 10),
    "dorian": (0, 2, 3, 5, 7, 9, 10), "mixolydian": (0, 2, 4, 5, 7, 9, 10), "major": (0, 2, 4, 5, 7, 9, 11),
    "harmonic minor": (0, 2, 3, 5, 7, 8, 11),
}
# Rhythms of one or two beats, in beats; a negative length is a rest.
CELLS = [(1,), (1,), (1, 1), (2,), (0.5, 0.5), (0.5, 0.5), (1 / 3, 1 / 3, 1 / 3), (0.5, 0.25, 0.25),
         (0.25, 0.25, 0.5), (0.75, 0.25), (0.25, 0.25, 0.25, 0.25), (1.5, 0.5), (0.5, 1, 0.5), (-0.5, 0.5), (2,),
         (-1,), (1 / 3, -1 / 3, 1 / 3)]
SHORTEST = 0.085  # seconds


def rhythm(chance, beat, calm):
    """Pairs of start and length in seconds; a motif comes back now and then."""
    beats = chance.uniform(6, 13) / beat
    cells = [cell for cell in CELLS if min(abs(part) for part in cell) * beat >= SHORTEST * 1.05]
    if calm:
        cells = [(2,), (1, 1), (1.5, 0.5), (3,), (4,)]
    slots, at, motif = [], 0.0, []
    while at < beats - 2:
        if motif and chance.random() < 0.35:
            chosen = motif
        else:
            chosen = cells[chance.integers(len(cells))]
            motif = chosen if chance.random() < 0.5 else motif
        for part in chosen:
            if part > 0:
                slots.append((at, part))
            at += abs(part)
    slots.append((at, 2 if beat > 0.5 else 4))
    return [(0.4 + start * beat + float(np.clip(chance.normal(0, 0.005), -0.01, 0.01)), length * beat)
            for start, length in slots]


def pitched(chance, slots, ladder):
    """Adds a key to each slot: a line that mostly steps, sometimes leaps, and turns at the edges of the hand."""
    step = int(chance.integers(len(ladder)))
    direction, line = 1, []
    for start, length in slots:
        line.append((start, length, ladder[step]))
        if chance.random() < 0.3:
            direction = -direction
        move = direction * int(chance.choice([0, 1, 1, 1, 1, 2, 2, 3, 4]))
        if not 0 <= step + move < len(ladder):
            direction, move = -direction, -move
        step = int(np.clip(step + move, 0, len(ladder) - 1))
    return line
