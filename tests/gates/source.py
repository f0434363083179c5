# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""The files of a checkout, and what in them is code, comment and text.

A rule about code must not fire on a comment that explains it, so every file is read
once into views of equal length: an offset means the same place in each of them.
"""

import os
import re
import subprocess
from functools import cached_property
from pathlib import Path

_CPP = re.compile(
    r"""(?P<comment>//(?:\\\n|[^\n])*|/\*.*?(?:\*/|\Z))
      | (?P<raw>(?:u8|[uUL])?R"(?P<fence>[^()\\\s]{0,16})\((?P<inside>.*?)\)(?P=fence)")
      | (?P<string>"(?:\\.|[^"\\\n])*")
      | (?P<char>'(?:\\.|[^'\\\n])+')
      | (?P<number>\b\d(?:'?[\w.])*)
      | (?P<word>\w+)""",
    re.S | re.X,
)
_QML = re.compile(
    r"""(?P<comment>//[^\n]*|/\*.*?(?:\*/|\Z))
      | (?P<string>"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)
      | (?P<char>(?<=[(,=:\[!&|?])[ ]?/(?![*/ ])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n\[])+/[a-z]*)
      | (?P<word>\w+)""",  # char: here a regular expression, which may hold quotes
    re.S | re.X,
)
_PYTHON = re.compile(
    r"""(?P<comment>\#[^\n]*)
      | (?P<string>\"{3}(?:\\.|.)*?\"{3}|'{3}(?:\\.|.)*?'{3}|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*')""",
    re.S | re.X,
)
_HASH = re.compile(r"(?:^|(?<=\s))(?P<comment>\#[^\n]*)", re.M)

_LANGUAGES = {
    ".h": _CPP, ".cpp": _CPP, ".qml": _QML, ".js": _QML, ".mjs": _QML,
    ".py": _PYTHON, ".sh": _HASH, ".cmake": _HASH,
}


def _blank(text):
    return re.sub(r"[^\n]", " ", text)


class Source:
    """One file. `raw` is all of it, `bare` lacks the comments, `code` also what stands
    between quotes, and `comments` is nothing but the comments."""

    def __init__(self, path, raw):
        self.path = path
        self.raw = raw
        suffix = Path(path).suffix
        language = _LANGUAGES.get(suffix)
        if language is None and (path.endswith("CMakeLists.txt") or raw.startswith("#!")):
            language = _HASH
        self._language = language

    @cached_property
    def _views(self):
        bare, code, comments, strings, at = [], [], [], [], 0
        for token in self._language.finditer(self.raw) if self._language else ():
            kind, text = token.lastgroup, token.group()
            between = self.raw[at:token.start()]
            at = token.end()
            for view in (bare, code):
                view.append(between)
            comments.append(_blank(between))
            bare.append(_blank(text) if kind == "comment" else text)
            comments.append(text if kind == "comment" else _blank(text))
            if kind in ("string", "char"):
                code.append(text[0] + _blank(text[1:-1]) + text[-1])
            elif kind in ("comment", "raw"):
                code.append(_blank(text))
            else:
                code.append(text)
            if kind == "string":
                strings.append((token.start(), token.end(), _unescaped(text[1:-1])))
            elif kind == "raw":
                strings.append((token.start(), token.end(), token.group("inside")))
        rest = self.raw[at:]
        return "".join(bare) + rest, "".join(code) + rest, "".join(comments) + _blank(rest), strings

    bare = property(lambda self: self._views[0])
    code = property(lambda self: self._views[1])
    comments = property(lambda self: self._views[2])

    @cached_property
    def strings(self):
        """(offset, text) of each literal; neighbours that the compiler joins are joined."""
        joined, end = [], None
        for start, stop, text in self._views[3]:
            if joined and not self.bare[end:start].strip():
                joined[-1] = (joined[-1][0], joined[-1][1] + text)
            else:
                joined.append((start, text))
            end = stop
        return joined

    def line(self, offset):
        return self.raw.count("\n", 0, offset) + 1


def _unescaped(text):
    return re.sub(r"\\(.)", lambda m: " " if m.group(1) in "ntr" else m.group(1), text, flags=re.S)


class Tree:
    """The files that a commit could hold: tracked, or new and not ignored."""

    def __init__(self, root):
        self.root = Path(root)
        # A folder that only lies inside somebody's checkout is not one.
        self.is_checkout = (self.root / ".git").exists()
        names = self._from_git() if self.is_checkout else self._from_disk()
        self.files = sorted(name for name in names if (self.root / name).is_file())
        self.folders = {str(parent) for name in self.files for parent in Path(name).parents} - {"."}
        self._sources, self._matching = {}, {}

    def git(self, *arguments):
        """What git prints. A hook's GIT_DIR would point it at another checkout."""
        surroundings = {k: v for k, v in os.environ.items() if not k.startswith("GIT_")}
        done = subprocess.run(["git", "-C", str(self.root), *arguments], env=surroundings, check=True,
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        return done.stdout.decode("utf-8", "surrogateescape")

    def has_commits(self):
        try:
            return bool(self.git("rev-parse", "--verify", "-q", "HEAD"))
        except subprocess.CalledProcessError:
            return False

    def _from_git(self):
        return self.git("ls-files", "-co", "--exclude-standard", "-z").split("\0")[:-1]

    def _from_disk(self):
        for folder, inner, names in os.walk(self.root):
            inner[:] = [name for name in inner
                        if name not in (".git", "__pycache__", "node_modules")
                        and not (name in ("build", "out") and Path(folder) == self.root)]
            for name in names:
                yield (Path(folder) / name).relative_to(self.root).as_posix()

    def source(self, path):
        if path not in self._sources:
            content = (self.root / path).read_bytes()
            text = "" if b"\0" in content[:8192] else content.decode("utf-8", "replace")
            self._sources[path] = Source(path, text.replace("\r\n", "\n"))
        return self._sources[path]

    def matching(self, files, but=None):
        """The sources whose path matches \\a files and does not match \\a but."""
        if (files, but) not in self._matching:  # many rows ask for the same files
            self._matching[files, but] = [self.source(path) for path in self.files
                                          if re.search(files, path) and not (but and re.search(but, path))]
        return self._matching[files, but]

    def holds(self, path):
        path = path.rstrip("/")
        return path in self.folders or path in self._names

    @cached_property
    def _names(self):
        return frozenset(self.files)
