"""Times whole processes on long recordings: many channels at once, and a tracked hour.

    mvn -B -q package -DskipTests && python3 src/bench/long.py

Channel 1 holds noise, the others the same later, each with noise of its own.
"""
import pathlib
import statistics
import tempfile
import wave

import numpy

from compare import DELAY, JAR, RATE, run


def record(name, seconds, returns, width):
    random = numpy.random.default_rng(2)
    before = numpy.zeros(DELAY)
    with wave.open(str(name), "wb") as file:
        file.setnchannels(1 + returns)
        file.setsampwidth(width)
        file.setframerate(RATE)
        for _ in range(seconds):
            sent = random.normal(0, 0.1, RATE)
            late = numpy.concatenate((before, sent))[:RATE]
            before = sent[-DELAY:]
            back = 0.5 * late + random.normal(0, 0.005, (returns, RATE))
            whole = (numpy.vstack((sent, back)).T * 2**31).astype("<i4", order="C")
            octets = whole.view("u1").reshape(-1, 4)
            file.writeframes(octets[:, 4 - width :].tobytes())
    return str(name)


def analyze(name, *options, java=()):
    return ["java", *java, "-jar", str(JAR), "analyze", "--reference", name, *options]


def channels(folder):
    name = record(folder / "channels.wav", 60, 63, 2)
    one, all_of_them = (analyze(name, "--return-channel", which) for which in ("2", "2-64"))
    pairs = [(run(one), run(all_of_them)) for _ in range(3)]
    print("one of 63 channels, 60 s   %6.2f s" % statistics.median(a[0] for a, _ in pairs))
    print("all of them                %6.2f s" % statistics.median(b[0] for _, b in pairs))
    print("                           %6.2f times" % statistics.median(b[0] / a[0] for a, b in pairs))


def tracks(folder):
    for minutes in (1, 10, 60):
        name = record(folder / f"{minutes}.wav", 60 * minutes, 1, 3)
        wall, used, memory = run(analyze(name, "--track", "10", java=("-Xmx256m",)))
        print(f"track of {minutes:2} min, 24 bits   {wall:6.2f} s, {memory:.0f} MiB")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as folder:
        channels(pathlib.Path(folder))
        tracks(pathlib.Path(folder))
