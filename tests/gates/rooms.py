# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Which room may use which, and which library may appear where.

The linker does not hold this: Debian keeps all of Qt in one include folder, and
every room's headers lie under one include path.
"""

import posixpath
import re
from pathlib import Path

from finding import Finding

_BASE, _MODEL, _MEASURES = "core/base", "core/model", "core/measures"
_STORE, _EXCHANGE, _ACTIONS, _REPORT = "core/store", "core/exchange", "core/actions", "core/report"
_QML = ("qml/Style", "qml/Controls", "qml/Figure", "qml/Charts", "qml/Entries", "qml/Home", "qml/Desk")
_PAGES = ("qml/Style", "qml/Controls", "qml/Charts", "qml/Entries", "qml/Figure", _BASE, _MODEL, _MEASURES, _ACTIONS, _REPORT)

# A room may use itself and what is named here; a deeper folder wins over the one around it.
MAY_USE = {
    _BASE: (),
    _MODEL: (_BASE,),
    _MEASURES: (_BASE, _MODEL),
    _STORE: (_BASE, _MODEL),
    _EXCHANGE: (_BASE, _MODEL),
    _ACTIONS: (_BASE, _MODEL, _MEASURES, _STORE, _EXCHANGE),
    _REPORT: (_BASE, _MODEL, _MEASURES),
    "qml/Style": (),
    "qml/Controls": ("qml/Style",),
    "qml/Figure": ("qml/Style", _MODEL),
    "qml/Charts": ("qml/Style", _BASE, _MODEL, _MEASURES),
    "qml/Entries": ("qml/Style", "qml/Controls", _BASE, _MODEL, _REPORT),
    "qml/Home": _PAGES,
    "qml/Desk": _PAGES,
    "app": ("app/reader", *_QML, _BASE, _MODEL, _MEASURES, _EXCHANGE, _ACTIONS, _REPORT),
    "app/reader": (_BASE, _MODEL, _EXCHANGE),
}

_NO_NETWORK = "hand over a file: Morrow never speaks to a network"

# (headers or modules, rooms that may have them, what to do instead)
LIBRARIES = (
    ((r"SQLiteCpp/", r"sqlite3(ext)?\.h$", r"QtSql\b", r"QSql"), r"core/store/|tests/faults/|tests/core/.*store",
     "ask core/store for what you need: it alone speaks SQL"),
    ((r"simdjson",), r"core/(model|exchange|store)/|tests/", "let core/model read bodies and core/exchange read files"),
    ((r"QtCharts\b", r"Q\w*(Chart(View)?|Series|Axis)$", r"QtGraphs\b", r"QtDataVisualization\b"), r"qml/Charts/",
     "put the chart into qml/Charts and use Morrow.Charts"),
    ((r"tl/expected",), r"core/base/", 'include "base/result.h"'),
    ((r"openssl/",), r"core/(base|exchange)/|tests/", "use base/sha256.h, or core/exchange for sealed files"),
    ((r"QtNetwork\b", r"QtWeb", r"Q(Network|Tcp|Udp|Ssl|Host|Dns|Http|Hsts|Web|Dtls|Sctp|Ocsp)\w*$",
      r"Q(Local(Socket|Server)|AbstractSocket)$", r"sys/(socket|un)\.h$", r"netinet/", r"arpa/", r"netdb\.h$",
      r"curl/"),
     r"tests/", _NO_NETWORK),
)

_QT_MODULES_OF = {_REPORT: ("QtCore", "QtGui")}  # every other room of core: QtCore

_INCLUDE = re.compile(r'^[ \t]*#[ \t]*(?:include|if.*__has_include\s*\()[ \t]*[<"]([^>"\n]+)[>"]', re.M)
_IMPORT = re.compile(r'^[ \t]*\.?import[ \t]+(?:"([^"\n]+)"|([\w.]+))', re.M)


def _qt_headers():
    module, found = None, {}
    for line in (Path(__file__).parent / "qt_headers.txt").read_text().splitlines():
        if line.startswith("["):
            module = line.strip("[]")
        elif not line.startswith("#"):
            found.update(dict.fromkeys(line.split(), module))
    return found


_QT_MODULE = _qt_headers()


def room_of(path):
    """The room that a file lies in, "tests", or None where there is no room."""
    for room in sorted(MAY_USE, key=len, reverse=True):
        # app/reader is app/reader_main.cpp as well as a folder of that name.
        if path.startswith(room + "/") or (room == "app/reader" and path.startswith(room)):
            return room
    return "tests" if path.startswith("tests/") else None


def _target(tree, source, header):
    """The path of our own header or folder, or None when it is somebody else's."""
    beside = posixpath.normpath(posixpath.join(posixpath.dirname(source.path), header))
    if header.startswith("../") or tree.holds(beside):
        return beside
    for room in (*MAY_USE, "tests"):  # the name is enough: the file may not be written yet
        short = room.partition("/")[2] or room
        if header.startswith((short + "/", room + "/")):
            return room + "/" + header.removeprefix(room + "/").removeprefix(short + "/")
    return next((f"{base}/{header}" for base in ("app", "tests") if tree.holds(f"{base}/{header}")), None)


