#!/usr/bin/env python3
"""Measures the house: files and code lines per room, class cycles, lengths of files and methods.

    src/bench/house.py [CHECKOUT]

CHECKOUT (this folder if left out) is compiled: its classes are in target/classes. Code lines are
those that hold more than comment or space. A class cycle is a strongly connected component of the
top-level classes, nested ones counted with the class around them, by the JDK's jdeps. A method is
as long as the code lines from its name or type to its closing brace; methods without a body, and
lambdas, aren't counted. Measured are the main sources alone.
"""

import collections
import math
import pathlib
import re
import subprocess
import sys

ROOT = "dev.loopgauge"
LITERALS = re.compile(
    r'"""(?:\\.|[^\\])*?"""|"(?:\\.|[^"\\\n])*"|' r"'(?:\\.|[^'\\\n])*'" r"|//[^\n]*|/\*.*?\*/",
    re.S,
)
TYPE = re.compile(r"(?:^|[\s)])(?:class|interface|enum|record)\s+(\w+)(?![\w.(]*\s*=)")
ANNOTATION = re.compile(r"@(?!interface)[\w.]+(?:\s*\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\))?")
METHOD = re.compile(r"(?:(?P<before>.*\S)\s+)?(?P<name>\w+)\s*\(.*\)\s*(?:throws [\w\s.,]+)?$", re.S)


def bare(text):
    """Java without its comments and with empty literals; line ends stay where they are."""

    def emptied(match):
        found = match.group()
        ends = "\n" * found.count("\n")
        if found.startswith("/"):
            return " " + ends
        # A text block's lines are code.
        return '"' + ends.replace("\n", "\n+") + '"' if found.startswith('"""') else '""'

    return LITERALS.sub(emptied, text)


def code_lines(text):
    return sum(1 for line in text.split("\n") if line.strip())


def opens(header, around):
    """What a brace opens: ("type", name), ("method", None) or ("block", None)."""
    header = ANNOTATION.sub(" ", header).strip()
    kind, name = around
    declared = TYPE.search(header)
    if declared and "=" not in header[: declared.start()]:
        return "type", declared.group(1)
    if re.search(r"\bnew\s[^;]*\)$", header) and kind != "type":
        return "type", ""
    if kind != "type":
        return "block", None
    if re.search(r"=\s*new\s[^;]*\)$", header):
        return "type", ""
    if "=" in header:
        return "block", None
    if re.fullmatch(r"(?:(?:public|private|protected)\s+)?" + (name or "-"), header):
        return "method", None  # a record's compact constructor
    method = METHOD.match(header)
    if method and (method.group("before") or method.group("name") == name):
        return "method", None
    return ("type", "") if method else ("block", None)  # an enum constant's own body


def method_lengths(text):
    """The code lines of each method in Java without comments."""
    lengths, stack, start, parens = [], [("file", None, 0)], 0, []
    for at, sign in enumerate(text):
        if sign == "(":
            parens[-1:] = [parens[-1] + 1] if parens else [1]
        elif sign == ")" and parens:
            parens[-1] -= 1
        elif sign == "{":
            inside = bool(parens) and parens[-1] > 0
            around = stack[-1][:2]
            header = text[start:at]
            lead = len(header) - len(header.lstrip())
            if inside and not re.search(r"\bnew\s[^;{}]*\)\s*$", header):
                opened = ("block", None)
            elif inside:
                opened = ("type", "")
            else:
                opened = opens(header, around)
            stack.append((*opened, start + lead))
            parens.append(0)
            start = at + 1
        elif sign == "}":
            kind, _, begin = stack.pop()
            parens.pop()
            if kind == "method":
                body = text[begin : at + 1]
                lengths.append(code_lines(ANNOTATION.sub(" ", body) if "@" in body else body))
            start = at + 1
        elif sign == ";" and not (parens and parens[-1] > 0):
            start = at + 1
    return lengths


