"""Composes a solo over a chart: statements, replies, fillers, what comes back changed, and ways over a change of key.

A phrase is made around its main note: a pickup before it, time after it, a body of small rhythmic cells, an ending that
is open or closed. It knows how much room it has, for the layout comes first. What does not fit raises `Again`.

Longer than other files, because every kind of phrase is made from the same few pieces.
"""

from fractions import Fraction as F

from layout import PICKUP, Again, Layout, Note, Phrase

LOW, HIGH = 50, 86          # MIDI numbers a line stays between
FASTEST_RUN = 0.105         # seconds from note to note
CELLS = {
    F(1, 2): [(F(1, 2),), (F(1, 4), F(1, 4))],
    F(1): [(F(1),), (F(1),), (F(1, 2), F(1, 2)), (F(1, 2), F(1, 2)), (F(1, 4), F(1, 4), F(1, 2)),
           (F(1, 2), F(1, 4), F(1, 4)), (F(3, 4), F(1, 4)), (F(1, 3),) * 3],
    F(3, 2): [(F(3, 2),), (F(1), F(1, 2)), (F(1), F(1, 2)), (F(1, 2), F(1)), (F(1, 2),) * 3,
              (F(3, 4), F(3, 4)), (F(1, 2), F(1, 4), F(1, 4), F(1, 2))],
    F(2): [(F(3, 2), F(1, 2)), (F(1, 2), F(1), F(1, 2)), (F(1, 2), F(3, 2))],
}
# What is made instead where there is no room for a kind of phrase.
SIMPLER = {"rhythm": "balance", "contrary": "balance", "noodle": "fill", "ostinato": "fill", "tremolo": "fill", "riff": "fill"}


