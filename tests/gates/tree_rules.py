# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Rules about files as such: names, places, first lines, history, and what the papers promise."""

import fnmatch
import posixpath
import re

from finding import Finding

_SPDX = ("SPDX-FileCopyrightText: The project authors", "SPDX-License-Identifier: GPL-3.0-only")
_SOURCE = re.compile(r"\.(h|cpp|qml|js|mjs|py|sh|cmake|sql)$|(^|/)CMakeLists\.txt$")

TOP = frozenset(
    "CMakeLists.txt CMakePresets.json README.md DEVELOPERS.md LICENSE CHANGELOG.md SECURITY.md "
    "app qml core tests assets demo-data".split()
)

_VAGUE = re.compile(r"(?:(?:^|_)(?:manager|helper|util|common|data|info)|(?:Manager|Helper|Util|Common|Data|Info))s?$")

# (files, most lines, what to do instead)
LENGTHS = (
    (r"^(app|core|qml)/(?!.*\.(json|csv|svg|txt)$)", 450, "it holds two ideas: find them and split it"),
    (r"^DEVELOPERS\.md$", 300, "keep the tour and the recipes; the rest belongs beside the code"),
)


def spdx(tree):
    for source in tree.matching(""):
        if not _SOURCE.search(source.path) and not source.raw.startswith("#!"):
            continue
        first = source.raw.split("\n")[:5]
        for wanted in _SPDX:
            if not any(line.rstrip().endswith(wanted) for line in first):
                yield Finding(source.path, 1, f"no line \"{wanted}\"", "copy both SPDX lines from another file")


def top_level(tree):
    for path in tree.files:
        top = path.partition("/")[0]
        if top not in TOP and not top.startswith("."):
            yield Finding(path, 1, f"{top} is no name of the top folder",
                          "put it into one of its rooms, or into .gitignore if it is made by a build")


def file_names(tree):
    for path in tree.files:
        name = posixpath.basename(path)
        if re.search(r"\.(hpp|hh|hxx|cc|cxx|c)$", name):
            yield Finding(path, 1, "not an ending of ours", "end it in .h or .cpp")
        elif re.search(r"\.(h|cpp)$", name) and not re.fullmatch(r"[a-z][a-z0-9]*(_[a-z0-9]+)*\.(h|cpp)", name):
            yield Finding(path, 1, "a file name that is not snake_case", "write it like civil_day.h")


def vague_names(tree):
    for path in tree.files:
        stem, _, ending = posixpath.basename(path).partition(".")
        parts = [stem] if ending in ("h", "cpp", "qml", "js", "mjs", "py", "sh", "cmake") else []
        if path.startswith(("app/", "core/", "qml/")):
            parts += path.split("/")[:-1]
        if any(_VAGUE.search(part) for part in parts):
            yield Finding(path, 1, "a name that says nothing", "name it for what it knows or does")


def lengths(tree):
    for files, most, instead in LENGTHS:
        for source in tree.matching(files):
            lines = len(source.raw.splitlines())
            if lines > most:
                yield Finding(source.path, most + 1, f"{lines} lines, over {most}", instead, by=files)


# --- landed schema steps -----------------------------------------------------------------

_STEPS = "core/store/schema"


def _landed_steps(tree):
    """Path to blob of every step, as it was when it first came in. A shallow clone knows no earlier
    state than its own first commit, so there this asks less."""
    if not tree.has_commits():
        return {}
    log = tree.git("-c", "core.quotePath=false", "log", "--topo-order", "--diff-filter=A", "--no-renames", "--format=",
                   "--raw", "--no-abbrev", "-m", "HEAD", "--", _STEPS)
    landed = {}
    for line in log.splitlines():  # newest first, so the oldest stays
        about, _, path = line.partition("\t")
        if re.search(r"/\d{4}_[^/]*\.sql$", path):
            landed[path] = about.split()[3]
    return landed


