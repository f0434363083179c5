# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Rules about what stands between quotes, and about QML values, that one pattern cannot hold."""

import re

from finding import Finding
from rules import CORE, QML, THEME, WORDS

# --- SQL ---------------------------------------------------------------------------------

_SQL = re.compile(
    r"\s*(?:SELECT\s+[\w(*'?]|INSERT\s+(?:OR\s+\w+\s+)?INTO\b|REPLACE\s+INTO\b|UPDATE\s+\S+\s+SET\b"
    r"|DELETE\s+FROM\b|(?:CREATE|DROP|ALTER)\s+(?:TEMP\w*\s+|UNIQUE\s+|VIRTUAL\s+)?(?:TABLE|INDEX|TRIGGER|VIEW)\b"
    r"|PRAGMA\s+\w|BEGIN(?:\s+(?:IMMEDIATE|EXCLUSIVE|DEFERRED|TRANSACTION)\b|\s*;?\s*\Z)|(?:COMMIT|ROLLBACK|VACUUM)\b"
    r"|ATTACH\s+|SAVEPOINT\s)", re.S)
_SMALL_SQL = re.compile(r"\s*(?:select\s.*\sfrom\s|insert\s+into\s|update\s+\S+\s+set\s|delete\s+from\s"
                        r"|(?:create|drop|alter)\s+(?:table|index|trigger|view)\s|pragma\s+\w)", re.S)


def sql(tree):
    instead = "ask core/store for it: SQL lives there only"
    for source in tree.matching(r"^(app|core|qml)/.*\.(h|cpp|qml|js|mjs)$", r"^core/store/"):
        for offset, text in source.strings:
            small = source.path.endswith((".h", ".cpp")) and _SMALL_SQL.match(text)
            if _SQL.match(text) or small:
                yield Finding(source.path, source.line(offset), "SQL in a string", instead)
    for source in tree.matching(r"\.sql$", r"^(core/store|tests)/"):
        yield Finding(source.path, 1, "an SQL file outside the store", instead)


# --- sentences in core -------------------------------------------------------------------

_RUN = re.compile(r"[A-Za-z][A-Za-z']*(?:[,:;]? (?:[A-Za-z][A-Za-z']*|%L?\d|\{\w*\})){2,}")
_GRAMMAR = frozenset(
    "a an and are as at be but by can cannot do does for from had has have if in into is it its may must no "
    "not of on only or please should than that the there they this to too was were will with without you your".split()
)
_SQL_WORD = re.compile(r"\b(?:FROM|WHERE|VALUES|SET|AND|ORDER BY)\b")  # the rest of a statement in pieces
# What only a programmer reads: the last words of a program included, since none of ours can follow.
_FOR_US = re.compile(r"\b(?:static_assert|assert|Q_ASSERT_X|qFatal|deprecated|nodiscard)\s*\([^;{}]*\Z")


def looks_like_a_sentence(text):
    """Three words in a row, and among them a word of grammar, a stop at the end, or a capital first and a
    small letter next: so "Pain fell again" is one and the column names "id day set" are not."""
    found = _RUN.search(text)
    if not found or _SQL_WORD.search(text) or _SQL.match(text) or _SMALL_SQL.match(text):
        return False
    words = re.findall(r"[A-Za-z][A-Za-z']*", found.group())
    return (any(word.lower() in _GRAMMAR for word in words)
            or text.rstrip()[-1:] in (".", "!", "?")
            or (len(words) > 1 and words[0][0].isupper() and words[1].islower()))


def sentences(tree):
    for source in tree.matching(CORE, WORDS):
        for offset, text in source.strings:
            before = source.code[max(0, offset - 400):offset]
            if looks_like_a_sentence(text) and not _FOR_US.search(before):
                start = " ".join(text.split())[:40]
                yield Finding(source.path, source.line(offset), f'user-facing text in core ("{start}")',
                              "give back an enum; say it in core/report, app/batch or qml")


# --- colours and sizes -------------------------------------------------------------------

