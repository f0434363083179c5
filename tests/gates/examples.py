# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""A small checkout in which nothing is wrong, and how an example is put into it.

An example is (rule, path, text). `@@` marks the line that the rule must name, `@@(other)` one that
another rule must name as well; `@@` before everything marks line 1. The SPDX lines are put in front
of each text that needs them, unless the example says {"header": False}.
"""

import re
import textwrap

import examples_core
import examples_qml
import examples_tree

_COMMENT = {"h": "//", "cpp": "//", "qml": "//", "js": "//", "mjs": "//", "sql": "--",
            "py": "#", "sh": "#", "cmake": "#"}
_SPDX = ("SPDX-FileCopyrightText: The project authors", "SPDX-License-Identifier: GPL-3.0-only")
_MARK = re.compile(r"@@(?:\(([\w-]+)\))?")

BREAKS = [(*each, {})[:4] for module in (examples_core, examples_qml, examples_tree) for each in module.BREAKS]
NEAR = [each for module in (examples_core, examples_qml, examples_tree) for each in module.NEAR]

CLEAN = {
    "CMakeLists.txt": "project(small)\n",
    "README.md": "Run `app/start`, read [more](demo-data/README.md).\n",
    "DEVELOPERS.md": "Rooms: `core/base`, `qml/Style`.\n",
    ".gitignore": "/build/\n",
    "LICENSE": "the licence\n",
    "app/start": "#!/bin/sh\n",
    "app/home_main.cpp": '#include "Home/today.h"\n#include "batch/verbs.h"\n',
    "app/batch/verbs.h": '#pragma once\n#include "measures/measures.h"\n',
    "app/batch/store/rows.h": "#pragma once\n",
    "core/base/result.h": "#pragma once\n#include <tl/expected.hpp>\n",
    "core/base/clock.h": "#pragma once\n",
    "core/base/clock.cpp": '#include "base/clock.h"\nauto a = QDateTime::currentDateTime();\n',
    "core/model/entry.h": '#pragma once\n#include "base/result.h"\n',
    "core/measures/measures.h": '#pragma once\n#include "model/entry.h"\n',
    "core/exchange/tables.h": '#pragma once\n#include "model/entry.h"\n',
    "core/store/diary_store.h": "#pragma once\n#include <SQLiteCpp/Database.h>\nauto a = \"SELECT id FROM entry\";\n",
    "core/store/schema/0001_first.sql": "CREATE TABLE entry (id TEXT);\n",
    "core/actions/record.h": '#pragma once\n#include "store/diary_store.h"\n',
    "core/report/page.h": '#pragma once\n#include <QPdfWriter>\nauto a = tr("The week was light.");\n',
    "qml/Style/Theme.qml": "pragma Singleton\nQtObject { property color ink: \"#101010\"; property int gap: 8 }\n",
    "qml/Controls/Words.qml": "import Morrow.Style\nText { textFormat: Text.PlainText; color: Theme.ink }\n",
    "qml/Charts/Trend.qml": "import QtCharts\nimport Morrow.Style\nChartView {}\n",
    "qml/Home/Today.qml": "import QtQuick.Controls.Basic\nimport Morrow.Controls\nWords { width: parent.width }\n",
    "qml/Home/today.h": '#pragma once\n#include "actions/record.h"\n',
    "qml/Desk/caseload.h": "#pragma once\n",
    "tests/run": "#!/bin/sh\n",
    "tests/support/suite.h": "#pragma once\n#include <QTest>\n",
    "demo-data/README.md": "three people\n",
}


def assembled(path, text, header=True):
    """The bytes of an example as they are to lie in a file, with its marks."""
    if text.startswith("\n        "):
        text = textwrap.dedent(text[1:])
    first = text.startswith("@@")
    text = text[2:] if first else text
    ending = path.rpartition(".")[2]
    sign = "#" if text.startswith("#!") or path.endswith("CMakeLists.txt") else _COMMENT.get(ending)
    lines = "".join(f"{sign} {line}\n" for line in _SPDX) if header and sign else ""
    if text.startswith("#!"):
        shebang, _, rest = text.partition("\n")
        text = shebang + "\n" + lines + rest
    else:
        text = lines + text
    return "@@" + text if first else text


def unmarked(rule, text):
    """The text without marks, and the {(line, rule)} that they ask for."""
    wanted = {(number, mark[1] or rule)
              for number, line in enumerate(text.split("\n"), 1) for mark in _MARK.finditer(line)}
    return _MARK.sub("", text), wanted
