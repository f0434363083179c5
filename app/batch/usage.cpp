// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/usage.h"

namespace morrow::batch {

std::string_view usage() noexcept
{
    return R"(usage: morrow-batch VERB ...

  measure INPUT [--as-of DAY] [--from DAY] [--text]
      Says what was due and what was done, load by week, the daily check, visits
      and outcomes, as JSON; with --text as a page that a person can read.
      --as-of is the last day that counts, yesterday if it is left out.
      --from is the first; if it is left out, or earlier than that, the day on
      which the first exercise of a complaint started.
  check INPUT...
      Says of each INPUT whether it is accepted, and every reason if not.
  convert INPUT --to tables OUT
      Writes INPUT as a folder of tables. OUT must not exist.
  demo DIR
      Writes the diaries of two invented people to DIR/runner and
      DIR/two-complaints, which must not exist.

  --help, --version

INPUT is a folder of tables: CSV files as the README of demo-data describes them.
A DAY is written as 2026-04-27. Results come on standard output, messages on
standard error. measure and check write no file.

status: 0 done, 1 the input was refused, 2 wrong usage, 3 the machine failed
(no space, no permission, an output that takes no more).

It adds up what was recorded. It gives no advice.
)";
}

} // namespace morrow::batch
