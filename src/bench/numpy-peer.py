"""The delay between two 16-bit WAV files the way one would script it with numpy: a zero-padded FFT
correlation, its largest value, and a parabola through the values beside it.

    python3 numpy-peer.py REFERENCE RETURN [--plain]

The transform's length is the next power of two, as who knows the FFT would have it; with --plain it
is what the correlation needs and no more, as the shortest script would have it.
"""
import sys
import wave

import numpy


def samples(name):
    with wave.open(name) as file:
        data = numpy.frombuffer(file.readframes(file.getnframes()), "<i2")
        return data.reshape(-1, file.getnchannels())[:, 0] / 32768


x, y = samples(sys.argv[1]), samples(sys.argv[2])
needed = len(x) + len(y) - 1
n = needed if "--plain" in sys.argv else 1 << needed.bit_length()
r = numpy.fft.irfft(numpy.fft.rfft(y, n) * numpy.conj(numpy.fft.rfft(x, n)), n)
k = int(numpy.argmax(numpy.abs(r)))
a, b, c = r[k - 1], r[k], r[(k + 1) % n]
delay = (k if k < n / 2 else k - n) + (a - c) / (2 * (a - 2 * b + c))
print(f"{delay:.4f}")