def _module(name):
    found = re.fullmatch(r"Morrow\.(\w+)(\.\w+)*", name) or re.match(r"qrc:/(?:qt/qml/)?Morrow/(\w+)", name)
    return f"qml/{found[1]}/module" if found else None


def _uses(tree):
    """(source, offset, name as written, path of ours or None) for every #include and import."""
    for source in tree.matching(r"^(app|core|qml|tests)/.*\.(h|cpp|qml|js|mjs)$"):
        if source.path.endswith((".h", ".cpp")):
            for found in _INCLUDE.finditer(source.bare):
                yield source, found.start(1), found[1], _target(tree, source, found[1])
        else:
            for found in _IMPORT.finditer(source.bare):
                name = found[1] or found[2]
                target = _module(name) or (_target(tree, source, name) if found[1] else None)
                yield source, found.end() - 1, name, target


def arrows(tree):
    for source, offset, name, target in _uses(tree):
        here = room_of(source.path)
        if here in (None, "tests") or target is None:
            continue
        there = room_of(target)
        if there in (here, *MAY_USE[here]):
            continue
        allowed = ", ".join(MAY_USE[here]) or "nothing of ours"
        yield Finding(source.path, source.line(offset), f"{here} uses {there or target} ({name})",
                      f"take it as an argument, or move the code; {here} may use: {allowed}")


def no_room(tree):
    for source in tree.matching(r"^(core|qml)/.*\.(h|cpp|qml)$"):
        if room_of(source.path) is None:
            yield Finding(source.path, 1, "a source file outside every room",
                          "put it into a room of the table in tests/gates/rooms.py")


def libraries(tree):
    for source, offset, name, _ in _uses(tree):
        for headers, rooms, instead in LIBRARIES:
            for header in headers:
                if re.match(header, name) and not re.match(rooms, source.path):
                    yield Finding(source.path, source.line(offset), f"{name} has no place here", instead, by=header)


def qt_in_core(tree):
    for source, offset, name, _ in _uses(tree):
        if not source.path.startswith("core/") or name == "qrencode.h":
            continue
        header = name.rpartition("/")[2]
        if not re.match(r"Q[A-Zt]|q[a-z0-9_]+\.h$", header):
            continue
        allowed = _QT_MODULES_OF.get(room_of(source.path), ("QtCore",))
        if _QT_MODULE.get(header) in allowed:
            continue
        yield Finding(source.path, source.line(offset), f"{name} is not a class header of {' or '.join(allowed)}",
                      "keep core on Qt Core (core/report: Qt Gui too), and include a class by its own name: <QString>")
