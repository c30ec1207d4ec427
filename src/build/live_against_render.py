"""Compares a recording of `play` with the file that `render` made of the same chart, beat by beat.

usage: live_against_render.py RENDERED.wav RECORDED.wav SECONDS_A_BEAT

Both are the same music, so around every beat the recording must match the file at one and the same offset. Prints
how far the offsets lie apart; exits with status 1 when a beat is more than 1 ms off or less than nine in ten match.
"""

import sys
import wave

import numpy as np

WINDOW = 0.35  # seconds compared around a beat
SEARCH = 0.03  # how far off a beat is looked for
START = 4  # seconds within which the player starts


def mono(path):
    with wave.open(path) as file:
        samples = np.frombuffer(file.readframes(file.getnframes()), dtype="<i2")
        return samples.reshape(-1, 2).astype(float).sum(1), file.getframerate()


def place(recorded, part, rate):
    """Where the music starts in the first seconds of the recording: the peak of their correlation.

    The part is long, since bars that repeat a pattern look much alike.
    """
    size = 1 << int(np.ceil(np.log2(len(recorded) + len(part))))
    spectrum = np.fft.rfft(recorded, size) * np.conj(np.fft.rfft(part, size))
    return int(np.fft.irfft(spectrum, size)[: START * rate].argmax())


rendered, rate = mono(sys.argv[1])
recorded, _ = mono(sys.argv[2])
beat = float(sys.argv[3])
offset = place(recorded, rendered[: 20 * rate], rate)
window, search = int(WINDOW * rate), int(SEARCH * rate)
lags, compared = [], 0
at = 0.1
while True:
    start = int(at * rate)
    heard = start + offset
    if start + window > len(rendered) or heard + window + search > len(recorded):
        break
    wanted = rendered[start : start + window]
    around = recorded[max(0, heard - search) : heard + window + search]
    if heard >= search and np.abs(wanted).max() > 200:
        compared += 1
        level = np.sqrt(np.convolve(around * around, np.ones(window), "valid")) + 1
        match = np.correlate(around, wanted, "valid") / level / np.sqrt((wanted * wanted).sum())
        if match.max() > 0.8:
            lags.append((match.argmax() - search) / rate * 1000)
    at += beat
off = np.abs(np.array(lags) - np.median(lags)) if lags else np.array([np.inf])
print(f"{len(lags)} of {compared} beats found, off by {off.mean():.3f} ms in the mean, {off.max():.3f} ms at worst")
sys.exit(0 if compared and len(lags) >= 0.9 * compared and off.max() <= 1 else 1)
