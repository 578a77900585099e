#!/usr/bin/env python3
"""Shows what each threshold of the estimator decides: takes it away, either way, and looks.

    mvn -B -q test-compile && src/bench/thresholds.py SEED [CLASS ...]

Thresholds are those of the table in DEVELOPERS.md. Each is multiplied by 1000 and divided by it,
so that whatever asks for it says always or never; the estimator is compiled anew and reads some
400 returns of every kind (`Outcomes`): traps, changes of a path, filters, drum samples. A line
tells how many came out otherwise each way: numbers right, wrong, refused and changes told, more or
less. One that decides nothing in either direction is a rule without a case among these returns.
"""

import collections
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).parent.parent.parent
SOURCES = ROOT / "src/main/java/dev/loopgauge"
CLASSES = [ROOT / "target/test-classes", ROOT / "target/classes"]
FACTORS = (1000, 0.001)


def thresholds(only):
    """Class and name of each in the table."""
    text = (ROOT / "DEVELOPERS.md").read_text()
    table = text[text.index("### Thresholds that decide") :]
    for row in re.findall(r"^\| (`\w+`[^|]*) \|", table, re.M):
        for group in row.split(";"):
            classes = re.findall(r"`(\w+)`", group)
            for name in re.findall(r"\b([A-Z][A-Z_]{2,})\b", group):
                yield from ((c, name) for c in classes if not only or c in only)


def classpath():
    out = pathlib.Path(tempfile.gettempdir()) / "loopgauge-classpath.txt"
    subprocess.run(
        ["mvn", "-o", "-q", "dependency:build-classpath", "-Dmdep.includeScope=test",
         f"-Dmdep.outputFile={out}"],
        cwd=ROOT, check=True, stdout=subprocess.DEVNULL,
    )
    return out.read_text().strip()


def outcomes(seed, path):
    command = ["java", "-XX:+UseSerialGC", "-cp", path, "dev.loopgauge.estimate.Outcomes", seed]
    run = subprocess.run(command, capture_output=True, text=True)
    return run.stdout.splitlines() if run.returncode == 0 else None


def altered(source, name, factor, folder, path):
    """Compiles the estimator with one constant times a factor; its folder of classes."""
    text = source.read_text()
    pattern = r"(static final (double|int) %s =)([^;]+);" % name
    cast = r"\1 (\2) (%s * (\3));" % factor
    changed, count = re.subn(pattern, cast, text)
    if count != 1:
        return None
    classes = pathlib.Path(folder)
    copy = classes / source.name
    copy.write_text(changed)
    others = [str(f) for f in (SOURCES / "estimate").rglob("*.java") if f.name != source.name]
    done = subprocess.run(
        ["javac", "-nowarn", "-proc:none", "-d", folder, "-cp", path, str(copy), *others],
        capture_output=True,
    )
    return folder if done.returncode == 0 else None


def difference(before, after):
    if after is None:
        return "fails"
    counts = collections.Counter()
    for old, new in zip(before, after):
        if old != new:
            counts["changed"] += 1
            counts[old.split("\t")[1]] -= 1
            counts[new.split("\t")[1]] += 1
    told = [f"{n} {kind.lower()}" if kind == "changed" else f"{n:+} {kind.lower()}"
            for kind, n in counts.items() if n]
    return ", ".join(told) or "nothing"


def main():
    seed, only = sys.argv[1], sys.argv[2:]
    path = ":".join([*map(str, CLASSES), classpath()])
    before = outcomes(seed, path)
    print(collections.Counter(line.split("\t")[1] for line in before), flush=True)
    for owner, name in thresholds(only):
        source = next(SOURCES.rglob(f"{owner}.java"), None)
        ways = []
        for factor in FACTORS:
            with tempfile.TemporaryDirectory() as folder:
                classes = source and altered(source, name, factor, folder, path)
                run = outcomes(seed, f"{classes}:{path}") if classes else None
                ways.append(difference(before, run) if classes else "not compiled")
        print(f"| `{owner}` {name} | {' | '.join(ways)} |", flush=True)


main()
