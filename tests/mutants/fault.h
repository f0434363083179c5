// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What seed.py puts into its copies: each function does what stood there, or the fault
/// whose number MORROW_FAULT holds.

#include <algorithm>
#include <concepts>
#include <cstdlib>
#include <optional>
#include <type_traits>
#include <utility>

namespace morrow_fault {

inline bool chosen(int number) noexcept
{
    static const int active = [] {
        const char *const text = std::getenv("MORROW_FAULT");
        return text == nullptr ? 0 : std::atoi(text);
    }();
    return active == number;
}

template<class T>
T number(int more, T value) noexcept
{
    return chosen(more) ? value + 1 : chosen(more + 1) ? value - 1 : value;
}

inline bool negated(int number, bool value) noexcept
{
    return chosen(number) ? value : !value;
}

inline bool turned(int number, bool value) noexcept
{
    return chosen(number) ? !value : value;
}

template<class One, class Other>
bool both(int number, One one, Other other)
{
    return chosen(number) ? one() || other() : one() && other();
}

template<class One, class Other>
bool either(int number, One one, Other other)
{
    return chosen(number) ? one() && other() : one() || other();
}

/// \a function of two arguments, which come the other way round if \a number is chosen.
template<class Function>
auto swapped(int number, Function function)
{
    return [number, function](auto one, auto other) { return chosen(number) ? function(other, one) : function(one, other); };
}

// clang-format off
template<int n, class A, class B> bool less(const A &a, const B &b) { return chosen(n) ? a >= b : chosen(n + 1) ? a <= b : a < b; }
template<int n, class A, class B> bool atMost(const A &a, const B &b) { return chosen(n) ? a > b : chosen(n + 1) ? a < b : a <= b; }
template<int n, class A, class B> bool greater(const A &a, const B &b) { return chosen(n) ? a <= b : chosen(n + 1) ? a >= b : a > b; }
template<int n, class A, class B> bool atLeast(const A &a, const B &b) { return chosen(n) ? a < b : chosen(n + 1) ? a > b : a >= b; }
template<int n, class A, class B> bool equal(const A &a, const B &b) { return chosen(n) ? !(a == b) : a == b; }
template<int n, class A, class B> bool other(const A &a, const B &b) { return chosen(n) ? a == b : !(a == b); }

template<int n, class A, class B> auto plus(const A &a, const B &b)
{
    if constexpr (requires { { a - b } -> std::same_as<decltype(a + b)>; }) {
        if (chosen(n)) return a - b;
    }
    return a + b;
}
template<int n, class A, class B> auto minus(const A &a, const B &b)
{
    if constexpr (requires { { a + b } -> std::same_as<decltype(a - b)>; }) {
        if (chosen(n)) return a + b;
    } else if constexpr (requires { { b - a } -> std::same_as<decltype(a - b)>; }) {
        if (chosen(n)) return b - a; // two days have no sum
    }
    return a - b;
}
// Whole numbers are not divided by 0: the program would stop, which proves little.
template<class T> bool isDivisor(const T &b) { if constexpr (std::is_integral_v<T>) return b != 0; else return true; }
template<int n, class A, class B> auto times(const A &a, const B &b)
{
    if constexpr (requires { { a / b } -> std::same_as<decltype(a * b)>; }) {
        if (chosen(n) && isDivisor(b)) return a / b;
    }
    return a * b;
}
template<int n, class A, class B> auto over(const A &a, const B &b) { if (chosen(n)) return a * b; return a / b; }

template<int n, class A, class B> void add(A &a, const B &b) { if (chosen(n)) a -= b; else a += b; }
template<int n, class A, class B> void take(A &a, const B &b) { if (chosen(n)) a += b; else a -= b; }

template<int n, class T> T min(const T &a, const T &b) { return chosen(n) ? std::max(a, b) : std::min(a, b); }
template<int n, class T> T max(const T &a, const T &b) { return chosen(n) ? std::min(a, b) : std::max(a, b); }
template<int n, class I, class P> bool any_of(I a, I b, P p) { return chosen(n) ? std::all_of(a, b, p) : std::any_of(a, b, p); }
template<int n, class I, class P> bool all_of(I a, I b, P p) { return chosen(n) ? std::any_of(a, b, p) : std::all_of(a, b, p); }
template<int n, class I, class P> bool none_of(I a, I b, P p) { return chosen(n) ? std::any_of(a, b, p) : std::none_of(a, b, p); }
template<int n, class C> decltype(auto) front(C &&c) { return chosen(n) ? c.back() : c.front(); }
template<int n, class C> decltype(auto) back(C &&c) { return chosen(n) ? c.front() : c.back(); }
// clang-format on

} // namespace morrow_fault