def uses(classes):
    """The classes that each top-level class uses, by jdeps."""
    out = subprocess.run(
        ["jdeps", "-verbose:class", "-filter:none", "--multi-release", "base", str(classes)],
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    edges = collections.defaultdict(set)
    for line in out.splitlines():
        found = re.match(r"\s+(\S+)\s+-> (\S+)", line)
        if found and found.group(1).startswith(ROOT):
            user, used = (name.split("$")[0] for name in found.groups())
            edges[user].add(used)
    return edges


def cycles(edges):
    """Strongly connected components of more than one class (Tarjan 1972, without recursion)."""
    index, low, on_stack, stack, found = {}, {}, set(), [], []
    for root in edges:
        if root in index:
            continue
        work = [(root, iter(sorted(edges[root])))]
        index[root] = low[root] = len(index)
        stack.append(root)
        on_stack.add(root)
        while work:
            node, following = work[-1]
            for other in following:
                if other not in edges:
                    continue
                if other not in index:
                    index[other] = low[other] = len(index)
                    stack.append(other)
                    on_stack.add(other)
                    work.append((other, iter(sorted(edges[other]))))
                    break
                if other in on_stack:
                    low[node] = min(low[node], index[other])
            else:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[node])
                if low[node] == index[node]:
                    component = set()
                    while node not in component:
                        component.add(stack.pop())
                    on_stack -= component
                    if len(component) > 1:
                        found.append(sorted(component))
    return found


def room(name):
    return name[len(ROOT) + 1 :].rpartition(".")[0]


def quantile(values, share):
    """The smallest value that at least this share of the values doesn't exceed."""
    ordered = sorted(values)
    return ordered[max(0, math.ceil(share * len(ordered)) - 1)] if ordered else 0


def main():
    checkout = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ".")
    sources = checkout / "src/main/java"
    classes = checkout / "target/classes"
    if not classes.is_dir():
        sys.exit(f"{classes} isn't there: compile first, `mvn -B -q test-compile`")
    texts = {}
    for path in sorted(sources.rglob("*.java")):
        if path.name != "package-info.java":
            name = ".".join(path.relative_to(sources).with_suffix("").parts)
            texts[name] = path.read_text(encoding="utf-8")
    plain = {name: bare(text) for name, text in texts.items()}
    code = {name: code_lines(text) for name, text in plain.items()}
    lengths = {name: len(text.splitlines()) for name, text in texts.items()}
    methods = {name: method_lengths(text) for name, text in plain.items()}
    knots = cycles(uses(classes))

    print("| room | files | code lines | class cycles | classes in them |")
    print("|---|---|---|---|---|")
    for each in sorted({room(name) for name in texts}):
        inside = [name for name in texts if room(name) == each]
        own = [knot for knot in knots if {room(c) for c in knot} == {each}]
        sizes = " + ".join(str(len(knot)) for knot in sorted(own, key=len, reverse=True))
        total = sum(code[name] for name in inside)
        print(f"| `{each}` | {len(inside)} | {total} | {len(own)} | {sizes or 0} |")
    across = [knot for knot in knots if len({room(c) for c in knot}) > 1]
    caught = sum(len(knot) for knot in knots)
    print(f"| all | {len(texts)} | {sum(code.values())} | {len(knots)} | {caught} |")
    print()
    print(f"Class cycles across rooms: {len(across)}")
    for knot in across:
        print("  " + ", ".join(c[len(ROOT) + 1 :] for c in knot))
    every = [length for each in methods.values() for length in each]
    print()
    print("| lengths | count | median | 9 in 10 up to | longest |")
    print("|---|---|---|---|---|")
    for what, values in (
        ("file, all lines", list(lengths.values())),
        ("file, code lines", list(code.values())),
        ("method, code lines", every),
    ):
        figures = len(values), quantile(values, 0.5), quantile(values, 0.9), max(values)
        print(f"| {what} | " + " | ".join(map(str, figures)) + " |")


if __name__ == "__main__":
    main()
