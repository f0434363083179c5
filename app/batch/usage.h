// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include <string_view>

namespace morrow::batch {

/// How the tool is called, on one screen.
[[nodiscard]] std::string_view usage() noexcept;

} // namespace morrow::batch
