"""The delay between two 16-bit WAV files the way one would script it with numpy: a zero-padded FFT
correlation, its largest value, and a parabola through the values beside it.

    python3 numpy-peer.py REFERENCE RETURN
"""
import sys
import wave

import numpy


def samples(name):
    with wave.open(name) as file:
        data = numpy.frombuffer(file.readframes(file.getnframes()), "<i2")
        return data.reshape(-1, file.getnchannels())[:, 0] / 32768


x, y = samples(sys.argv[1]), samples(sys.argv[2])
n = 1 << (len(x) + len(y) - 1).bit_length()
r = numpy.fft.irfft(numpy.fft.rfft(y, n) * numpy.conj(numpy.fft.rfft(x, n)), n)
k = int(numpy.argmax(numpy.abs(r)))
a, b, c = r[k - 1], r[k], r[(k + 1) % n]
delay = (k if k < n / 2 else k - n) + (a - c) / (2 * (a - 2 * b + c))
print(f"{delay:.4f}")
