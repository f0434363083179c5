# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented diaries as folders of tables: nobody in them exists, and every one comes from its seed alone."""