class Composer(Layout):
    def compose(self):
        slots = self.layout()
        self.give_roles(slots)
        for number in range(len(slots)):
            self.tried(20, self.place, number, slots)
        slots[-1].gap = "rest"
        for number, slot in enumerate(slots):
            following = slots[number + 1].start if number + 1 < len(slots) else (slot.bar + slot.bars + 1) * self.meter.bar
            try:
                phrase = self.tried(15, self.write, slot, slots, following)
            except Again:
                if slot.how not in SIMPLER:
                    raise
                slot.how = SIMPLER[slot.how]
                phrase = self.tried(15, self.write, slot, slots, following)
            self.phrases.append(phrase)
        return self.phrases

    def tried(self, times, make, *arguments):
        for _ in range(times - 1):
            try:
                return make(*arguments)
            except Again:
                pass
        return make(*arguments)

    # Notes.

    def write(self, slot, slots, following):
        makers = {"fresh": self.fresh, "again": self.again, "opening": self.again, "rhythm": self.same_rhythm,
                  "contrary": self.contrary, "balance": self.fresh, "run": self.own_run, "fill": self.fill,
                  "noodle": self.noodle, "ostinato": self.ostinato, "tremolo": self.tremolo, "riff": self.riff}
        phrase = makers[slot.how](slot, slots, following)
        phrase.how, phrase.source, phrase.replies_to = slot.how, slot.source, slot.replies_to
        phrase.push, phrase.lineage = slot.push, slot.lineage
        if slot.run and slot.how != "run":
            self.end_in_run(phrase, self.line_after(slot))
        if slot.hold:
            self.end_in_hold(phrase, self.line_after(slot))
        if slot.still:
            self.end_by(phrase, self.line_after(slot) - self.meter.beat)
        if any(not LOW <= note.pitch <= HIGH for note in phrase.notes):
            raise Again("out of range")
        if phrase.end > following or self.phrases and phrase.start < self.phrases[-1].end:
            raise Again("overlap")
        if slot.how not in ("again", "opening") and any(alike(phrase, other) for other in self.phrases):
            raise Again("too like another")
        return phrase

    def chord_at(self, at):
        section, bar = self.bars[min(max(0, int(at // self.meter.bar)), len(self.bars) - 1)]
        return section.chords[bar][1]

    def ladder(self, at):
        """All notes of the line's scale in the key that sounds there, low to high."""
        key = self.key_at(at)
        steps = {(key.number + step) % 12 for step in key.ladder(self.style)}
        return [pitch for pitch in range(LOW + 2, HIGH - 1) if pitch % 12 in steps]

    def nearest(self, ladder, pitch, allowed=None):
        choices = [one for one in ladder if allowed is None or one % 12 in allowed] or ladder
        return ladder.index(min(choices, key=lambda one: (abs(one - pitch), one)))

    def walk(self, ladder, start, count):
        """Places on the ladder: mostly steps that keep their direction, a leap now and then that turns back."""
        dice, places, way, leapt = self.dice, [start], self.dice.choice((1, -1)), False
        for _ in range(count):
            if leapt:
                way, move, leapt = -way, 1, False
            else:
                move = dice.choice((0, 1, 1, 1, 1, 1, 2, 2, 3, 4))
                leapt = move >= 3
                if dice.random() < 0.3:
                    way = -way
            place = places[-1] + way * move
            if not 0 <= place < len(ladder):
                way = -way
                place = places[-1] + way * move
            places.append(min(max(place, 0), len(ladder) - 1))
        return places[1:]

    def rhythm(self, start, end):
        """Lengths that fill the groups of the bar from start to end."""
        lengths, at = [], start
        while at < end:
            inside = at % self.meter.bar
            ends = [begin + group for begin, group in zip(self.meter.group_starts(), self.meter.groups)]
            room = next(stop for stop in ends if stop > inside) - inside
            if room == 1 and inside + 2 in ends and self.dice.random() < 0.25 and end - at >= 2:
                room = F(2)
            cells = [cell for cell in CELLS.get(room, [(room,)]) if all(self.playable(step) for step in cell)] or [(room,)]
            cell = self.dice.choice(cells)
            lengths += cell
            at += room
        return lengths

    def register(self, slot):
        return self.dice.choice((60, 62, 64, 65, 67, 67, 69, 71, 72, 74))

    def target_end(self, slot, slots, following):
        """Where the phrase's last note ends, by the room it has and the length of what it answers."""
        dice, gap = self.dice, slot.gap
        if slot.run or slot.hold:
            return self.line_after(slot)
        last = (slot.bar + slot.bars) * self.meter.bar
        if gap == "none" and following - slot.landing <= (slot.bars + 1) * self.meter.bar and not slot.still:
            return following
        room = min(following - F(1, 2), last) - slot.landing
        if gap == "breath":
            return slot.landing + room
        share = dice.uniform(0.5, 0.8)
        wanted = F(round(share * float(room) * 2), 2)
        if slot.replies_to is not None and slot.replies_to < len(self.phrases):
            asked = self.phrases[slot.replies_to]
            wanted = F(round(float(asked.end - asked.notes[asked.main].at) * dice.uniform(0.85, 1.15) * 2), 2)
        return slot.landing + max(F(3, 2), min(wanted, room))

    def fresh(self, slot, slots, following):
        """A phrase around its landing, its ending open for a statement, closed for a reply."""
        dice = self.dice
        line = slot.line
        ladder = self.ladder(line)
        main = self.nearest(ladder, self.register(slot), self.chord_at(line) & {pitch % 12 for pitch in ladder})
        if self.ways.get(slot.bar) == "push" and slot.push:
            shared = self.keys[slot.bar].scale() & self.keys[slot.bar - 1].scale()
            main = self.nearest(ladder, ladder[main], shared & {pitch % 12 for pitch in ladder})
        notes = self.pickup_notes(slot, ladder, main)
        end = self.target_end(slot, slots, following)
        long = self.landing_length(line, end, slot)
        notes.append(Note(slot.landing, long, ladder[main]))
        at_main = len(notes) - 1
        body = self.body(slot.landing + long, end, ladder, main, self.ending(slot, slots))
        phrase = Phrase(slot.role, notes + body, at_main)
        if len(phrase.notes) < (4 if slot.role == "statement" else 3):
            raise Again("too short")
        return phrase

    def landing_length(self, line, end, slot):
        """A landing is given time: one group or two, or a group and a half."""
        meter = self.meter
        group = dict(zip(meter.group_starts(), meter.groups)).get(line % meter.bar, meter.groups[0])
        long = self.dice.choice((group, group, group + F(1, 2), 2 * group))
        if self.ways.get(slot.bar) == "push" and slot.push:
            long = max(long, 2 * self.meter.beat, F(3, 2))
        if line + long > end - F(1, 2):
            long = group
        return long + (line - slot.landing)

    def pickup_notes(self, slot, ladder, main):
        """Up or down into the landing, by steps or from a third away."""
        dice, notes, at, place = self.dice, [], slot.landing, main
        way = dice.choice((1, -1))
        for step in reversed(slot.pickup):
            at -= step
            move = dice.choice((1, 1, 1, 2)) * way
            if not 0 <= place + move < len(ladder):
                way, move = -way, -move
            place += move
            if dice.random() < 0.2:
                way = -way
            notes.insert(0, Note(at, step, ladder[place]))
        return notes

    def ending(self, slot, slots):
        """Intervals above the tonic that the last note may have."""
        dice = self.dice
        if slot.role == "statement":
            return (2, 5, 7, 9, 10, 7, 3, 4) if dice.random() < 0.9 else (0,)
        second = any(other.replies_to == slot.replies_to and other.bar > slot.bar for other in slots)
        closed = 0.5 if second else 0.9
        return (0,) if dice.random() < closed else (3, 4, 7)

    def body(self, start, end, ladder, place, intervals):
        """Cells from start to end, walked to a last note with one of the intervals above the tonic."""
        if start >= end:
            return []
        lengths = self.rhythm(start, end)
        while sum(lengths[:-1]) >= end - start:
            lengths.pop()
        breath = self.dice.random() < 0.15 and len(lengths) > 3 and lengths[0] == F(1, 2)
        tonic = self.key_at(start).number
        allowed = {(tonic + interval) % 12 for interval in intervals}
        for _ in range(40):
            places = self.walk(ladder, place, len(lengths))
            target = self.nearest(ladder, ladder[places[-1]], allowed)
            before = places[-2] if len(places) > 1 else place
            if abs(target - before) <= 3 and ladder[target] % 12 in allowed:
                places[-1] = target
                break
        else:
            raise Again("no ending in reach")
        notes, at = [], start
        for count, (length, spot) in enumerate(zip(lengths, places)):
            if not (breath and count == 0):
                notes.append(Note(at, length, ladder[spot]))
            at += length
        # The last note lasts as long as there is room, or is cut short.
        last = notes[-1]
        last.long = max(F(1, 4), end - last.at)
        if len(notes) > 1 and last.long < 1 and self.dice.random() < 0.5 and notes[-2].at > start:
            merged = notes.pop(-2)
            last.at, last.long = merged.at, end - merged.at
        return notes

    def again(self, slot, slots, following):
        """The source's notes in their new place; from the end of the opening on new ones where the ending is another."""
        dice, lineage = self.dice, slot.lineage
        source = self.phrases[slot.source]
        base = source.lineage
        semitones = lineage.semitones - base.semitones
        move = slot.landing - source.notes[source.main].at
        notes = [note.moved(move, semitones) for note in source.notes if note.touch != "double"]
        count = len(notes)
        if lineage.ending != base.ending:
            keep = max(source.main + 2, 3, round(count * dice.uniform(0.45, 0.65)))
            if count < keep + 2:
                raise Again("too short to end otherwise")
            opening, old = notes[:keep], notes[keep:]
            end = self.target_end(slot, slots, following)
            if end < old[0].at + 1:
                raise Again("no room for another ending")
            ladder = self.ladder(slot.landing)
            place = self.nearest(ladder, opening[-1].pitch)
            tail = self.body(opening[-1].at + opening[-1].long, end, ladder, place, self.ending(slot, slots))
            if not tail or tail[-1].pitch == old[-1].pitch or [note.pitch for note in tail[:2]] == [note.pitch for note in old[:2]]:
                raise Again("ends as before")
            notes = opening + tail
        else:
            if notes[-1].at > following - F(1, 2):
                raise Again("no room to come back")
            room = following - notes[-1].at
            notes[-1].long = room if slot.gap == "none" and room <= self.meter.bar else min(notes[-1].long, room)
        main = source.main
        if lineage.ornamented:
            notes, main = self.ornament(notes, main)
        return Phrase(slot.role, notes, main)

    def ornament(self, notes, main):
        """Two or three of its notes decorated: a step before, a neighbour within, a note between."""
        dice, ladder, chosen = self.dice, self.ladder(notes[main].at), notes[main]
        half = self.smallest if self.smallest.denominator != 3 else F(1, 2)
        long = [number for number, note in enumerate(notes) if note.long >= 2 * half]
        if len(long) < 2:
            raise Again("nothing to decorate")
        decorated = []
        picked = set(dice.sample(long, min(len(long), dice.choice((2, 3)))))
        for number, note in enumerate(notes):
            if number not in picked:
                decorated.append(note)
                continue
            spot = self.nearest(ladder, note.pitch)
            neighbour = ladder[min(len(ladder) - 1, spot + 1)] if dice.random() < 0.6 else ladder[max(0, spot - 1)]
            if note is chosen:
                decorated += [Note(note.at, F(1, 8), neighbour, "grace"), note]
            else:
                decorated += [note, Note(note.at + note.long - half, half, neighbour)]
                note.long -= half
        return decorated, next(number for number, note in enumerate(decorated) if note is chosen)

    def same_rhythm(self, slot, slots, following):
        """The statement's rhythm, other pitches."""
        source = self.phrases[slot.source]
        notes = self.retimed(source, slot, following)
        ladder = self.ladder(slot.landing)
        old = [note.pitch for note in source.notes]
        allowed = {(self.key_at(slot.landing).number + interval) % 12 for interval in self.ending(slot, slots)}
        for _ in range(60):
            start = self.nearest(ladder, self.register(slot))
            places = [start] + self.walk(ladder, start, len(notes) - 1)
            places[-1] = self.nearest(ladder, ladder[places[-1]], allowed)
            new = [ladder[place] for place in places]
            same = sum(a - b == c - d for a, b, c, d in zip(old[1:], old, new[1:], new))
            chordal = new[source.main] % 12 in self.chord_at(notes[source.main].at)
            if same <= len(new) / 3 and chordal and new[-1] % 12 in allowed and abs(new[-1] - new[-2]) < 8:
                break
        else:
            raise Again("no other pitches")
        for note, pitch in zip(notes, new):
            note.pitch = pitch
        return Phrase(slot.role, notes, source.main)

    def retimed(self, source, slot, following):
        move = slot.landing - source.notes[source.main].at
        notes = [note.moved(move, 0) for note in source.notes if note.touch == "plain"]
        if len(notes) != len(source.notes) or notes[-1].at > following - F(1, 2):
            raise Again("no room for the rhythm")
        notes[-1].long = min(notes[-1].long, following - notes[-1].at)
        return notes

    def contrary(self, slot, slots, following):
        """The statement's line turned round, its rhythm loosened, closed."""
        source = self.phrases[slot.source]
        move = slot.landing - source.notes[source.main].at
        notes = [note.moved(move, 0) for note in source.notes if note.touch == "plain"]
        if len(notes) != len(source.notes):
            raise Again("only a plain line is turned round")
        main = notes[source.main]
        old = self.ladder(source.notes[source.main].at)
        ladder = self.ladder(slot.landing)
        axis = self.nearest(ladder, main.pitch + self.dice.choice((-3, 0, 4)), self.chord_at(main.at) & {p % 12 for p in ladder})
        root = self.nearest(old, source.notes[source.main].pitch)
        for note, asked in zip(notes, source.notes):
            place = axis - (self.nearest(old, asked.pitch) - root)
            if not 0 <= place < len(ladder):
                raise Again("turned out of range")
            note.pitch = ladder[place]
        loose = [note for note in notes if note is not main and note is not notes[-1] and note is not notes[0]]
        if loose and self.dice.random() < 0.6:
            gone = self.dice.choice(loose)
            before = notes[notes.index(gone) - 1]
            before.long += gone.long
            notes.remove(gone)
        allowed = {(self.key_at(slot.landing).number + interval) % 12 for interval in self.ending(slot, slots)}
        last = self.nearest(ladder, notes[-1].pitch, allowed)
        if abs(ladder[last] - notes[-2].pitch) > 8 or notes[-1] is main:
            raise Again("no ending in reach")
        notes[-1].pitch = ladder[last]
        if notes[-1].at > following - F(1, 2):
            raise Again("no room for it turned round")
        notes[-1].long = min(notes[-1].long, following - notes[-1].at)
        return Phrase(slot.role, notes, notes.index(main))

    # Fillers: neither statement nor reply.

    def fill(self, slot, slots, following):
        """Two to four quick notes."""
        dice, ladder = self.dice, self.ladder(slot.landing)
        step = self.smallest if dice.random() < 0.6 and (self.smallest.denominator != 3 or self.triplets) else F(1, 2)
        spot = self.nearest(ladder, dice.choice((57, 60, 72, 76, 79)))
        places = [spot] + self.walk(ladder, spot, dice.choice((1, 2, 2, 3)))
        return self.line(slot, [step] * len(places), [ladder[place] for place in places], following)

    def noodle(self, slot, slots, following):
        """Even notes up and down the scale, without a landing and without an end."""
        ladder, step = self.ladder(slot.landing), F(1, 2)
        room = min(following - F(1, 2), (slot.bar + slot.bars) * self.meter.bar) - slot.landing
        count = int(room * self.dice.choice((F(3, 4), F(1))) / step)
        if count < 5:
            raise Again("too short to wander")
        places = [self.nearest(ladder, self.register(slot))]
        way = self.dice.choice((1, -1))
        while len(places) < count:
            if not 1 <= places[-1] + way < len(ladder) - 1 or self.dice.random() < 0.25:
                way = -way
            places.append(places[-1] + way)
        return self.line(slot, [step] * count, [ladder[place] for place in places], following)

    def ostinato(self, slot, slots, following):
        """A figure of another length than the beat's, round and round."""
        ladder, step = self.ladder(slot.landing), F(1, 2)
        size = 3 if self.meter.beat == 1 else 4
        room = min(following - F(1, 2), (slot.bar + slot.bars) * self.meter.bar) - slot.landing
        times = int(room / (size * step))
        if times < 2:
            raise Again("too short to go round")
        spot = self.nearest(ladder, self.register(slot))
        figure = [spot] + self.walk(ladder, spot, size - 1)
        return self.line(slot, [step] * size * times, [ladder[place] for place in figure * times], following)

    def tremolo(self, slot, slots, following):
        """One note, again and again."""
        ladder = self.ladder(slot.landing)
        pitch = ladder[self.nearest(ladder, self.register(slot), self.chord_at(slot.landing))]
        count = self.dice.choice((5, 6, 7, 8))
        return self.line(slot, [F(1, 2)] * count, [pitch] * count, following)

    def riff(self, slot, slots, following):
        """Low down with the band: tonic and seventh or fifth, short."""
        ladder, dice = self.ladder(slot.landing), self.dice
        tonic = self.nearest(ladder, 54, {self.key_at(slot.landing).number})
        places = [tonic] + [tonic + dice.choice((0, 0, 1, 2)) for _ in range(dice.choice((3, 4)))]
        lengths = [dice.choice((F(1, 2), F(1, 2), F(1))) for _ in places]
        return self.line(slot, lengths, [ladder[place] for place in places], following)

    def line(self, slot, lengths, pitches, following):
        at, notes = slot.landing, []
        for length, pitch in zip(lengths, pitches):
            notes.append(Note(at, length, pitch))
            at += length
        if at > following:
            raise Again("no room for a filler")
        return Phrase("other", notes, None)

    # Ways over a line.

    def run_step(self):
        for step in (F(1, 4), F(1, 3), F(1, 2)):
            if float(step) * self.chart.quarter_seconds >= FASTEST_RUN and (step.denominator != 3 or self.meter.beat == 1):
                return step

    def run_lengths(self):
        step = self.run_step()
        skipped = self.dice.choice((F(0), F(0), F(1, 2), F(1))) if self.meter.bar > 3 else F(0)
        return (step,) * int((self.meter.bar - skipped) / step)

    def run_pitches(self, count, line):
        """To the landing on the line: up or down the scale, fret by fret at the end, or a figure moved fret by fret."""
        dice, ladder = self.dice, self.ladder(line)
        target = ladder[self.nearest(ladder, dice.choice((62, 65, 67, 69, 72, 74)), self.chord_at(line))]
        way, kind = dice.choice((1, -1)), dice.choice(("scale", "scale", "frets", "figure"))
        if kind == "scale":
            old = self.ladder(line - 1)
            spot = self.nearest(old, target - way * 2)
            places = [spot]
            while len(places) < count:
                step = way if dice.random() < 0.82 else -way
                if not 0 <= places[-1] - step < len(old):
                    way = -way
                    step = -step
                places.append(places[-1] - step)
            pitches = [old[place] for place in reversed(places)]
        elif kind == "frets":
            pitches = [target - way * back for back in range(count, 0, -1)]
            pitches = [pitch if count - number <= 10 else pitches[-10] + (2 if number % 2 else 0) for number, pitch in enumerate(pitches)]
        else:
            width = dice.choice((3, 4, 5))
            pitches = [target - way * ((back + 1) // 2) + (width if back % 2 else 0) for back in range(count, 0, -1)]
        return pitches, target, kind

    def own_run(self, slot, slots, following):
        line = slot.landing
        pitches, target, kind = self.run_pitches(len(slot.pickup), line)
        notes, at = [], line - sum(slot.pickup)
        for step, pitch in zip(slot.pickup, pitches):
            notes.append(Note(at, step, pitch))
            at += step
        notes.append(Note(line, self.run_end(line, following), target))
        return Phrase("other", self.doubled(notes, kind), None)

    def run_end(self, line, following):
        return min(self.dice.choice((F(1), 2 * self.meter.beat, self.meter.beat)), following - line)

    def end_in_run(self, phrase, line):
        """The phrase goes on as a run through the last bar and ends on the line."""
        start = max(line - self.meter.bar, phrase.notes[phrase.main].at + self.meter.beat) if phrase.main is not None else line - self.meter.bar
        step = self.run_step()
        count = int((line - start) / step)
        start = line - count * step
        kept = [note for note in phrase.notes if note.at < start]
        if not kept or count < 4 or phrase.main is not None and phrase.main >= len(kept):
            raise Again("no room for a run")
        kept[-1].long = min(kept[-1].long, start - kept[-1].at)
        if kept[-1].at + kept[-1].long < start - self.meter.beat:
            raise Again("a rest before the run")
        pitches, target, kind = self.run_pitches(count, line)
        run = [Note(start + step * number, step, pitch) for number, pitch in enumerate(pitches)]
        run.append(Note(line, self.run_end(line, line + self.meter.bar - F(1, 2)), target))
        self.end_otherwise(phrase, kept, run)

    def end_otherwise(self, phrase, kept, ending):
        phrase.notes = kept + ending
        if phrase.lineage:
            phrase.lineage.ending = next(self.endings)

    def end_by(self, phrase, limit):
        last = phrase.notes[-1]
        if last.at > limit - F(1, 2):
            raise Again("no rest before the line")
        last.long = min(last.long, limit - last.at)

    def doubled(self, notes, kind):
        """A figure walked fret by fret may be a double stop."""
        if kind != "frets" or self.dice.random() < 0.5:
            return notes
        width = self.dice.choice((3, 4, 5))
        return [one for note in notes for one in (note, Note(note.at, note.long, note.pitch - width, "double"))]

    def end_in_hold(self, phrase, line):
        """The last note is struck before the line and left ringing over it."""
        dice, beat = self.dice, self.meter.beat
        before, after = self.key_at(line - 1), self.key_at(line)
        after_main = phrase.notes[phrase.main].at if phrase.main is not None else phrase.notes[0].at
        early = [back for back in (F(1, 2), F(1), F(3, 2), F(2), 2 * beat, 3 * beat) if line - back > after_main]
        past = dice.choice((F(1), F(3, 2), 2 * beat)) if beat <= 1 else dice.choice((beat, beat * F(4, 3)))
        past = max(past, beat)
        early = [back for back in early if back + past >= 2 * beat]
        if not early:
            raise Again("no room to hold")
        at = line - dice.choice(early)
        kept = [note for note in phrase.notes if note.at < at]
        if len(kept) < 3 or at - kept[-1].at - kept[-1].long > 1:
            raise Again("nothing before the hold")
        kept[-1].long = min(kept[-1].long, at - kept[-1].at)
        ladder = self.ladder(line - 1)
        shared = before.scale() & after.scale() if dice.random() < 0.8 else before.scale() - after.scale()
        shared &= {pitch % 12 for pitch in ladder}
        if not shared:
            raise Again("no note of that kind")
        pitch = ladder[self.nearest(ladder, kept[-1].pitch, shared)]
        if abs(pitch - kept[-1].pitch) > 9:
            raise Again("too far")
        self.end_otherwise(phrase, kept, [Note(at, line + past - at, pitch)])


def alike(one, other):
    """Whether two phrases begin too much alike to be called different: most of the first four moves and steps agree."""
    a, b = one.notes[:5], other.notes[:5]
    if min(len(a), len(b)) < 4:
        return False
    moves = [(y.pitch - x.pitch, z.pitch - w.pitch) for x, y, w, z in zip(a, a[1:], b, b[1:])]
    steps = [(y.at - x.at, z.at - w.at) for x, y, w, z in zip(a, a[1:], b, b[1:])]
    return sum(x == y for x, y in moves) + sum(x == y for x, y in steps) > 0.8 * (len(moves) + len(steps))
