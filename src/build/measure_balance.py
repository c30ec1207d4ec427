"""How loud the parts lie against each other in our stems and in the MIDI file of the same chart, played by fluidsynth on
the same bank: each part alone, integrated loudness by ffmpeg's ebur128, the mean difference taken off, in LU. Needs
fluidsynth, ffmpeg and python3-mido.

usage: measure_balance.py JAVA JAR BANK[,BANK...] CHART...
"""

import pathlib
import re
import statistics
import subprocess
import sys
import tempfile

import mido

PARTS = ("drums", "bass", "chords")


def loudness(sound):
    """Integrated loudness in LUFS."""
    told = subprocess.run(
        ["ffmpeg", "-hide_banner", "-nostats", "-i", sound, "-af", "ebur128", "-f", "null", "-"],
        capture_output=True, text=True, check=True,
    ).stderr
    return float(re.findall(r"I:\s+(-?[\d.]+) LUFS", told)[-1])


def alone(notes, part, file):
    """The MIDI file with the notes of one part's track only."""
    midi = mido.MidiFile(notes)
    if part not in [track.name.lower() for track in midi.tracks]:
        sys.exit(f"{notes} has no track of {part}")
    for track in midi.tracks:
        if track.name.lower() != part:
            for message in track:
                if message.type == "note_on":
                    message.velocity = 0
    midi.save(file)


def differences(program, bank, chart, folder):
    """How much louder each part lies in our sound file than in fluidsynth's, the mean taken off, in LU."""
    notes, whole = folder / "song.mid", folder / "song.wav"
    for options in (["-o", notes], ["-o", whole, "--stems", "--soundfont", bank]):
        subprocess.run([*program, "render", chart, "--force", *options], stdout=subprocess.DEVNULL, check=True)
    midi, sound = folder / "alone.mid", folder / "alone.wav"
    apart = {}
    for part in PARTS:
        alone(notes, part, midi)
        subprocess.run(
            ["fluidsynth", "-ni", "-q", "-r", "44100", "-F", sound, bank, midi],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True,
        )
        apart[part] = loudness(folder / f"song-{part}.wav") - loudness(sound)
    middle = statistics.mean(apart.values())
    return {part: difference - middle for part, difference in apart.items()}


def main():
    if len(sys.argv) < 5:
        sys.exit(__doc__.strip())
    java, jar, banks = sys.argv[1], sys.argv[2], sys.argv[3].split(",")
    for bank in banks:
        for chart in sys.argv[4:]:
            with tempfile.TemporaryDirectory() as folder:
                off = differences([java, "-jar", jar], bank, chart, pathlib.Path(folder))
            told = "  ".join(f"{part} {difference:+.1f}" for part, difference in off.items())
            print(f"{pathlib.Path(chart).stem:14} {pathlib.Path(bank).stem:14} {told}", flush=True)


if __name__ == "__main__":
    main()
