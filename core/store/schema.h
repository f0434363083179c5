// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The steps that make a store what it is today, from nothing or from any version that landed.

#include <span>
#include <string_view>

namespace morrow {

/// One step: run whole, in one transaction, it makes version - 1 into version.
struct SchemaStep
{
    int version; ///< from 1, without a gap
    std::string_view sql;
};

[[nodiscard]] std::span<const SchemaStep> schemaSteps() noexcept;

} // namespace morrow
