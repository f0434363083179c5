# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Files and folders that a rule must name, and such as look alike and must pass. See examples.py for the marks."""

_HOLDER = "SPDX-FileCopyrightText: The project authors\n"
_LICENCE = "SPDX-License-Identifier: GPL-3.0-only\n"
_SLASH = "/"  # so that this file names no path of a machine itself
_UP = ".."

BREAKS = [
    ("spdx", "core/model/a.h", "@@#pragma once\n", {"header": False}),
    ("spdx", "core/model/a.cpp", "@@// " + _HOLDER, {"header": False}),
    ("spdx", "qml/Home/A.qml", "@@// " + _LICENCE, {"header": False}),
    ("spdx", "core/model/CMakeLists.txt", "@@# SPDX-License-Identifier: MIT\n# " + _HOLDER, {"header": False}),
    ("spdx", "tests/run", "@@#!/bin/sh\n", {"header": False}),
    ("spdx", "tests/a.py", "@@\n\n\n\n\n\n# " + _HOLDER + "# " + _LICENCE, {"header": False}),
    ("spdx", "tests/a.mjs", "@@\n", {"header": False}),
    ("spdx", "core/store/schema/0002_more.sql", "@@\n", {"header": False}),
    ("spdx", "tests/more.cmake", "@@\n", {"header": False}),
    ("spdx", "tests/a.js", "@@\n", {"header": False}),
    ("spdx", "tests/a.sh", "@@\n", {"header": False}),
    ("spdx", "CMakeLists.txt", "@@\n", {"header": False}),
    ("spdx", "tests/a.py", "@@# a\n# b\n# c\n# d\n# " + _HOLDER + "# " + _LICENCE, {"header": False}),

    ("top-level", "notes.md", "@@\n"),
    ("top-level", "docs/tour.md", "@@\n"),
    ("top-level", "src/a.txt", "@@\n"),

    ("file-name", "core/model/CivilDay.h", "@@\n"),
    ("file-name", "core/model/civil-day.cpp", "@@\n"),
    ("file-name", "tests/core/tst_Day.cpp", "@@\n"),
    ("file-name", "core/model/day.hpp", "@@\n"),
    ("file-name", "core/model/day.cc", "@@\n"),
    ("file-name", "core/model/day.cxx", "@@\n"),
    ("file-name", "core/model/day.hh", "@@\n"),
    ("file-name", "core/model/day.hxx", "@@\n"),
    ("file-name", "core/model/day.c", "@@\n"),

    ("name", "tests/core/util.py", "@@\n"),
    ("name", "tests/core/util.js", "@@\n"),
    ("name", "tests/core/util.mjs", "@@\n"),
    ("name", "tests/core/util.sh", "@@\n"),
    ("name", "tests/core/util.cmake", "@@\n"),
    ("name", "tests/core/a.py", "class PlanHelper:@@\nclass PlanManager(A):@@\nclass PlanUtil:@@\nclass PlanCommon:@@\n"
                                "class PlanData:@@\nclass PlanInfo:@@\n"),

    ("length", "core/model/a.cpp", "\n" * 448 + "int a;@@\n"),
    ("length", "qml/Home/A.qml", "\n" * 448 + "Item {}@@\n"),
    ("length", "app/start", "#\n" * 450 + "#@@\n"),
    ("length", "DEVELOPERS.md", "\n" * 300 + "a@@\n"),

    ("sql", "core/model/a.sql", "@@"),

    ("schema", "core/store/schema/first.sql", "@@"),
    ("schema", "core/store/schema/0001_other.sql", "@@"),

    ("machine-path", "app/start", f"#!/bin/sh\ncd {_SLASH}home/a/b@@\n"),
    ("machine-path", "README.md", f"See `{_SLASH}root/notes`.@@\n"),
    ("machine-path", "tests/core/a.cpp", f'auto a = "{_SLASH}work/main";@@\n// file://{_SLASH}home/b@@\n'),
    ("machine-path", "tests/data/a.csv", f"a,{_SLASH}work@@\n"),

    ("named-path", "README.md", """
        Start with `app/begin`.@@
        Then `./tests/run --quick core/nowhere/a.h`.@@
        The [tour](TOUR.md#start)@@ and ![a picture](assets/a.png).
        [ref]: demo-data/nowhere.csv@@
        ```sh
        app/start
        tests/walk --quick@@
        ```
        See `due.h`,@@
        `tests/core/tst_*.cpp`@@
        and `core/lost/<name>.h`.@@
        `SECURITY.md`@@
        and `base/lost.h:12`.@@
        And `core/store/schema/NNNN_*.qml`.@@
        `due.cpp`@@
        `Due.qml`@@
        `due.py`@@
        `due.cmake`@@
        `0009_due.sql`@@
        `.ci/walk`@@
        `core/lost.h::from`@@
        `core/lost.h#from`@@
        `lost_*.h`@@
        In ``tests/walk``,@@
        and "`tests/walk`".@@
        [Twice](LOST.md) and `app/start`@@
        """),
    ("named-path", "DEVELOPERS.md", "``qml/Lost``@@\n"),

    ("outside-path", "README.md", f"See {_UP}/shared/measures.md.@@\n"),
    ("outside-path", "core/model/a.h", f"// see `{_UP}/shared/design.md`@@\n"),
    ("outside-path", "core/model/a.cpp", f"// see {_UP}/shared/design.md@@\n"),
    ("outside-path", "qml/Home/A.qml", f"// see {_UP}/shared/design.md@@\n"),
    ("outside-path", "tests/a.js", f"// see {_UP}/shared/design.md@@\n"),
    ("outside-path", "tests/a.mjs", f"/* see\n{_UP}/shared/design.md */@@\n"),
    ("outside-path", "tests/a.py", f"a = 'no # no'  # see {_UP}/shared/design.md@@\n"),
    ("outside-path", "tests/a.sh", f"# see {_UP}/shared/design.md@@\n"),
    ("outside-path", "tests/a.cmake", f"# see {_UP}/shared/design.md@@\n"),
    ("outside-path", "tests/run", f"#!/bin/sh\na=b#c\n# see {_UP}/shared/design.md@@\n"),
    ("outside-path", "core/model/CMakeLists.txt", f"# see {_UP}/{_UP}/{_UP}/notes@@\n"),
    ("network", "core/model/CMakeLists.txt", "target_link_libraries(a Qt6::Network)@@\n"),
    ("network", "core/model/a.cmake", "target_link_libraries(a Qt6::WebSockets)@@\n"),
    ("network", "app/CMakeLists.txt", "find_package(Qt6 COMPONENTS WebSockets)@@\n"),
    ("network", "CMakeLists.txt", "find_package(Qt6 6.4 REQUIRED COMPONENTS Core Network)@@\n"),
]

