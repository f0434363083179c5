# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Rules that are a pattern in a view of a file: (files, forbidden pattern, what to do instead)."""

import re
from dataclasses import dataclass

from finding import Finding

CORE = r"^core/.*\.(h|cpp)$"
CODE = r"^(app|core|qml|tests)/.*\.(h|cpp)$"
QML = r"^(app|qml)/.*\.qml$"
THEME = r"^qml/Style/Theme\.qml$"
CLOCK = r"^core/base/clock(_\w+)?\.(h|cpp)$"
WORDS = r"^core/(report/|exchange/fhir[/_]narrative)"


@dataclass(frozen=True)
class Row:
    rule: str
    files: str  # a regular expression over paths
    forbidden: str  # a regular expression over the view
    wrong: str
    instead: str
    but: str = None  # paths that are let off
    view: str = "code"

    def findings(self, tree):
        for source in tree.matching(self.files, self.but):
            for found in re.finditer(self.forbidden, getattr(source, self.view), re.M):
                # A match may begin with what stands before the word; the word names the line.
                offset = found.start(found.lastindex or 0)
                yield Finding(source.path, source.line(offset), self.wrong, self.instead, by=repr(self))


def _rows(rule, files, forbidden, wrong, instead, **rest):
    return [Row(rule, files, each, wrong, instead, **rest) for each in forbidden]


