"""Makes a part of the labelled set of solo takes: NAME.yaml (the chart), NAME.mid (the lead), NAME.json (the labels).

usage: generate.py --part tuning --out FOLDER
       generate.py --part sealed --seed-file FILE --out FOLDER

The same part comes out the same to the byte. The sealed part's seed is kept apart; it is refused, and so is the whole
part, when the seed or one of these programs is not the one whose hash stands in README.md. Needs python3-mido.
"""

import argparse
import hashlib
import json
import pathlib
import random

from compose import Composer
from labels import labels
from layout import Again
from music import DOTTED, METERS, draw_chart
from perform import draw_hand, midi_file, perform

HERE = pathlib.Path(__file__).parent
MADE_OF = ("music.py", "layout.py", "compose.py", "perform.py", "labels.py", "generate.py")
PARTS = {"tuning": 100, "sealed": 80}
TUNING_SEED = "a hundred takes to tune by"
OFTEN = [*METERS, *(meter for meter in METERS if meter.name == "4/4"), *(meter for meter in METERS if meter.name == "4/4")]
PATIENCE = 600        # solos drawn until every crossing is what was meant, and clearly so


def main():
    wanted = arguments()
    seed = TUNING_SEED if wanted.part == "tuning" else sealed_seed(wanted.seed_file)
    wanted.out.mkdir(parents=True, exist_ok=True)
    for number in range(1, PARTS[wanted.part] + 1):
        name = f"{wanted.part}-{number:03}"
        chart, phrases, played = take(seed, number, name)
        (wanted.out / f"{name}.yaml").write_text(chart.text())
        midi_file(played, chart).save(wanted.out / f"{name}.mid")
        (wanted.out / f"{name}.json").write_text(json.dumps(labels(name, chart, phrases, played), indent=1) + "\n")


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--part", choices=PARTS, required=True)
    parser.add_argument("--out", type=pathlib.Path, required=True)
    parser.add_argument("--seed-file", type=pathlib.Path)
    wanted = parser.parse_args()
    if wanted.part == "sealed" and not wanted.seed_file:
        parser.error("the sealed part needs --seed-file")
    return wanted


def sealed_seed(file):
    seed, readme = file.read_text().strip(), (HERE / "README.md").read_text()
    for name, content in [("the seed", seed.encode()), *((name, (HERE / name).read_bytes()) for name in MADE_OF)]:
        if hashlib.sha256(content).hexdigest() not in readme:
            raise SystemExit(f"{name} is not what README.md holds the hash of")
    return seed


def take(seed, number, name):
    """A take of this number: meter, tempo, hand and line are fixed, the solo is drawn until it fits."""
    frame = random.Random(f"{seed} {number}")
    meter = OFTEN[(number - 1) % len(OFTEN)]
    tempo = frame.randint(60, 132 if meter.beat == DOTTED else 180)
    swing = frame.choice((50, 50, 50, 58, 62, 66)) if meter.name in ("4/4", "3/4", "2/4") else 50
    style = frame.choice(("pentatonic", "pentatonic", "blues", "diatonic"))
    hand = draw_hand(frame)
    second = 60 / (tempo * (1.5 if meter.beat == DOTTED else 1))
    wanted = frame.uniform(3.2, 6)
    shortest = 4 if second >= 0.7 else 5
    bars_a_slot = min((bars for bars in (1, 2, 4) if bars * meter.bar >= shortest),
                      key=lambda bars: abs(float(bars * meter.bar) * second - wanted))
    for attempt in range(PATIENCE):
        dice = random.Random(f"{seed} {number} {attempt}")
        chart = draw_chart(dice, meter, tempo, swing, bars_a_slot)
        composer = Composer(chart, style, bars_a_slot, dice)
        try:
            phrases = composer.compose()
        except Again:
            continue
        played = perform(phrases, chart, hand, dice, composer.ladder)
        told = labels(name, chart, phrases, played)["crossings"]
        meant = ["hold" if way == "push" else way for way in composer.ways.values()]
        if [one["kind"] for one in told] == meant and not any(one["marginal"] for one in told):
            return chart, phrases, played
    raise SystemExit(f"{name}: nothing fits in {PATIENCE} solos")


if __name__ == "__main__":
    main()