def schema(tree):
    steps = {}
    for path in tree.files:
        if path.startswith(_STEPS + "/") and path.endswith(".sql"):
            number = re.fullmatch(r"(\d{4})_[a-z0-9_]+\.sql", posixpath.basename(path))
            if not number:
                yield Finding(path, 1, "not the name of a schema step", "write it like 0002_what_it_adds.sql")
            elif steps.setdefault(number[1], path) != path:
                yield Finding(path, 1, f"a second step {number[1]}", "take the next number")
    landed = _landed_steps(tree) if tree.is_checkout else {}
    for path, blob in sorted(landed.items()):
        if path not in tree.files:
            yield Finding(path, 1, "a landed schema step is gone", "bring it back: diaries were opened with it")
        elif tree.git("hash-object", "--no-filters", "--", path).strip() != blob:
            yield Finding(path, 1, "a landed schema step changed", "bring it back as it was and write a new step")


# --- paths that a paper names ------------------------------------------------------------

_PAPERS = r"^(README|DEVELOPERS)\.md$"
_FILE_ENDING = re.compile(r"\.(h|cpp|qml|py|cmake|sql)$")


def _named(source):
    """(offset, word, is a link) for each word in backticks or in a fence and each link target."""
    fenced = [(m.start(), m.end()) for m in re.finditer(r"^[ ]*```.*?^[ ]*```", source.raw, re.M | re.S)]
    for start, end in fenced:
        first = source.raw.index("\n", start)
        for word in re.finditer(r"\S+", source.raw[first:end]):
            yield first + word.start(), word.group(), False
    text = source.raw
    for start, end in fenced:
        text = text[:start] + re.sub(r"[^\n]", " ", text[start:end]) + text[end:]
    for span in re.finditer(r"(`+)(?!`)(.+?)(?<!`)\1(?!`)", text):
        for word in re.finditer(r"\S+", span[2]):
            yield span.start(2) + word.start(), word.group(), False
    for link in re.finditer(r"\]\(\s*<?([^)>\s]+)|^[ ]*\[[^\]]+\]:\s*<?([^>\s]+)", text, re.M):
        yield link.start(), link[1] or link[2], True


def _path_in(word, is_link):
    """The path that \\a word promises, or "". A part like <name> promises the folder it stands in."""
    path = re.sub(r"(::|#).*", "", word.strip("\"'()[],;")) if not is_link else word.partition("#")[0]
    path = re.sub(r"(:\d+)+$", "", path).rstrip(".:,").removeprefix("./").rstrip("/")
    if re.match(r"[a-z]+:|[/$~-]", path) or re.search(r"\.\.\.|…", path):
        return ""
    kept = []
    for part in path.split("/"):
        if re.search(r"[<>{}$]", part):
            break
        kept.append(part.replace("NNNN", "[0-9][0-9][0-9][0-9]"))
    path = "/".join(kept)
    if is_link or path in TOP or _FILE_ENDING.search(path):
        return path
    return path if kept and (kept[0] in TOP or kept[0] == ".ci") else ""


def named_paths(tree):
    names = {posixpath.basename(path) for path in tree.files}
    for source in tree.matching(_PAPERS):
        for offset, word, is_link in _named(source):
            path = _path_in(word, is_link)
            if not path:
                continue
            places = [path] if is_link else [base + path for base in ("", "core/", "qml/", "app/", "tests/", "*/")]
            if any(tree.holds(place) for place in places) or ("/" not in path and path in names):
                continue
            if re.search(r"[*?\[]", path) and any(fnmatch.filter(tree.files, place) for place in places):
                continue
            yield Finding(source.path, source.line(offset), f"names {word}, which is not there",
                          "correct the path, or take the sentence out until it is true")


_OUTWARD = re.compile(r"(?<![\w./})\]$\"'])((?:\.\./)+[A-Za-z][\w./-]*)")


def outside_paths(tree):
    """In comments and papers: a path upwards that leads out of the checkout, or nowhere."""
    for source in tree.matching(""):
        for found in _OUTWARD.finditer(source.raw if source.path.endswith(".md") else source.comments):
            path = posixpath.normpath(posixpath.join(posixpath.dirname(source.path), found[1].rstrip(".")))
            if not tree.holds(path):
                yield Finding(source.path, source.line(found.start()), f"{found[1]} is not in the project",
                              "say here what it says: the project stands alone")
