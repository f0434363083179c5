#!/usr/bin/env python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Files that somebody made to do harm, before the built program.

    hostile_files.py MORROW_BATCH GOOD_SUMMARY

Each is refused by `check` with one plain sentence a reason, the place in it, and nothing of a crash; or it is
read, and then gives the entries of the good file and no others. The same files are then taken in at a desk:
what is refused changes not a byte there, and the next file is read. Prints how many cases there were, the
slowest, and "N passed, N failed".
"""

import gzip
import hashlib
import json
import os
import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

REFUSED, READ = "refused", "read"


def once(text, old, new):
    assert old in text, old
    return text.replace(old, new, 1)


def nested(levels, opening="[", closing="]", core=""):
    return opening * levels + core + closing * levels


def cases(good):
    """(name, bytes, what has to happen), from the text of a good summary."""
    pain = '"valueQuantity":{"value":3,'
    with_member = lambda member: once(good, '"type":"document"', member + ',"type":"document"')

    for size in range(0, len(good.encode()), 997):
        yield f"cut at byte {size}", good.encode()[:size], REFUSED

    yield "key twice in the bundle", with_member('"type":"document"'), REFUSED
    yield "key twice in a resource", once(good, '"status":"final","category"', '"status":"final","status":"final","category"'), REFUSED
    yield "key twice, once escaped", once(good, '"status":"final","category"', '"status":"final","st\\u0061tus":"final","category"'), REFUSED
    yield "key twice in a part nobody reads", with_member('"x":{"a":1,"a":2}'), REFUSED
    yield "key twice among thirty", with_member('"x":{' + ",".join(f'"k{i % 29}":{i}' for i in range(30)) + "}"), REFUSED
    yield "entries twice", with_member('"entry":[]'), REFUSED

    yield "arrays 65 deep", with_member('"x":' + nested(65)), REFUSED
    yield "objects 65 deep", with_member('"x":' + nested(65, '{"a":', "}", "1")), REFUSED
    yield "both, 65 deep", with_member('"x":' + nested(33, '[{"a":', "}]", "1")), REFUSED
    yield "a million deep", with_member('"x":' + nested(1_000_000)), REFUSED
    yield "deep and never closed", '{"resourceType":"Bundle","x":' + "[" * 1_000_000, REFUSED
    yield "deep in an entry", once(good, '"resource":{', '"resource":{"x":' + nested(70) + ","), REFUSED

    yield "a million numbers", with_member('"x":[' + "0," * 1_000_000 + "0]"), REFUSED
    yield "a million keys", with_member('"x":{' + ",".join(f'"{i}":0' for i in range(1_000_001)) + "}"), REFUSED
    yield "200 000 empty entries", once(good, '"entry":[', '"entry":[' + "{}," * 200_000), REFUSED
    yield "200 000 foreign resources", once(good, '"entry":[', '"entry":[' + '{"fullUrl":"x","resource":{"resourceType":"Device"}},' * 200_000), READ
    yield "a text of 4 MiB where none is read", with_member('"x":"' + "a" * (4 << 20) + '"'), READ
    yield "a key of 4 MiB", with_member('"' + "k" * (4 << 20) + '":1'), READ

    for number in ("11", "-1", "3.0001", "1e2", "1e999", "-0.5", "NaN", "Infinity", "0x3", "03", "3.", ".3", "+3", "--3",
                   "9223372036854775808", "-9223372036854775809", "18446744073709551616", "3" * 400, '"3"', "null", "true", "[3]", "{}"):
        yield f"pain {number[:24]}", once(good, pain, pain.replace("3", number)), REFUSED
    yield "reps out of every range", once(good, '"value":15,"unit":"{repetitions}"', '"value":99999999999,"unit":"{repetitions}"'), REFUSED
    yield "a number nobody reads, out of range", with_member('"x":1e999'), REFUSED
    yield "a number nobody reads, malformed", with_member('"x":01'), REFUSED

    for day in ("2026-02-30", "1899-12-31", "2201-01-01", "2026-13-01", "26-03-03", "2026-03-03T25:00:00Z", "", "0000-00-00"):
        yield f"the day '{day}'", once(good, '"effectiveDateTime":"2026-03-03"', f'"effectiveDateTime":"{day}"'), REFUSED

    text = "since noon"
    for name, bad in (("an overlong slash", b"\xc0\xaf"), ("an overlong nul", b"\xc0\x80"), ("a lone continuation", b"\x80"),
                      ("a cut sequence", b"\xe2\x82"), ("a surrogate", b"\xed\xa0\x80"), ("beyond U+10FFFF", b"\xf4\x90\x80\x80"),
                      ("latin 1", b"\xe9"), ("FE FF", b"\xfe\xff")):
        yield f"{name} in a text", once(good, text, "@@").encode().replace(b"@@", bad, 1), REFUSED
        yield f"{name} where nobody reads", with_member('"x":"@@"').encode().replace(b"@@", bad, 1), REFUSED
    for name, escape in (("a high", "\\ud800"), ("a low", "\\udc00"), ("a turned pair of", "\\udc00\\ud800"), ("half a pair of", "\\ud800x")):
        yield f"{name} surrogate", once(good, text, "a" + escape + "b"), REFUSED
        yield f"{name} surrogate where nobody reads", with_member(f'"x":"{escape}"'), REFUSED
    for code in (0, 1, 7, 8, 27, 127, 0x85, 0x9B):
        yield f"control character U+{code:04X}", once(good, text, f"a\\u{code:04x}b"), REFUSED
    yield "a raw line end in a text", once(good, text, "a\nb"), REFUSED
    yield "an escape that is none", once(good, text, "a\\qb"), REFUSED
    yield "a byte order mark", "\ufeff" + good, REFUSED
    yield "UTF-16", good.encode("utf-16"), REFUSED
    yield "nothing", b"", REFUSED
    yield "blanks", b" \r\n\t" * 100, REFUSED
    yield "a nul behind the end", good + "\0", REFUSED
    yield "a second document", good + good, REFUSED
    yield "blanks around", "\r\n " + good + "\n\n", READ
    yield "another JSON", b'{"hello":["world"]}', REFUSED
    yield "an array", b"[]", REFUSED
    yield "a comment", "/* hello */" + good, REFUSED
    yield "a comma too many", once(good, "]}", "],}"), REFUSED

    yield "two contents for one id", doubled(good, lambda copy: copy.replace('"value":3,', '"value":4,', 1)), REFUSED
    yield "one entry twice", doubled(good, lambda copy: copy), READ
    yield "a loop of corrections", turned(good), REFUSED
    yield "a correction of nothing here", dangling(good), REFUSED
    yield "another person's check", once(good, '"status":"amended"', '"status":"amended","subject":{"reference":"urn:uuid:00000000-0000-4000-8000-000000000000"}'), REFUSED
    yield "two persons", once(good, '"resourceType":"Patient"', '"resourceType":"Patient","x":1}},{"fullUrl":"urn:uuid:1","resource":{"resourceType":"Patient"'), REFUSED
    yield "a modifier", with_member('"modifierExtension":[{"url":"x"}]'), REFUSED
    yield "rules of somebody's", with_member('"implicitRules":"http://example.invalid"'), REFUSED
    yield "pounds", once(good, '"unit":"kg","system":"http://unitsofmeasure.org","code":"kg"', '"unit":"lb","system":"http://unitsofmeasure.org","code":"[lb_av]"'), REFUSED
    yield "withdrawn by its status alone", once(good, '"status":"final","category"', '"status":"entered-in-error","category"'), REFUSED
    yield "an id that is a path", good.replace('"value":"s1"', '"value":"../../etc/passwd"'), REFUSED

    for i, evil in enumerate(narratives()):
        harmful = re.sub(r'"div":"(?:[^"\\]|\\.)*"', lambda _: '"div":' + json.dumps(evil), good, count=1)
        yield f"narrative {i}", harmful, READ

    yield "a deflate bomb", gzip.compress(b"\0" * (64 << 20)), REFUSED
    yield "a gzipped summary", gzip.compress(good.encode()), REFUSED
    yield "a picture", b"\x89PNG\r\n\x1a\n" + bytes(1000), REFUSED


def narratives():
    tags = ("script", "iframe", "object", "embed", "form", "link", "style", "svg", "math", "base")
    for tag in tags:
        yield f'<div xmlns="http://www.w3.org/1999/xhtml"><{tag} src="file:///etc/passwd" href="javascript:alert(1)">x</{tag}></div>'
    for event in ("onload", "onerror", "onclick", "onmouseover", "onfocus"):
        yield f'<div xmlns="http://www.w3.org/1999/xhtml"><img src="x" {event}="alert(1)"/></div>'
    for url in ("javascript:alert(1)", "file:///etc/passwd", "http://example.invalid/?q=", "data:text/html,x", "//example.invalid"):
        yield f'<div><a href="{url}">x</a></div>'
        yield f'<div><img src="{url}"/></div>'
    for text in ("<!DOCTYPE a [<!ENTITY x SYSTEM 'file:///etc/passwd'>]><div>&x;</div>", "<div", "</div></div>", "<div>" * 10_000, "",
                 "\u202egnp.exe", "=cmd|' /C calc'!A0", "%s%s%n", "'; DROP TABLE entry; --", "{{7*7}}", "${jndi:ldap://x}", "<?php x ?>",
                 "<div style=\"background:url(http://example.invalid)\">x</div>", "\u0000".join(("a", "b")), "<![CDATA[x]]>"):
        yield text


def entry_at(text, found):
    """The bundle's entry around the place \\a found."""
    begin = text.rindex('{"fullUrl"', 0, found)
    end = text.find('},{"fullUrl"', found)
    return text[begin:end + 1] if end >= 0 else text[begin:text.rindex("]}")]


