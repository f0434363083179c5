// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// JSON written straight into one string, in the order it is told, numbers as the
/// decimals they are.
///
/// Qt's writer sorts keys, passes numbers through a double and holds the whole document
/// as objects first: five years of a diary would take several times their size.

#include "base/decimal.h"
#include "base/json_string.h"

#include <string>
#include <string_view>

namespace morrow {

class JsonWriter
{
public:
    explicit JsonWriter(std::string &out) noexcept
        : m_out(out)
    {
    }

    void beginObject() { begin('{'); }
    void endObject() { end('}'); }
    void beginArray() { begin('['); }
    void endArray() { end(']'); }

    /// What follows is the value of \a key.
    void key(std::string_view key)
    {
        separate();
        appendJsonString(m_out, key);
        m_out += ':';
        m_isFirst = true;
    }
    void text(std::string_view value)
    {
        separate();
        appendJsonString(m_out, value);
    }
    void number(Decimal value)
    {
        separate();
        m_out += value.toString();
    }

    void member(std::string_view name, std::string_view value)
    {
        key(name);
        text(value);
    }
    void member(std::string_view name, Decimal value)
    {
        key(name);
        number(value);
    }

private:
    void separate()
    {
        if (!m_isFirst)
            m_out += ',';
        m_isFirst = false;
    }
    void begin(char bracket)
    {
        separate();
        m_out += bracket;
        m_isFirst = true;
    }
    void end(char bracket)
    {
        m_out += bracket;
        m_isFirst = false;
    }

    std::string &m_out;
    bool m_isFirst = true; ///< nothing to be separated from
};

} // namespace morrow
