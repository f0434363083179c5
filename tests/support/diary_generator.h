// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Random diaries as somebody might have typed them: folders of tables that are all good.
///
/// Nothing of the product takes part in making one. Columns, quoting and apostrophes are told
/// here a second time, so that a mistake in one telling does not hide in the other.

#include "support/typed_table.h"

#include <rapidcheck.h>

namespace morrow::test {

/// Folders that hold every table, column and kind that tables have, now and then.
[[nodiscard]] rc::Gen<TypedFolder> typedFolders();

} // namespace morrow::test
