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
  convert INPUT --to tables|store|summary|plan|visit OUT
      Writes INPUT as a folder of tables, as a store, or as a FHIR R4 file: what the
      person hands over (summary), or all that the clinic said (plan, visit). OUT must
      not exist.
  record --store DIR
      Appends entries to the store, one for each line of JSON on standard input, and
      answers each with a line when it is durable. A new folder becomes a store:
      {"kind":"check","day":"2026-03-02","author":"patient","body":{"pain":3}}
  restore --store DIR
      Puts a damaged or lost store together from what can be read of it and of its
      backups; says how many entries are back and how many are missing.
  erase --store DIR --id ID
      Erases an entry with all that it corrects and that corrects it, for good.
  record --desk DIR --person REF
      The same for what a clinic says about a person, in its record.
  take-in FILE... --desk DIR [--new | --as REF]
      Takes files of patients and other clinics into a desk, each whole or not at all. A
      file of somebody unknown waits until --new or --as says whose it is. A new or
      empty folder becomes a desk; its record is the folder, or the link, DIR/record.
  undo-take-in SHA --desk DIR
      Takes one file out again, by its SHA-256. take-in with --new or --as brings it back.
  rebuild --desk DIR
      Makes the store of a desk again from its record.
  rehearse INPUT [--plan FILE] [--set KEY=VALUE]... [--as-of DAY]
      Says what the rule for the next stage would have offered on each day of a past
      diary, and why, with the plan of FILE or other settings (during_limit=4; with
      no value the default, which for check_limit is none); as spans of days on which
      it said the same, with the values of each day. Nothing is changed by it.
  merge INPUT... OUT
      Writes the diaries of one person, put together, as one summary. OUT must not exist.
  demo DIR
      Writes the diaries of two invented people to DIR/runner and
      DIR/two-complaints, which must not exist.

  --help, --version

INPUT is a folder of tables, CSV files as the README of demo-data describes them, a
FHIR file as convert writes them, or the folder of a store; where that holds several
persons, --person REF says whose.
A DAY is written as 2026-04-27. Results come on standard output, messages on
standard error. measure, rehearse and check change nothing.

status: 0 done, 1 the input was refused, 2 wrong usage, 3 the machine failed
(no space, no permission, an output that takes no more).

It adds up what was recorded. It gives no advice.
)";
}

} // namespace morrow::batch
