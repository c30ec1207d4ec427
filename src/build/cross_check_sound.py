"""Checks one rendered MIDI file and one rendered WAV file against a chart, with tools that are not ours.

usage: cross_check_sound.py CHART FILE.mid FILE.wav     (laps are found from the markers)

MIDI is read by mido and by abcmidi's mftext, sound by ffmpeg's ebur128 and by aubio. Prints what it
found; exits with status 1 when anything is off.
"""

import re
import statistics
import subprocess
import sys

import mido

# Sharps (positive) or flats of the minor and major keys: the circle of fifths.
MAJOR = {"C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5, "F#": 6, "C#": 7,
         "F": -1, "Bb": -2, "Eb": -3, "Ab": -4, "Db": -5, "Gb": -6, "Cb": -7}
MINOR = {"A": 0, "E": 1, "B": 2, "F#": 3, "C#": 4, "G#": 5, "D#": 6, "A#": 7,
         "D": -1, "G": -2, "C": -3, "F": -4, "Bb": -5, "Eb": -6, "Ab": -7}
# How far a mode's signature lies from that of the major key on its tonic.
MODES = {"dorian": -2, "phrygian": -4, "lydian": 1, "mixolydian": -1, "locrian": -5}

problems = []


def check(holds, what):
    if not holds:
        problems.append(what)


def run(*command):
    return subprocess.run(command, capture_output=True, text=True)


def read_chart(path):
    """The few facts of a chart that are needed, read by lines; enough for the demo charts."""
    chart = {"tempo": "100", "meter": "4/4", "count-in": "1", "sections": {}, "tempos": {}, "form": None}
    section = None
    for line in open(path, encoding="utf-8"):
        line = re.sub(r"\s+#.*|^#.*", "", line).rstrip()
        top = re.match(r"(tempo|meter|count-in|form):\s*(.+)$", line)
        name = re.match(r"  (\S[^:]*):$", line)
        key = re.match(r"    key:\s*(\S+)\s+(.+)$", line)
        tempo = re.match(r"    tempo:\s*(\S+)$", line)
        if top:
            chart[top[1]] = top[2]
        elif name:
            section = name[1]
            chart["sections"][section] = None
        elif tempo:
            chart["tempos"][section] = tempo[1]
        elif key:
            chart["sections"][section] = (key[1], key[2])
    order = re.findall(r"[^\s,\[\]]+", chart["form"] or "")
    chart["form"] = order or list(chart["sections"])
    return chart


def tempo_of(chart, section):
    return float(chart["tempos"].get(section, chart["tempo"]))


def signature(key):
    tonic, mode = key
    if mode == "major":
        return MAJOR[tonic]
    if mode in ("minor", "blues"):
        return MINOR[tonic]
    return MAJOR[tonic] + MODES[mode]


def written_signature(message):
    name = message.key
    return MINOR[name[:-1]] if name.endswith("m") else MAJOR[name]


def timed(track):
    tick = 0
    for message in track:
        tick += message.time
        yield tick, message


def check_midi(path, chart):
    midi = mido.MidiFile(path)
    check(midi.type == 1, f"format {midi.type}, not 1")
    check(midi.ticks_per_beat == 960, f"{midi.ticks_per_beat} ticks a quarter, not 960")
    names = [track.name for track in midi.tracks]
    check(names[1:] == [n for n in ("Drums", "Bass", "Chords", "Lead") if n in names[1:]], f"tracks {names}")

    title = list(timed(midi.tracks[0]))
    upper, lower = (int(n) for n in chart["meter"].split("/"))
    compound = lower >= 8 and upper % 3 == 0 and upper > 3
    bar = 960 * 4 * upper // lower
    meters = [(m.numerator, m.denominator) for _, m in title if m.type == "time_signature"]
    check(meters == [(upper, lower)], f"meters {meters}")

    markers = [(t, m.text) for t, m in title if m.type == "marker"]
    count_in = int(chart["count-in"]) * bar
    check(markers and markers[0][0] == count_in, f"bar 1 not after the count-in: {markers[:1]}")
    form = chart["form"]
    sections = [text for _, text in markers if text in chart["sections"]]
    laps = len(sections) // len(form)
    check(laps >= 1 and sections == form * laps, f"sections {sections}")
    check(all(t % bar == 0 for t, _ in markers), "a marker off the bar line")

    tempos = {t: m.tempo for t, m in title if m.type == "set_tempo"}
    for tick, text in markers:
        if text in chart["sections"]:
            holding = [s for t, s in sorted(tempos.items()) if t <= tick]
            wanted = round(60e6 / (tempo_of(chart, text) * (1.5 if compound else 1)))
            check(holding and holding[-1] == wanted, f"tempo {holding[-1:]} at {text}, not {wanted}")

    signatures = {t: written_signature(m) for t, m in title if m.type == "key_signature"}
    for tick, text in markers:
        if text in chart["sections"]:
            holding = [s for t, s in sorted(signatures.items()) if t <= tick]
            wanted = signature(chart["sections"][text])
            check(holding and holding[-1] == wanted, f"signature {holding[-1:]} at {text}, not {wanted}")

    ends = {list(timed(track))[-1][0] for track in midi.tracks}
    check(title[-1][0] % bar == 0 and title[-1][0] > 0, f"the end {title[-1][0]} is no whole bar of {bar}")
    notes = 0
    for track in midi.tracks[1:]:
        notes += check_pairs(track)
    check(notes > 0, "no notes")
    check_mftext(path, notes)
    print(f"{path}: {len(midi.tracks)} tracks, {notes} notes paired, {max(ends) // bar} bars, {laps} laps, tempo {list(tempos.values())}")
    return midi


