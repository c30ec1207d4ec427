"""Guitars to play the phrases on: the sampled programs of a SoundFont through fluidsynth, and recorded single notes.

A guitar turns strokes (one attack of a string each, with all that happens to the pitch until the next attack) into
clips of sound, every clip by itself, so that its true start and its true tuning can be measured before it is used.
"""

import dataclasses
import pathlib
import re
import subprocess
import tempfile

import mido
import numpy as np
from scipy import ndimage, signal
from scipy.io import wavfile

from phrases import Stroke

BEND_RANGE = 12  # semitones, stated to the synthesizer by RPN 0 (General MIDI)
STEP = 0.004  # seconds between two pitch-bend messages
LEAD = 0.05  # seconds of silence before the attack of every clip
LOWEST, HIGHEST = 40, 88  # E2 to E6


def attack_of(clip, rate):
    """Seconds to the sample where the sound has risen to a tenth of the loudest moment of its first tenth of a second."""
    envelope = ndimage.maximum_filter1d(np.abs(clip), max(1, int(0.002 * rate)))
    loud = np.flatnonzero(envelope > 0.02 * envelope.max())
    if len(loud) == 0:
        return 0.0
    first = envelope[loud[0]:loud[0] + int(0.1 * rate)]
    return (loud[0] + int(np.argmax(first > 0.1 * first.max()))) / rate


def pitch_of(clip, rate, near):
    """The pitch (MIDI number with a fraction) of a steady tone known to lie near the MIDI number given.

    Mean over the first eight partials, each divided by its number and weighed by its height.
    """
    size = 1 << 18
    spectrum = np.abs(np.fft.rfft(clip * np.blackman(len(clip)), size))
    near_hertz = 440 * 2 ** ((near - 69) / 12)
    estimates, weights = [], []
    for partial in range(1, 9):
        low, high = (int(partial * near_hertz * factor * size / rate) for factor in (2 ** (-0.8 / 12), 2 ** (0.8 / 12)))
        if high >= len(spectrum) - 1:
            break
        top = low + int(np.argmax(spectrum[low:high + 1]))
        left, middle, right = np.log(spectrum[top - 1:top + 2] + 1e-12)
        shift = 0.5 * (left - right) / (left - 2 * middle + right)
        estimates.append((top + shift) * rate / size / partial)
        weights.append(spectrum[top])
    hertz = np.average(estimates, weights=weights)
    return 69 + 12 * np.log2(hertz / 440)


class BankGuitar:
    """A program of a SoundFont, played by fluidsynth without its reverb and chorus."""

    def __init__(self, bank, program, rate):
        self.bank, self.program, self.rate = bank, program, rate
        self.highest = 86
        self.out_of_tune = self.measure()

    def measure(self):
        """How far each key sounds from its MIDI number, in semitones."""
        keys = list(range(LOWEST, HIGHEST + 1))
        clips = self.render([Stroke(0, key, 90, 0.9, [(0, 0.0)]) for key in keys])
        away = {}
        for key, clip in zip(keys, clips):
            start = int((LEAD + 0.1) * self.rate)
            away[key] = pitch_of(clip[start:start + int(0.5 * self.rate)], self.rate, key) - key
        return away

    def play(self, strokes):
        """A clip for each stroke; the attack lies LEAD seconds after the clip's start, the pitch is as asked."""
        tuned = [dataclasses.replace(stroke, curve=[(at, offset - self.out_of_tune[stroke.key])
                                                    for at, offset in stroke.curve]) for stroke in strokes]
        return self.render(tuned)

    def render(self, strokes):
        events, at = [], 0.5
        starts = []
        for stroke in strokes:
            starts.append(at)
            events += self.events(stroke, at)
            at += stroke.length + 0.8
        sound = run_fluidsynth(self.bank, [(0, self.program)], events, at, self.rate)
        return [self.cut(sound, start, stroke) for start, stroke in zip(starts, strokes)]

    def events(self, stroke, at):
        times = np.arange(-0.02, stroke.length + 0.1, STEP)
        bends = np.round(stroke.offsets(times) / BEND_RANGE * 8192).astype(int)
        events = [(at + times[0], mido.Message("pitchwheel", pitch=int(bends[0])))]
        for time, before, bend in zip(times[1:], bends, bends[1:]):
            if bend != before:
                events.append((at + time, mido.Message("pitchwheel", pitch=int(np.clip(bend, -8192, 8191)))))
        events.append((at, mido.Message("note_on", note=stroke.key, velocity=stroke.velocity)))
        events.append((at + stroke.length + 0.15, mido.Message("note_off", note=stroke.key)))
        return events

    def cut(self, sound, start, stroke):
        rough = sound[int((start - 0.03) * self.rate):int((start + stroke.length + 0.3) * self.rate)]
        attack = start - 0.03 + attack_of(rough, self.rate)
        first = int(round((attack - LEAD) * self.rate))
        return sound[first:first + int((LEAD + stroke.length + 0.1) * self.rate)]


