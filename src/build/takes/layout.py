"""Lays out a solo over a chart: what each phrase is, what it comes from, when it lands and when it starts.

What does not fit raises `Again`; the caller draws anew. Places and lengths are in quarters from bar 1 beat 1.
"""

import itertools
from dataclasses import dataclass
from fractions import Fraction as F

FASTEST = 0.135             # seconds from note to note
PICKUP = F(3, 2)            # longest pickup, in quarters
PICKUPS = [(), (F(1, 2),), (F(1, 2),) * 2, (F(1, 2),) * 2, (F(1, 2),) * 3, (F(1),), (F(1, 4), F(1, 4), F(1, 2)),
           (F(1, 2), F(1, 4), F(1, 4)), (F(1, 3),) * 3, (F(1), F(1, 2))]


class Again(Exception):
    """What was drawn does not fit together."""


@dataclass
class Note:
    at: F                  # quarters from bar 1 beat 1, as composed
    long: F
    pitch: int
    touch: str = "plain"   # plain, double (the lower note of a double stop), grace, ghost, wrong, bend
    struck: int | None = None   # of a bend, the pitch before it

    def moved(self, beats, semitones):
        return Note(self.at + beats, self.long, self.pitch + semitones, self.touch)


@dataclass
class Lineage:
    """Where a phrase's material comes from: phrases of one root are each other's returns."""
    root: int
    semitones: int = 0
    shift: F = F(0)        # quarters later in the bar than the root
    ending: int = 0        # phrases of one ending number end alike
    ornamented: bool = False


@dataclass
class Phrase:
    role: str
    notes: list
    main: int | None       # number of the main note
    how: str = "fresh"
    source: int | None = None
    replies_to: int | None = None
    push: bool = False
    lineage: Lineage | None = None

    @property
    def start(self):
        return self.notes[0].at

    @property
    def end(self):
        return max(note.at + note.long for note in self.notes)


@dataclass
class Slot:
    bar: int
    bars: int
    role: str = "statement"
    how: str = "fresh"     # how it is made: the name of a maker in `write`
    source: int | None = None
    replies_to: int | None = None
    landing: F = F(0)
    pickup: tuple = ()
    push: bool = False
    hold: bool = False     # rings over the line at its end
    run: bool = False      # runs over the line at its end
    still: bool = False    # has ended a beat before the line at its end
    gap: str = "rest"      # to the phrase after it: rest, breath, none
    lineage: Lineage | None = None

    @property
    def start(self):
        return self.landing - sum(self.pickup)

    @property
    def line(self):
        """The beat it belongs to; a push comes an eighth before that."""
        return self.landing + (F(1, 2) if self.push else 0)


