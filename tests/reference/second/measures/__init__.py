# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Every measure once more, written from the page of definitions only; one file a section of it."""