def check_pairs(track):
    sounding, notes = {}, 0
    for tick, message in timed(track):
        if message.type not in ("note_on", "note_off"):
            continue
        place = (message.channel, message.note)
        if message.type == "note_on" and message.velocity > 0:
            check(place not in sounding, f"{track.name}: {place} struck while it sounds at {tick}")
            sounding[place] = tick
            notes += 1
        else:
            check(sounding.pop(place, tick) < tick, f"{track.name}: {place} ends without a start at {tick}")
    check(not sounding, f"{track.name}: left sounding {sounding}")
    return notes


def check_mftext(path, notes):
    text = run("mftext", path)
    check(text.returncode == 0, "mftext fails: " + text.stdout[-200:])
    struck = len(re.findall(r"Note on", text.stdout))
    check(struck == notes, f"mftext counts {struck} notes, mido {notes}")
    check(re.search(r"Header format=1 .*division=960", text.stdout), "mftext: " + text.stdout[:80])


def check_sound(path, midi, chart):
    probe = run("ffprobe", "-v", "error", "-show_entries", "stream=codec_name,sample_rate,channels", "-of", "csv=p=0", path)
    check(probe.stdout.strip() == "pcm_s16le,44100,2", f"format {probe.stdout.strip()}")
    report = run("ffmpeg", "-hide_banner", "-nostats", "-i", path, "-af", "ebur128=peak=true", "-f", "null", "-").stderr
    summary = report[report.rfind("Summary:"):]
    loudness = float(re.search(r"I:\s+(-?[\d.]+) LUFS", summary)[1])
    peak = float(re.search(r"Peak:\s+(-?[\d.]+) dBFS", summary)[1])
    check(abs(loudness + 16) <= 1, f"{loudness} LUFS, not -16 within 1")
    check(peak <= -1, f"true peak {peak} dBTP, above -1")

    struck, now = [], 0.0
    for message in midi:
        now += message.time
        if message.type == "note_on" and message.velocity > 0:
            struck.append(now)
    onsets = [float(t) for t in run("aubioonset", "-i", path).stdout.split()]
    near = [min(abs(o - s) for s in struck) for o in onsets[1:]]
    share = sum(d < 0.03 for d in near) / max(1, len(near))
    check(len(near) > 10 and share > 0.9, f"{share:.0%} of {len(near)} onsets lie by a note")

    beats = [float(line.split()[0]) for line in run("aubiotrack", "-i", path).stdout.splitlines() if line]
    intervals = [b - a for a, b in zip(beats, beats[1:])]
    middle = statistics.median(intervals)
    # aubio answers in steps of 12 ms: the mean of the intervals around the median is finer.
    step = statistics.mean(i for i in intervals if abs(i / middle - 1) < 0.08)
    lower = int(chart["meter"].split("/")[1])
    # A tracker may count half or double; in compound meters also the eighths or quarters.
    allowed = [0.5, 1, 2] + ([1 / 3, 2 / 3] if lower == 8 else [])
    # Sections may differ in tempo: then the mean lies between their beats.
    periods = [60 / tempo_of(chart, section) for section in chart["form"]]
    agrees = any(0.98 * min(periods) <= step / a <= 1.02 * max(periods) for a in allowed)
    check(agrees, f"beats every {step:.4f} s; counted notes last {periods}")
    print(f"{path}: {loudness} LUFS, {peak} dBTP, {share:.0%} of {len(near)} onsets by a note, a beat each {step:.4f} s ({step / periods[0]:.3f} counted)")


chart = read_chart(sys.argv[1])
midi = check_midi(sys.argv[2], chart)
if len(sys.argv) > 3:
    check_sound(sys.argv[3], midi, chart)
for problem in problems[:20]:
    print("OFF:", problem)
sys.exit(1 if problems else 0)