class Layout:
    def __init__(self, chart, style, bars_a_slot, dice):
        self.chart, self.style, self.length, self.dice = chart, style, bars_a_slot, dice
        self.meter, self.bars = chart.meter, chart.bars()
        self.keys = [section.key for section, _ in self.bars]
        self.seams = [bar for bar in range(1, len(self.keys)) if self.keys[bar] != self.keys[bar - 1]]
        self.ways = {bar: dice.choice(("run", "run", "run", "hold", "push", "rest", "plain", "plain", "plain", "plain")) for bar in self.seams}
        self.phrases, self.endings = [], itertools.count(1)
        self.smallest = F(1, 4) if chart.quarter_seconds / 4 >= FASTEST else F(1, 3) if chart.quarter_seconds / 3 >= FASTEST else F(1, 2)
        self.triplets = dice.random() < 0.3 and chart.swing == 50

    # The layout: which bars belong to which phrase.

    def layout(self):
        dice, slots, bar = self.dice, [], 0 if self.dice.random() < 0.75 else 1
        for seam in [*self.seams, len(self.bars)]:
            way = self.ways.get(seam, "plain")
            # A run is the end of the phrase before it, or a phrase of its own.
            own = way == "run" and (self.length == 1 or dice.random() < 0.5)
            room = seam - own
            while bar + self.length <= room:
                if dice.random() < 0.05:
                    bar += 1
                    continue
                slots.append(Slot(bar, self.length))
                bar += self.length
            if bar < room:
                if way == "plain" and seam < len(self.bars) and dice.random() < 0.5:
                    slots.append(Slot(bar, self.length))
                    bar += self.length
                elif dice.random() < 0.4 and self.meter.bar > 2:
                    slots.append(Slot(bar, room - bar, role="other", how="fill"))
            bar = max(bar, seam)
            if not slots:
                raise Again("nothing before a line")
            if own:
                slots.append(Slot(seam - 1, 1, role="other", how="run", run=True))
            elif way == "run":
                slots[-1].run = True
            slots[-1].hold |= way == "hold"
            slots[-1].still |= way == "rest"
            if seam in self.ways and way in ("run", "hold", "rest"):
                bar += 1 if self.meter.bar >= PICKUP + 2 * self.meter.beat else 2
        return slots

    def give_roles(self, slots):
        """Exchanges, one after the other: a statement and its replies, a statement come back, fillers between."""
        dice = self.dice
        free = [number for number, slot in enumerate(slots) if slot.how == "fresh"]
        statements, replies = [], []
        while free:
            drawn = dice.random()
            if drawn < 0.24:
                plan = ["other"]
            elif drawn < 0.33:
                plan = ["statement"]
            elif drawn < 0.6:
                plan = ["statement", "reply", "reply"]
            else:
                plan = ["statement", "reply"]
            pushed = self.ways.get(slots[free[0]].bar) == "push"
            if plan[0] == "other" and (pushed or not statements or slots[free[0] - 1].role == "statement"):
                continue
            asked, before, number = None, None, -1
            for role in plan:
                # A reply follows at once, and what is pushed over a line is a statement.
                if not free or role == "reply" and (free[0] != number + 1 or self.ways.get(slots[free[0]].bar) == "push"):
                    break
                number = free.pop(0)
                slot = slots[number]
                slot.role = role
                if role == "statement":
                    asked = number
                    self.make_statement(slot, slots, statements)
                    statements.append(number)
                elif role == "reply":
                    slot.replies_to = slot.source = asked
                    slot.how = before = self.kind_of_reply(slot, slots[asked], before)
                    earlier = [one for one in self.sources(slot, slots, replies) if slots[one].replies_to != asked]
                    if earlier and not (slot.run or slot.hold) and dice.random() < 0.12:
                        slot.how, slot.source = "again", dice.choice(earlier)
                    replies.append(number)
                else:
                    slot.how = dice.choice(("noodle", "noodle", "ostinato", "ostinato", "fill", "tremolo", "riff"))
                    if slot.run or slot.hold:
                        slot.how = "noodle"

    def make_statement(self, slot, slots, statements):
        earlier = self.sources(slot, slots, statements)
        bound = slot.run or slot.hold or self.ways.get(slot.bar) == "push"
        slot.how = "fresh"
        if earlier and not bound and self.dice.random() < 0.6:
            slot.how, slot.source = "again", self.dice.choice(earlier)

    def sources(self, slot, slots, numbers):
        """What may come back here: of a key of the same kind, and not bent to go over a line."""
        here = self.keys[slot.bar]
        return [number for number in numbers if self.keys[slots[number].bar].kind == here.kind
                and not (slots[number].run or slots[number].hold)]

    def kind_of_reply(self, slot, asked, before):
        choices = ["opening", "opening", "rhythm", "rhythm", "contrary", "contrary", "balance"]
        if asked.run or asked.hold or slot.run or slot.hold or self.keys[slot.bar] != self.keys[asked.bar]:
            choices = ["balance"]
        elif before is not None:
            choices = [how for how in choices if how not in ("balance", before)]
        return self.dice.choice(choices)

    # When each phrase lands and starts.

    def place(self, number, slots):
        dice, meter, slot = self.dice, self.meter, slots[number]
        slot.landing, slot.pickup, slot.push = slot.bar * meter.bar, (), False
        slot.gap = dice.choice(("none", "none", "breath", "breath", "rest"))
        if slot.how == "run":
            slot.landing = (slot.bar + 1) * meter.bar
            slot.pickup = self.run_lengths()
        elif slot.role == "other":
            starts = meter.group_starts()
            slot.landing += dice.choice(starts[:3] if slot.how == "fill" else starts[:max(1, len(starts) // 2)])
        elif slot.how == "again":
            self.place_return(slot, slots)
        else:
            source = slots[slot.source] if slot.how in ("opening", "rhythm", "contrary") else None
            slot.pickup = source.pickup if source else self.draw_pickup()
            slot.push = source.push if slot.how == "opening" else False
            if slot.role == "reply":
                slot.landing += self.strong_offset(slot, 0.6 if slot.how == "balance" else 0.35)
            elif dice.random() < 0.1 or self.ways.get(slot.bar) == "push":
                slot.push = True
            slot.lineage = Lineage(number, ending=next(self.endings))
            if slot.how == "opening":
                slot.lineage = self.relation(slots, slot.source, slot.landing, 0, new_ending=True)
        if slot.push:
            slot.landing -= F(1, 2)
        earliest = slots[number - 1].landing + 1 if number else F(1, 4) - meter.bar  # within the count-in
        if slot.start < earliest:
            raise Again("no room")

    def place_return(self, slot, slots):
        """What comes back in another key, an octave away, shifted, with another ending, ornamented, or as it was."""
        dice, source = self.dice, slots[slot.source]
        slot.pickup, slot.push = source.pickup, source.push
        here, there = self.keys[slot.bar], self.keys[source.bar]
        semitones, shift, ending, ornamented = 0, F(0), False, False
        if here != there:
            semitones = (here.number - there.number + 5) % 12 - 5
            ending = dice.random() < 0.35
            ornamented = not ending and dice.random() < 0.15
        else:
            device = dice.choice(("exact", "exact", "ending", "ending", "ending", "octave", "octave", "octave", "shift", "shift", "ornament", "ornament"))
            group = self.meter.groups[0]
            semitones = dice.choice((12, -12)) if device == "octave" else 0
            shift = dice.choice((F(1, 2), -F(1, 2), group, -group, group)) if device == "shift" else F(0)
            ending = device == "ending" or device in ("octave", "shift") and dice.random() < 0.2
            ornamented = device == "ornament"
        slot.landing += source.line - source.bar * self.meter.bar + shift
        slot.lineage = self.relation(slots, slot.source, slot.landing, semitones, ending, ornamented)

    def relation(self, slots, source, line, semitones, new_ending, ornamented=False):
        base = slots[source].lineage
        moved = (line - slots[base.root].line) % self.meter.bar
        return Lineage(base.root, base.semitones + semitones, moved,
                       next(self.endings) if new_ending else base.ending, ornamented)

    def strong_offset(self, slot, likelihood):
        """How far into its first bar a reply lands: on the bar line or on another strong beat."""
        starts = self.meter.group_starts()
        others = [starts[number] for number in self.meter.strong if number]
        others = [at for at in others if slot.bars * self.meter.bar - at - PICKUP >= 2]
        return self.dice.choice(others) if others and self.dice.random() < likelihood else F(0)

    def draw_pickup(self):
        fitting = [pickup for pickup in PICKUPS if sum(pickup) <= PICKUP and all(self.playable(step) for step in pickup)]
        return self.dice.choice(fitting)

    def playable(self, step):
        return step >= self.smallest and (step.denominator != 3 or self.triplets and self.meter.beat == 1)

    def line_after(self, slot):
        return next(bar for bar in self.seams if bar > slot.bar) * self.meter.bar

    def key_at(self, at):
        return self.keys[min(max(0, int(at // self.meter.bar)), len(self.keys) - 1)]
