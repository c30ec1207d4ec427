"""What happens to a guitar's sound between the string and the file: noise, rooms, echoes, amplifiers, a band."""

import mido
import numpy as np
from scipy import signal

from guitars import run_fluidsynth


def loudness(sound):
    """Root mean square of what sounds: the parts within 40 dB of the loudest."""
    blocks = sound[:len(sound) // 1024 * 1024].reshape(-1, 1024)
    power = (blocks ** 2).mean(axis=1)
    return np.sqrt(power[power > power.max() * 1e-4].mean())


def decibels(level):
    return 10 ** (level / 20)


def dry(sound, rate, chance, phrase):
    return sound


def hiss(sound, rate, chance, phrase):
    noise = signal.lfilter([1], [1, -chance.uniform(0, 0.7)], chance.normal(size=len(sound)))
    return sound + noise / noise.std() * loudness(sound) * decibels(-chance.uniform(22, 34))


def hum(sound, rate, chance, phrase):
    mains = chance.choice([50, 60])
    times = np.arange(len(sound)) / rate
    tone = sum(chance.uniform(0.2, 1) / partial * np.sin(2 * np.pi * mains * partial * times + chance.uniform(0, 6))
               for partial in (1, 2, 3, 5, 7, 9))
    return sound + tone / tone.std() * loudness(sound) * decibels(-chance.uniform(20, 30))


def room(sound, rate, chance, phrase):
    """Early reflections, then noise that decays within 0.3 to 0.9 s, the higher the faster."""
    seconds = chance.uniform(0.3, 0.9)
    length = int(seconds * rate)
    times = np.arange(length) / rate
    tail = np.zeros(length)
    for low, high, part in ((120, 800, 1.0), (800, 3000, 0.8), (3000, 9000, 0.5)):
        band = signal.butter(2, (low, high), "bandpass", fs=rate, output="sos")
        tail += signal.sosfilt(band, chance.normal(size=length)) * np.exp(-6.9 * times / (seconds * part))
    tail *= np.minimum(1, times / 0.015)
    tail /= np.sqrt((tail ** 2).sum())
    for _ in range(6):
        tail[int(chance.uniform(0.004, 0.04) * rate)] += chance.uniform(0.1, 0.35) * chance.choice([-1, 1])
    wet = signal.fftconvolve(sound, tail)[:len(sound)]
    return sound + wet / loudness(wet) * loudness(sound) * decibels(-chance.uniform(6, 13))


def delay(sound, rate, chance, phrase):
    """Echoes, each darker: a dotted eighth, an eighth or a free time."""
    beat = 60 / phrase.tempo
    times = [time for time in (0.75 * beat, 0.5 * beat) if 0.15 < time < 0.6] + [chance.uniform(0.18, 0.5)]
    step = int(chance.choice(times) * rate)
    echo, heard, level = sound, sound.copy(), decibels(-chance.uniform(5, 10))
    again = chance.uniform(0.25, 0.5)
    while level > 0.02:
        echo = signal.lfilter([0.55, 0.2], [1, -0.25], np.pad(echo, (step, 0))[:len(sound)])
        heard += level * echo
        level *= again
    return heard


def overdrive(sound, rate, chance, phrase):
    """Four times the rate, a lopsided soft clipping, a speaker's treble."""
    gain = decibels(chance.uniform(16, 34))
    noisy = sound / np.abs(sound).max() + chance.normal(size=len(sound)) * decibels(-chance.uniform(68, 76))
    fast = signal.resample_poly(signal.sosfilt(signal.butter(1, 90, "highpass", fs=rate, output="sos"), noisy), 4, 1)
    lean = chance.uniform(0, 0.25)
    clipped = np.tanh(gain * fast + lean) - np.tanh(lean)
    slow = signal.resample_poly(clipped, 1, 4)[:len(sound)]
    speaker = signal.butter(3, (75, chance.uniform(3200, 5200)), "bandpass", fs=rate, output="sos")
    return signal.sosfilt(speaker, slow)


def feedback(sound, rate, chance, phrase):
    """An overdriven sound whose long notes give way to one of their partials, fed back from the amplifier."""
    driven = overdrive(sound, rate, chance, phrase)
    level = loudness(driven)
    for label, stroke in phrase.sounding_alone():
        length = label["end"] - label["at"]
        if length < 0.9:
            continue
        times = np.arange(int(length * rate)) / rate
        hertz = 440 * 2 ** ((stroke.key + stroke.offsets(times) - 69) / 12) * chance.choice([2, 2, 3, 4])
        growth = np.clip((times - chance.uniform(0.25, 0.5)) / chance.uniform(0.6, 1.5), 0, 1) ** 2
        fade = np.minimum(1, (length - times) / 0.02)
        tone = np.sin(2 * np.pi * np.cumsum(hertz) / rate) * growth * fade * level * 1.4 * decibels(-chance.uniform(3, 9))
        start = int(label["at"] * rate)
        driven[start:start + len(tone)] += tone[:len(driven) - start]
    return driven


def band(bank):
    """Drums, bass and chords in the phrase's key and time, 18 dB below the guitar."""
    def behind(sound, rate, chance, phrase):
        backing = run_fluidsynth(bank, [(0, 33), (1, int(chance.choice([4, 16, 0]))), (9, 0)],
                                 backing_events(phrase, len(sound) / rate, chance), len(sound) / rate, rate)[:len(sound)]
        return sound + backing / loudness(backing) * loudness(sound) * decibels(-18)
    return behind


def backing_events(phrase, seconds, chance):
    """Bars of four from the phrase's first beat: kick and snare, hats, roots and fifths in the bass, held triads."""
    beat, events = 60 / phrase.tempo, []

    def note(at, channel, key, velocity, length):
        if at + length < seconds:
            events.append((at, mido.Message("note_on", channel=channel, note=int(key), velocity=velocity)))
            events.append((at + length, mido.Message("note_off", channel=channel, note=int(key))))

    minor = phrase.scale in ("minor pentatonic", "blues", "dorian", "harmonic minor")
    roots = chance.permutation([0, 5, 7, 0])
    for bar in range(int(seconds / beat / 4) + 1):
        start = 0.4 + bar * 4 * beat
        root = phrase.tonic + roots[bar % 4]
        for step in range(8):
            note(start + step * beat / 2, 9, 42, 62 + 12 * (step % 2 == 0), 0.1)
            note(start + step * beat / 2, 0, 28 + (root + (7 if step in (3, 6) else 0) - 28) % 12, 84, beat * 0.45)
        for step, drum in ((0, 36), (1, 38), (2, 36), (2.5, 36), (3, 38)):
            note(start + step * beat, 9, drum, 92, 0.1)
        third = 3 if minor and roots[bar % 4] != 7 else 4
        for key in (0, third, 7):
            note(start, 1, 55 + (root + key - 55) % 12, 70, beat * 3.8)
    return events


def conditions(bank):
    """Every condition by its name; the bank plays the band."""
    return {"dry": dry, "hiss": hiss, "hum": hum, "room": room, "delay": delay, "overdrive": overdrive,
            "feedback": feedback, "band": band(bank)}