def run_fluidsynth(bank, programs, events, seconds, rate):
    """Plays events (seconds, message) through a bank; programs are pairs of channel and program. Mono, floats."""
    track = mido.MidiTrack()
    file = mido.MidiFile(ticks_per_beat=10000)
    file.tracks.append(track)
    opening = []
    for channel, program in programs:
        opening.append(mido.Message("program_change", channel=channel, program=program))
        for control, value in ((101, 0), (100, 0), (6, BEND_RANGE), (38, 0), (101, 127), (100, 127)):
            opening.append(mido.Message("control_change", channel=channel, control=control, value=value))
    ordered = [(0.0, message) for message in opening] + sorted(events, key=lambda event: event[0])
    ordered.append((seconds, mido.Message("note_off", note=0)))
    before = 0
    for at, message in ordered:
        tick = round(at * 20000)  # ten thousand to the quarter note at 120 quarters a minute
        track.append(message.copy(time=tick - before))
        before = tick
    with tempfile.TemporaryDirectory() as folder:
        score, wave = pathlib.Path(folder, "score.mid"), pathlib.Path(folder, "sound.wav")
        file.save(score)
        subprocess.run(["fluidsynth", "-ni", "-q", "-o", "synth.dynamic-sample-loading=1", "-R", "0", "-C", "0", "-g", "0.4", "-r", str(rate), "-O", "float",
                        "-T", "wav", "-F", str(wave), str(bank), str(score)], check=True, capture_output=True)
        sound = np.frombuffer(wave.read_bytes().split(b"data", 1)[1][4:], "<f4").astype(float).reshape(-1, 2)
    sound = sound.mean(axis=1)
    return np.pad(sound, (0, max(0, int((seconds + 1) * rate) - len(sound))))


class RecordedGuitar:
    """Single notes recorded from a guitar, one WAV file each named by its note; a pitch between is read faster or slower."""

    LETTERS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}

    def __init__(self, folder, rate):
        self.rate = rate
        self.notes = {}
        for file in sorted(pathlib.Path(folder).glob("*.wav")):
            letter, sharp, octave = re.fullmatch(r"([A-G])(s?)(\d)", file.stem).groups()
            key = self.LETTERS[letter] + bool(sharp) + 12 * (int(octave) + 1)
            self.notes.update(self.read(file, key))
        self.highest = int(min(86, max(self.notes) + 7))

    @staticmethod
    def read(file, key):
        rate, sound = wavfile.read(file)
        sound = sound.astype(float) / np.iinfo(sound.dtype).max if sound.dtype.kind == "i" else sound.astype(float)
        if sound.ndim == 2:
            sound = sound.mean(axis=1)
        attack = attack_of(sound, rate)
        steady = sound[int((attack + 0.1) * rate):int((attack + 0.6) * rate)]
        measured = pitch_of(steady, rate, key)
        if abs(measured - key) > 0.5 or len(sound) < 1.2 * rate:
            return {}
        return {measured: (rate, attack, sound / np.abs(sound).max())}

    def play(self, strokes):
        """A clip for each stroke; the attack lies LEAD seconds after the clip's start, the pitch is as asked."""
        return [self.clip(stroke) for stroke in strokes]

    def clip(self, stroke):
        recorded = min(self.notes, key=lambda pitch: abs(pitch - stroke.key))
        source_rate, attack, sound = self.notes[recorded]
        times = np.arange(int((LEAD + stroke.length + 0.1) * self.rate)) / self.rate - LEAD
        speed = 2 ** ((stroke.key + stroke.offsets(times) - recorded) / 12)
        read_at = np.cumsum(speed) / self.rate
        read_at += attack - read_at[int(LEAD * self.rate)]
        twice = signal.resample_poly(sound[:int(source_rate * (read_at[-1] + 0.5))], 2, 1)
        clip = ndimage.map_coordinates(twice, [read_at * 2 * source_rate], order=3, mode="constant")
        return clip * (stroke.velocity / 100) ** 2 * 0.25
