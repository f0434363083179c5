#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""The gate names every breach it is there for, at its line, and nothing else.

    tests/gates/test_gate.py
"""

import contextlib
import os
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent))

import examples  # noqa: E402
import gate  # noqa: E402
import rooms  # noqa: E402
import rules  # noqa: E402
import tree_rules  # noqa: E402

_GATE = Path(__file__).resolve().parent / "gate.py"


class SmallTree(unittest.TestCase):
    """A test on a clean little checkout of its own."""

    def setUp(self):
        self.root = Path(tempfile.mkdtemp(prefix="gate-"))
        self.addCleanup(shutil.rmtree, self.root)
        for path, text in examples.CLEAN.items():
            self.write(path, examples.assembled(path, text))

    def write(self, path, text):
        target = self.root / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")

    def found(self):
        """{(path, line, rule)}, and every row that spoke is remembered."""
        every = [finding for same_line in gate.findings(self.root) for finding in same_line]
        self.spoke = {finding.by for finding in every}
        return {(finding.path, finding.line, finding.rule) for finding in every}

    def git(self, *arguments):
        surroundings = {k: v for k, v in os.environ.items() if not k.startswith("GIT_")}
        surroundings |= {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
        who = ("-c", "user.name=a", "-c", "user.email=a@example.org", "-c", "init.defaultBranch=main")
        subprocess.run(["git", *who, "-C", str(self.root), *arguments], env=surroundings, check=True,
                       stdout=subprocess.DEVNULL)

    def commit(self):
        self.git("add", "-A")
        self.git("commit", "-q", "-m", "a step")

    def run_gate(self, *arguments):
        return subprocess.run([sys.executable, str(_GATE), "--root", str(self.root), *arguments],
                              capture_output=True, text=True, check=False)

    @contextlib.contextmanager
    def holding(self, path, text):
        """The tree with one file put in or replaced."""
        kept = (self.root / path).read_bytes() if (self.root / path).exists() else None
        self.write(path, text)
        try:
            yield
        finally:
            if kept is None:
                (self.root / path).unlink()
            else:
                (self.root / path).write_bytes(kept)


class Examples(SmallTree):
    def test_eachBreachIsNamedAtItsLineAndNothingElseIs(self):
        for rule, path, text, options in examples.BREAKS:
            content, wanted = examples.unmarked(rule, examples.assembled(path, text, **options))
            with self.subTest(rule=rule, path=path), self.holding(path, content):
                self.assertTrue(wanted, "an example without a mark shows nothing")

                self.assertEqual(self.found(), {(path, line, by) for line, by in wanted})

    def test_theCleanTreeAndEachNearMissPass(self):
        self.assertEqual(self.found(), set())
        for path, text in examples.NEAR:
            with self.subTest(path=path, text=text[:60]), self.holding(path, examples.assembled(path, text)):
                self.assertEqual(self.found(), set())

    def test_everyRuleHasAnExampleThatBreaksIt(self):
        shown = {rule for rule, *_ in examples.BREAKS}

        self.assertEqual(shown, {rule for rule, _ in gate.RULES})

    def test_everyRowOfEveryTableSpeaksInSomeExample(self):
        rows = {repr(row) for row in rules.ROWS}
        self.assertEqual(len(rows), len(rules.ROWS), "two rows are the same")
        rows |= {header for headers, *_ in rooms.LIBRARIES for header in headers}
        rows |= {files for files, *_ in tree_rules.LENGTHS}
        together = [{}]  # as many examples in one tree as there are paths for
        for rule, path, text, options in examples.BREAKS:
            if path in together[-1]:
                together.append({})
            together[-1][path] = examples.unmarked(rule, examples.assembled(path, text, **options))[0]

        spoke = set()
        for files in together:
            for path, text in files.items():
                self.write(path, text)
            self.found()
            spoke |= self.spoke

        self.assertEqual(rows - spoke, set())


class EveryArrow(SmallTree):
    """The table of the design, written out a second time: what stands here is allowed, all else is not."""

    PAGES = "qml/Style qml/Controls qml/Charts qml/Figure core/base core/model core/measures core/actions core/report"
    ALLOWED = f"""
        core/base:
        core/model: core/base
        core/measures: core/base core/model
        core/store: core/base core/model
        core/exchange: core/base core/model
        core/actions: core/base core/model core/measures core/store core/exchange
        core/report: core/base core/model core/measures
        qml/Style:
        qml/Controls: qml/Style
        qml/Figure: qml/Style core/model
        qml/Charts: qml/Style core/base core/model core/measures
        qml/Home: {PAGES}
        qml/Desk: {PAGES}
        app: app/reader qml/Home qml/Desk core/exchange {PAGES}
        app/reader: core/base core/model core/exchange
        """

    def test_aRoomUsesWhatItsRowAllowsAndNothingElse(self):
        allowed = {row.partition(":")[0].strip(): row.partition(":")[2].split()
                   for row in self.ALLOWED.strip().splitlines()}
        wanted = set()
        for here, rooms_allowed in allowed.items():
            lines = ["// SPDX-FileCopyrightText: The project authors", "// SPDX-License-Identifier: GPL-3.0-only"]
            for there in (*allowed, "tests"):
                lines.append(f'#include "{there.removeprefix("core/").removeprefix("qml/")}/some_thing.h"')
                if there not in (here, *rooms_allowed):
                    wanted.add((f"{here}/all.cpp", len(lines), "room"))
            self.write(f"{here}/all.cpp", "\n".join(lines) + "\n")

        self.assertEqual(self.found(), wanted)


class History(SmallTree):
    def setUp(self):
        super().setUp()
        self.git("init", "-q")
        self.step = "core/store/schema/0001_first.sql"

    def test_aCheckoutWithoutCommitsIsRead(self):
        self.assertEqual(self.found(), set())

    def test_aLandedStepThatChangedIsNamedUntilItIsAsItWas(self):
        self.commit()
        landed = (self.root / self.step).read_text()
        self.write(self.step, landed + "-- better\n")

        self.assertEqual(self.found(), {(self.step, 1, "schema")})

        self.commit()  # committing it does not make it right
        self.assertEqual(self.found(), {(self.step, 1, "schema")})

        self.write(self.step, landed)
        self.assertEqual(self.found(), set())

    def test_aLandedStepThatIsGoneOrRenamedIsNamed(self):
        self.commit()
        moved = "core/store/schema/0001_renamed.sql"
        (self.root / self.step).rename(self.root / moved)

        self.assertEqual(self.found(), {(self.step, 1, "schema")})

        (self.root / moved).unlink()
        self.commit()
        self.assertEqual(self.found(), {(self.step, 1, "schema")})

    def test_aStepThatLandedInAMergeIsHeldToo(self):
        self.commit()
        self.git("checkout", "-q", "-b", "side")
        second = "core/store/schema/0002_second.sql"
        self.write(second, examples.assembled(second, "CREATE TABLE b (c);\n"))
        self.commit()
        self.git("checkout", "-q", "main")
        self.write("core/model/a.txt", "a\n")
        self.commit()
        self.git("merge", "-q", "--no-edit", "side")
        self.assertEqual(self.found(), set())

        self.write(second, examples.assembled(second, "CREATE TABLE b (d);\n"))

        self.assertEqual(self.found(), {(second, 1, "schema")})

    def test_aNewStepMayChangeUntilItLands(self):
        self.commit()
        second = "core/store/schema/0002_second.sql"
        for text in ("CREATE TABLE b (c);\n", "CREATE TABLE b (d);\n"):
            self.write(second, examples.assembled(second, text))

            self.assertEqual(self.found(), set())

    def test_ignoredFilesAreNoPartOfTheProjectAndNewOnesAre(self):
        self.commit()
        self.write("build/a.cpp", "QLocale a;\n")
        self.write("core/model/new.cpp", examples.assembled("new.cpp", "QLocale a;\n"))

        self.assertEqual(self.found(), {("core/model/new.cpp", 3, "locale")})


class Program(SmallTree):
    def test_aCleanTreeEndsWithZero(self):
        done = self.run_gate()

        self.assertEqual((done.returncode, done.stdout), (0, "gate: clean\n"))
        self.assertIn("schema steps were not compared", done.stderr)

    def test_aBreachIsOneLineWithItsRemedyAndEndsWithOne(self):
        self.write("core/model/a.cpp", examples.assembled("a.cpp", "\nQLocale a;\n"))

        done = self.run_gate()

        self.assertEqual(done.returncode, 1)
        self.assertRegex(done.stdout, r"\Acore/model/a\.cpp:4: follows the locale of the machine; write and .* "
                                      r"\[locale\]\ngate: 1 found\n\Z")

    def test_everyBreachHasARemedy(self):
        for path, text in (each[1:3] for each in examples.BREAKS):
            self.write(path, examples.unmarked("", examples.assembled(path, text))[0])

        lines = self.run_gate().stdout.splitlines()[:-1]

        self.assertGreater(len(lines), 100)
        for line in lines:
            self.assertTrue(re.fullmatch(r"\S+:\d+: .{5,}; .{5,} \[[a-z-]+\]", line), line)

    def test_aCheckoutThatGitCannotReadIsNotCalledClean(self):
        (self.root / ".git").write_text("gitdir: nowhere\n")

        done = self.run_gate()

        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertEqual(self.run_gate("--root", str(self.root / "nowhere")).returncode, 2)

    def test_aBuildFolderIsPassedOverWithoutGit(self):
        self.write("build/a.cpp", "QLocale a;\n")

        self.assertEqual(self.found(), set())


if __name__ == "__main__":
    unittest.main()