def doubled(good, change):
    copy = entry_at(good, good.index('"value":"c1"'))
    return once(good, copy, copy + "," + change(copy))


def turned(good):
    entry = entry_at(good, good.index('"resourceType":"Provenance"'))
    newer, older = re.findall(r'\{"reference":"(urn:uuid:[^"]+)"\}', entry)[0], re.findall(r'"what":\{"reference":"(urn:uuid:[^"]+)"', entry)[0]
    back = entry.replace(newer, "@").replace(older, newer).replace("@", older)
    return good[:good.rindex("]}")] + "," + back + "]}"


def dangling(good):
    return re.sub(r'("what":\{"reference":"urn:uuid:)........', r"\g<1>00000000", good, count=1)


class Desk:
    """A desk that holds the good file, and how it looks."""

    def __init__(self, batch, folder, good_file):
        self.batch, self.folder = batch, folder
        answer = run([batch, "take-in", str(good_file), "--desk", str(folder), "--new"])
        assert answer.returncode == 0, answer.stderr

    def look(self):
        digest = hashlib.sha256()
        for path in sorted(self.folder.rglob("*")):
            if path.is_file():
                digest.update(str(path.relative_to(self.folder)).encode() + b"\0" + path.read_bytes())
        return digest.hexdigest()

    def take_in(self, path):
        return run([self.batch, "take-in", str(path), "--desk", str(self.folder)])