ROWS = [
    *_rows(
        "clock", CORE,
        (
            r"\bQDateTime::current\w+", r"\bQDate::currentDate\b", r"\bQTime::currentTime\b",
            r"\bQElapsedTimer\b", r"\bQDeadlineTimer\b", r"_clock::now\b", r"\b(?:current_zone|zoned_time)\b",
            r"\bstd::time\s*\(", r"(?<![\w>\]])::time\s*\(", r"(?<![\w.>:])time\s*\(\s*(?:NULL|nullptr|0|&\w+)\s*\)",
            r"\bclock\s*\(\s*\)", r"\bgettimeofday\b", r"\bclock_gettime\b", r"\btimespec_get\b",
        ),
        "reads a clock", "take the moment or the day as an argument, or a Clock of base/clock.h", but=CLOCK,
    ),
    *_rows(
        "locale", CORE,
        (
            r"\bQLocale\b", r"\b(?:set|new|use)locale\b", r"\bstd::locale\b", r"\bimbue\b", r"\blocaleconv\b",
            r"\bnl_langinfo\b", r"\blocaleAwareCompare\b", r"\bQCollator\b",
            r"\b(?:strftime|wcsftime)\b", r"\bput_time\b", r"\b(?:ctime|asctime)(?:_r)?\b",
            r"\b(?:strto(?:d|f|ld)|atof|sto(?:d|f|ld)|v?f?s?scanf)\s*\(",
        ),
        "follows the locale of the machine",
        "write and read with base (decimal, civil_day); words belong to report or qml",
    ),
    *_rows(
        "locale", CORE,
        (
            r"\bQTimeZone::systemTimeZone\w*", r"\blocaltime(?:_r)?\b", r"\b(?:mktime|tzset)\b",
            r"\btoLocalTime\b", r"\bQt::LocalTime\b",
        ),
        "reads the machine's time zone", "take the offset as an argument, or a Clock of base/clock.h", but=CLOCK,
    ),
    *_rows(
        "words", CORE,
        (
            r"\b(?:tr|qsTr|qsTranslate|qtTrId|qsTrId)\s*\(", r"\bQCoreApplication\s*::\s*translate\s*\(",
            r"\bQT_TR\w*_NOOP\w*", r"\bQ_DECLARE_TR_FUNCTIONS\b",
        ),
        "user-facing text in core", "give back an enum; say it in core/report, app/batch or qml", but=WORDS,
    ),
    *_rows(
        "network", r"^(app|core|qml)/.*\.(h|cpp)$",
        (
            r"\bQ(?:Network|Tcp|Udp|Ssl|Dtls|Sctp|Ocsp|Hsts|Http|Dns|Web)\w*",
            r"\bQ(?:AbstractSocket|LocalSocket|LocalServer|HostAddress|HostInfo)\b",
            r"(?<![\w.>:])(?:::)?(?:socket|socketpair|getaddrinfo|gethostbyname|inet_pton)\s*\(",
            r"(?<![\w.>:])::(?:connect|bind|listen|accept|sendto|recvfrom)\s*\(",
        ),
        "speaks to a network", "hand over a file: Morrow never speaks to a network",
    ),
    *_rows(
        "network", r"^(app|qml)/.*\.(qml|js|mjs)$",
        (r"\bXMLHttpRequest\b", r"\bWebSocket(?:Server)?\b", r"\bWeb(?:Engine)?View\b"),
        "speaks to a network", "hand over a file: Morrow never speaks to a network",
    ),
    Row("network", QML, r"\bsource\s*:\s*(?:Qt\.url\w*\(\s*)?[\"'`](?:https?|ftp|wss?):",
        "loads from a network", "ship the file in assets", view="bare"),
    Row("network", r"(^|/)CMakeLists\.txt$|\.cmake$",
        r"\bQt6?::(?:Network|Web\w+)|\bCOMPONENTS\b[^)]*\b(?:Network|WebSockets)\b",
        "links a network library", "hand over a file: Morrow never speaks to a network", view="raw"),
    Row("colour", QML, r"\bQt\.(?:rgba|hsla|hsva|color|lighter|darker|tint|alpha)\s*\(",
        "makes a colour", "name it in Theme.qml, where its contrast is checked", but=THEME),
    Row("colour", r"^qml/.*\.(h|cpp)$", r"\bQColor(?:Constants::|(?:\s+\w+)?\s*[({]\s*[\d\"Q])",
        "makes a colour", "take it as a property that the page sets from Theme"),
    Row("size", QML, r"\bQt\.(?:size|rect)\s*\(\s*(?:[\w.]+\s*,\s*)*[1-9]", "a size as a number",
        "name it in Theme.qml", but=THEME),
    Row("size", QML, r"\b(?:width|height)\s*[<>]=?\s*\d{2,}", "a size as a number",
        "name it in Theme.qml and compare with that", but=THEME),
    Row("controls", r"\.(qml|js|mjs)$", r"^\s*\.?import\s+(QtQuick\.Controls)(?!\.Basic\b)",
        "imports Controls in whatever style the machine has", "import QtQuick.Controls.Basic"),
    Row("plain-text", QML, r"\b(textFormat)\s*:(?!\s*(?:\w+\.)?Text\.PlainText\b)",
        "a format that obeys markup in a person's words", "write textFormat: Text.PlainText"),
    Row("name", CODE,
        r"\b(?:class|struct|union|concept|using|enum(?:\s+(?:class|struct))?)\s+(?:\[\[[^\]]*\]\]\s*)?(?!Q[A-Z])"
        r"(\w*(?:Manager|Helper|Util|Common|Data|Info)s?)\b(?!\s*::)",
        "a name that says nothing", "name the type for what it knows or does"),
    Row("name", CODE,
        r"\bnamespace\s+(?:\w+::)*((?:\w+_)?(?:manager|helper|util|common|data|info)s?|\w*(?:Helper|Util|Info)s?)\b",
        "a name that says nothing", "name the namespace for its room"),
    Row("name", r"\.qml$", r"\bcomponent\s+(\w*(?:Manager|Helper|Util|Common|Data|Info)s?)\b",
        "a name that says nothing", "name the component for what it shows"),
    Row("name", r"\.py$", r"^\s*class\s+(\w*(?:Manager|Helper|Util|Common|Data|Info)s?)\b",
        "a name that says nothing", "name the class for what it knows or does"),
    Row("machine-path", r"", r"(?<![\w.})\]])(/(?:home|root|work))(?=[/\s\"'`:;,)]|$)",
        "a path of one machine", "name it from the root of the checkout, or take it as an argument", view="raw"),
]
