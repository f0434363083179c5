// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How a function says that it could not do its work.
///
/// A failure is a value of an enum or a small struct, never an exception and
/// never words: words belong to whoever talks to a person.

#include <tl/expected.hpp>

namespace morrow {

/// Either a T or the reason why there is none. Ignoring one is a warning,
/// because an ignored failure is how a diary gets lost.
template<class T, class E>
class [[nodiscard]] Result : public tl::expected<T, E>
{
public:
    using tl::expected<T, E>::expected;
};

/// Wraps the reason \a error, to be returned from a function that gives a Result.
template<class E>
[[nodiscard]] constexpr tl::unexpected<std::decay_t<E>> failure(E &&error)
{
    return tl::unexpected<std::decay_t<E>>(std::forward<E>(error));
}

} // namespace morrow
