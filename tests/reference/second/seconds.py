#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""How long this implementation takes to measure a folder, its reading left out: seconds.py FOLDER --as-of DAY"""

import argparse
import time

from measure import measure_complaint
from measures.entries import Diary
from tables import read_day, read_folder


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument('folder')
    parser.add_argument('--as-of', required=True, type=read_day)
    asked = parser.parse_args()
    read = read_folder(asked.folder)
    began = time.monotonic()
    for diary in [Diary(read, complaint) for complaint in read.complaints]:
        measure_complaint(diary, asked.as_of, None)
    print(time.monotonic() - began)


if __name__ == '__main__':
    main()