_COLOUR_NAME = re.compile(r"#[0-9a-fA-F]{3,8}|(?!transparent\b)[a-z]{3,}")
_COLOUR_VALUE = re.compile(r"(?:\bproperty\s+color\s+\w+|\b(?:\w+\.)*\w*[cC]olor)\s*(?::|=(?!=))[^;{}]*\Z")

_EXTENT = (r"(?:[wW]idth|[hH]eight|[mM]argins?|[pP]adding|[sS]pacing|[rR]adius|[iI]nset|CenterOffset|baselineOffset"
           r"|[pP]ixelSize|[pP]ointSize)")
_SIZE_VALUE = re.compile(
    rf"(?:(?:^|[{{;])[ \t]*(?:readonly[ ]+)?(?:(?:required[ ]+)?property[ ]+(?:int|real|double)[ ]+\w*{_EXTENT}"
    rf"|(?:\w+\.)*(?:\w*{_EXTENT}|[xy]))[ \t]*:|\.\w*{_EXTENT}[ \t]*=(?!=))"
    r"(?P<value>[^\n;}]*(?:\n\s*[?:+*/&|-][^\n;}]*)*)", re.M)


def colours(tree):
    for source in tree.matching(QML, THEME):
        for offset, text in source.strings:
            line_start = source.raw.rfind("\n", 0, offset) + 1
            before = source.code[line_start:offset]
            asked = re.search(r"[=!]=\s*\Z", before)  # compared with a mode's name, say
            if _COLOUR_NAME.fullmatch(text) and (text[0] == "#" or _COLOUR_VALUE.search(before) and not asked):
                yield Finding(source.path, source.line(offset), f"the colour \"{text}\" outside Theme",
                              "name it in Theme.qml, where its contrast is checked")


def is_literal_size(value):
    """Whether \\a value fixes a number of pixels: not 0, not a share of something (`* 2`, `/ 3`),
    not a number that something is compared with."""
    value = re.sub(r"\[[^\]]*\]", "", value)
    if not re.search(r"[A-Za-z]", value):
        numbers = re.findall(r"\d+(?:\.\d+)?", value)
        return any(float(number) != 0 for number in numbers) and value.strip() != "-1"  # -1: unset
    before = None
    while before != value:  # (count - 1) * Theme.gap: the sum is a factor
        before = value
        value = re.sub(r"(?<!\w)\([^()]*\)\s*[*/]|[*/]\s*\([^()]*\)", "*", value)
    for number in re.finditer(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.])", value):
        left, right = value[:number.start()].rstrip(), value[number.end():].lstrip()
        shared = left.endswith(("*", "/", "%")) or right.startswith(("*", "/", "%"))
        compared = left.endswith(("<", ">", "=")) or right.startswith(("<", ">", "=", "!"))
        unset = re.search(r"[?:(,]\s*-\Z", left)
        if float(number.group()) != 0 and not (shared or compared or unset):
            return True
    return False


def sizes(tree):
    for source in tree.matching(QML, THEME):
        for found in _SIZE_VALUE.finditer(source.code):
            if is_literal_size(found["value"]):
                value = " ".join(found["value"].split())
                yield Finding(source.path, source.line(found.start("value")), f"the size {value} outside Theme",
                              "name it in Theme.qml, or make it a share of a size that is named there")


# --- Text and Label ----------------------------------------------------------------------

_PLAIN = re.compile(r"\btextFormat\s*:\s*(?:\w+\.)?Text\.PlainText\b")


def _own_lines(code, brace):
    """What stands in the block that opens at \\a brace, without the blocks inside it."""
    depth, own = 0, []
    for letter in code[brace:]:
        depth += (letter == "{") - (letter == "}")
        if depth == 0:
            break
        own.append(letter if depth == 1 else " ")
    return "".join(own)


def plain_text(tree):
    for source in tree.matching(QML):
        for found in re.finditer(r"\b(?:\w+\.)?(Text|Label)\s*\{", source.code):
            if not _PLAIN.search(_own_lines(source.code, found.end() - 1)):
                yield Finding(source.path, source.line(found.start()),
                              f"a {found[1]} that may take markup from a person's words",
                              "write textFormat: Text.PlainText in it")
