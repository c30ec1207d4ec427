"""The time and memory of rendering sound files, beside fluidsynth with the same notes and bank, by turns; the start of
the program included. Medians of the runs. Needs fluidsynth, which plays the MIDI file of the same chart.

usage: measure_render.py RUNS LAPS JAVA JAR BANK[,BANK...] CHART...
"""

import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time


def run(arguments):
    """Seconds until it ended, and the megabytes it held at most."""
    start = time.monotonic()
    process = subprocess.Popen(arguments, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    seconds = time.monotonic() - start
    if status != 0:
        sys.exit(f"failed: {' '.join(map(str, arguments))}")
    return seconds, used.ru_maxrss / 1024


def medians(measured):
    return [statistics.median(values) for values in zip(*measured)]


def compare(runs, laps, program, bank, chart, folder):
    render = [*program, "render", chart, "--laps", laps, "--force"]
    notes, sound = folder / "notes.mid", folder / "sound.wav"
    run([*render, "-o", notes])
    ours, theirs = [], []
    for _ in range(runs):
        ours.append(run([*render, "--soundfont", bank, "-o", sound]))
        theirs.append(run(["fluidsynth", "-ni", "-q", "-r", "44100", "-F", folder / "other.wav", bank, notes]))
    (seconds, megabytes), (other_seconds, other_megabytes) = medians(ours), medians(theirs)
    print(
        f"{pathlib.Path(chart).stem:14} {pathlib.Path(bank).stem:14} {seconds:5.2f} s {megabytes:4.0f} MB"
        f"   fluidsynth {other_seconds:5.2f} s {other_megabytes:4.0f} MB   {seconds / other_seconds:4.2f} times",
        flush=True,
    )


def main():
    if len(sys.argv) < 7:
        sys.exit(__doc__.strip())
    runs, laps, java, jar, banks = int(sys.argv[1]), sys.argv[2], sys.argv[3], sys.argv[4], sys.argv[5].split(",")
    with tempfile.TemporaryDirectory() as folder:
        for bank in banks:
            for chart in sys.argv[6:]:
                compare(runs, laps, [java, "-jar", jar], bank, chart, pathlib.Path(folder))


if __name__ == "__main__":
    main()