NEAR = [
    ("core/model/a.txt", "no line at all\n"),
    ("tests/run", "#!/bin/sh\n"),
    ("core/store/schema/0002_more.sql", "CREATE TABLE b (c);\n"),
    ("tests/data/old.sql", "CREATE TABLE b (c);\n"),
    (".ci/run", "#!/bin/sh\n"),
    (".editorconfig", "root = true\n"),
    ("tests/data/a.csv", "id\n"),
    ("core/model/a.cpp", "\n" * 447 + "int a;\n"),
    ("tests/core/a.cpp", "\n" * 600),
    ("core/exchange/csv-metadata.json", "{}\n" * 600),
    ("app/packages.txt", "a\n" * 600),
    ("core/exchange/a.csv", "a\n" * 600),
    ("qml/Home/a.svg", "a\n" * 600),
    ("core/store/schema/README.md", "how a step is written\n"),
    ("core/model/my_CMakeLists.txt", ""),
    ("core/model/informations.h", ""),
    ("DEVELOPERS.md", "\n" * 299 + "a\n"),
    ("tests/core/metadata.py", ""),
    ("README.md", f"""
        In `core/base`, `core/base/`, `core/model/entry.h:3`, `model/entry.h`, `entry.h`, `*.qml`, `demo-data`,
        `app/start --help`, `build/dev/bin/morrow-batch`, `application/fhir+json`, `checks.csv`, `a/b`,
        `core/{{base,model}}`, `core/store/schema/NNNN_*.sql`, `core/model/<name>.h`, `$XDG_DATA_HOME/morrow`,
        `entry.h::from`, `tests/...`, `tests/…`, `core/base#top`, `Theme.qml`, `batch/verbs.h`, `Style/Theme.qml`,
        `support/suite.h`, `app/batch/*.h`, `core/b*`, `~/core`, `./app/start`, `core/model/entry.h:3:4`, `.`,
        `/usr/include/a.h`, `~/a.h`, `$HOME/a.h`, `-Ia.h`, `core/.../a.h`, `core/…/a.h`, `ent*.h`, `<name>.h`, a core/nowhere without ticks, [here](#start), [there](https://example.org/core/x),
        [file](demo-data/README.md#top), `/etc/passwd`, `--root core`.
        ```
        app/start # comment
        ```
        """),
    ("core/model/b.h", f"// see {_UP}/base/result.h and {_UP}/{_UP}/tests\nauto a = \"{_UP}/nowhere/x\";\n"),
    ("tests/a.sh", f'cd "$here/{_UP}/nowhere" # "{_UP}/nowhere"\n'),
    ("tests/a.py", f"a = 'https://example.org{_SLASH}home{_SLASH}x', 'qml{_SLASH}home', '{_SLASH}rooted', '$ROOT{_SLASH}work/'\n"),
    ("tests/b.py", "class Information: pass\n# class PlanHelper:\n"),
    ("tests/CMakeLists.txt", "find_package(Qt6 REQUIRED COMPONENTS Test)\n# Networks are not used\n"),
]