def run(command):
    return subprocess.run(command, capture_output=True, text=True, errors="replace", stdin=subprocess.DEVNULL, timeout=120)


def sentences_are_plain(stderr):
    lines = stderr.splitlines()
    return bool(lines) and all(line.endswith(".") and len(line) < 700 and not re.search(r"[\x00-\x1f\x7f]", line) for line in lines)


def main():
    batch, good_file = sys.argv[1], Path(sys.argv[2])
    good = good_file.read_text()
    has_desk = "take-in" in run([batch, "--help"]).stdout
    good_entries = json.loads(run([batch, "check", str(good_file)]).stdout)[0]["entries"]
    passed, failed, slowest = 0, 0, (0.0, "")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        desk = Desk(batch, folder / "desk", good_file) if has_desk else None
        paths = []
        for number, (what, content, verdict) in enumerate(cases(good)):
            path = folder / f"{number}.json"
            path.write_bytes(content if isinstance(content, bytes) else content.encode())
            paths.append((what, path, verdict))
        os.mkfifo(folder / "fifo")
        (folder / "folder").mkdir()
        (folder / "link-to-device").symlink_to("/dev/zero")
        (folder / "link-to-nothing").symlink_to("nowhere")
        (folder / "link-to-good").symlink_to(good_file.resolve())
        with open(folder / "huge", "wb") as huge:
            huge.truncate(129 << 20)
        paths += [("a FIFO", folder / "fifo", REFUSED), ("a device", Path("/dev/zero"), REFUSED), ("a folder", folder / "folder", REFUSED),
                  ("a link to a device", folder / "link-to-device", REFUSED), ("a link to nothing", folder / "link-to-nothing", REFUSED),
                  ("a link to the good file", folder / "link-to-good", READ), ("129 MiB", folder / "huge", REFUSED)]
        for what, path, verdict in paths:
            began = time.monotonic()
            answer = run([batch, "check", str(path)])
            slowest = max(slowest, (time.monotonic() - began, what))
            if verdict == READ:
                told = json.loads(answer.stdout)[0]
                good_answer = answer.returncode == 0 and told["accepted"] and told["entries"] == good_entries
            else:
                good_answer = answer.returncode == 1 and sentences_are_plain(answer.stderr)
            if good_answer and desk:
                before = desk.look()
                taken = desk.take_in(path)
                if verdict == READ:
                    good_answer = taken.returncode == 0
                else:
                    good_answer = taken.returncode == 1 and sentences_are_plain(taken.stderr) and desk.look() == before
                answer = taken
            if good_answer:
                passed += 1
            else:
                failed += 1
                print(f"{what}: expected to be {verdict}: status {answer.returncode}\n{answer.stderr[:600]}")
    print(f"slowest check: {slowest[0]:.2f} s ({slowest[1]})")
    print(f"{passed} passed, {failed} failed")
    return 0 if failed == 0 and passed >= 120 else 1


if __name__ == "__main__":
    sys.exit(main())
