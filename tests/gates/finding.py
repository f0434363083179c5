# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""What a rule says about one line."""

from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Finding:
    path: str
    line: int
    wrong: str
    instead: str
    by: str = ""  # which row of the rule spoke; the tests want to have heard every row
    rule: str = ""

    def __str__(self):
        return f"{self.path}:{self.line}: {self.wrong}; {self.instead} [{self.rule}]"
