// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Why a store could not do what it was asked.

namespace morrow {

enum class StoreError {
    Missing, ///< there is no store at that place
    NotADiary, ///< a file that is no store of ours
    Newer, ///< written by a newer program: it can be read, never written
    Busy, ///< another program has it
    Full, ///< no space
    ReadOnly, ///< the disk, or the store as it was opened, takes no writing
    Io, ///< the machine failed in another way
    Damaged, ///< its pages cannot be read as a database
    Refused, ///< an id that is there with another content, or what the guards forbid
};

} // namespace morrow
