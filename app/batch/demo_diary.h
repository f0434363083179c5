// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The tools that a demo diary is written with.

#include "exchange/tables.h"

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

namespace morrow::batch {

/// Numbers that look like chance and are the same everywhere: SplitMix64 (Steele, Lea and
/// Flood, OOPSLA 2014).
class Chance
{
public:
    explicit Chance(std::uint64_t seed) noexcept
        : m_state(seed)
    {
    }

    [[nodiscard]] std::uint64_t next() noexcept;
    /// 0 .. \a count - 1.
    [[nodiscard]] int below(int count) noexcept;
    [[nodiscard]] int between(int least, int most) noexcept { return least + below(most - least + 1); }
    [[nodiscard]] bool oneIn(int count) noexcept { return below(count) == 0; }

private:
    std::uint64_t m_state;
};

/// A time zone of the European Union: summer time, an hour ahead, from 01:00 UTC on the last
/// Sunday of March to 01:00 UTC on the last Sunday of October (Directive 2000/84/EC).
struct Zone
{
    const char *name;
    int winterMinutes; ///< ahead of UTC

    /// The instant at which a clock on the wall there says so on \a day.
    [[nodiscard]] Moment at(CivilDay day, int hour, int minute, int second, int millisecond) const noexcept;
};

/// One thing that a body says.
struct Said
{
    Said(Field what, int number)
        : field(what)
        , value(Decimal::whole(number))
    {
    }
    Said(Field what, Decimal number)
        : field(what)
        , value(number)
    {
    }
    Said(Field what, const char *text)
        : field(what)
        , value(std::string(text))
    {
    }
    Said(Field what, std::string text)
        : field(what)
        , value(std::move(text))
    {
    }
    Said(Field what, CivilDay day)
        : field(what)
        , value(day.toString())
    {
    }
    Said(Field what, std::vector<Body> list)
        : field(what)
        , value(std::move(list))
    {
    }

    Field field;
    Body::Value value;
};

/// A body that says all of it; an empty text says nothing.
[[nodiscard]] Body bodyOf(std::initializer_list<Said> said);

/// The day that \a text names, which must name one.
[[nodiscard]] CivilDay on(std::string_view text);

/// Collects entries in whatever order the story is told, and gives each the id that it would
/// have got when it was recorded.
class DemoDiary
{
public:
    /// The place of an entry in the story.
    using Ref = std::size_t;

    DemoDiary(std::string person, Zone zone, std::uint64_t seed);

    [[nodiscard]] Chance &chance() noexcept { return m_chance; }

    /// An instant in the minute that a clock on the wall says on \a day.
    [[nodiscard]] Moment at(CivilDay day, int hour, int minute);

    Ref onPaper(Kind kind, CivilDay day, Author author, Body body);
    Ref recorded(Kind kind, CivilDay day, Moment moment, Author author, Body body);
    /// The same thing said anew, or taken back if \a body says `withdrawn`.
    Ref corrected(Ref old, Moment moment, Body body);
    /// What was said in \a ref.
    [[nodiscard]] const Body &body(Ref ref) const { return m_drafts[ref].body; }
    /// Lets \a field of \a from hold the id of \a to.
    void pointAt(Ref from, Field field, Ref to);

    /// Everything told so far, as the entries of one person.
    [[nodiscard]] TablesDiary finish();

private:
    struct Pointer
    {
        Field field;
        Ref to;
    };
    struct Draft
    {
        Entry entry;
        Body body;
        std::optional<Ref> replaces;
        std::vector<Pointer> pointers;
    };

    void complete(Draft &draft);

    std::string m_person;
    Zone m_zone;
    Chance m_chance;
    std::vector<Draft> m_drafts;
};

} // namespace morrow::batch
