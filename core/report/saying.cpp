// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/saying.h"

#include "report/figures.h"
#include "report/plain_text.h"

#include <algorithm>
#include <utility>

namespace morrow {

namespace {

constexpr std::size_t kMostListed = 14; ///< values in how a number was made: two weeks of a daily check
constexpr std::size_t kLongestWord = 40; ///< characters a word on the average: what has no space is cut as well

std::string joined(const Clause &clause)
{
    return Sentence{clause}.text();
}

} // namespace

Piece words(std::string text)
{
    return {std::move(text), std::nullopt};
}

std::vector<EntryIndex> byDay(const Diary &diary, std::vector<EntryIndex> entries)
{
    std::stable_sort(
        entries.begin(), entries.end(), [&](EntryIndex a, EntryIndex b) { return diary.entries()[a].day < diary.entries()[b].day; });
    return entries;
}

Piece made(const Diary &diary, std::string text, const Trace &trace, std::string how)
{
    return {std::move(text), Opening{std::move(how), byDay(diary, trace.entries())}};
}

Piece stated(std::string text, std::vector<EntryIndex> entries)
{
    return {std::move(text), Opening{{}, std::move(entries)}};
}

std::string listed(const Trace &trace)
{
    const std::string text = datedSpan(trace.first, trace.last);
    std::string values;
    std::size_t count = 0;
    for (const Behind &behind : trace.values) {
        if (!behind.value)
            continue;
        if (++count > kMostListed)
            return text + ": " + values + " and further ones";
        values += (values.empty() ? "" : ", ") + figure(*behind.value);
    }
    return values.empty() ? text : text + ": " + values;
}

std::string clipped(std::string_view text, std::size_t most)
{
    const std::string whole = visible(text);
    std::string kept;
    std::size_t count = 0;
    for (std::size_t at = whole.find_first_not_of(' '); at < whole.size(); at = whole.find_first_not_of(' ', at)) {
        const std::size_t end = std::min(whole.find(' ', at), whole.size());
        if (++count > most) {
            kept.resize(kept.find_last_not_of(",;:.") + 1);
            kept += "...";
            break;
        }
        kept += (kept.empty() ? "" : " ") + whole.substr(at, end - at);
        at = end;
    }
    return shortened(kept, most * kLongestWord);
}

Piece quoted(std::string_view text, std::size_t most, EntryIndex entry)
{
    const std::string shown = clipped(text, most);
    const std::string whole = clipped(text, text.size() + 1);
    return {"'" + shown + "'", Opening{shown == whole ? std::string() : "'" + whole + "'", {entry}}};
}

std::size_t wordsIn(std::string_view text) noexcept
{
    std::size_t count = 0;
    bool isIn = false;
    for (const char one : text) {
        count += one != ' ' && !isIn ? 1 : 0;
        isIn = one != ' ';
    }
    return count;
}

bool Saying::fits(const Clause &clause) const
{
    return m_words == 0 || m_words + wordsIn(joined(clause)) <= kMostWords;
}

void Saying::add(Clause clause, std::string_view joint)
{
    if (!fits(clause))
        stop();
    if (m_words > 0) {
        m_current.pieces.push_back(words(std::string(joint)));
    } else if (!clause.empty() && !clause.front().opens && !clause.front().text.empty()) {
        char &first = clause.front().text.front();
        if (first >= 'a' && first <= 'z')
            first = static_cast<char>(first - 'a' + 'A');
    }
    m_words += wordsIn(joined(clause));
    m_current.pieces.insert(m_current.pieces.end(), std::make_move_iterator(clause.begin()), std::make_move_iterator(clause.end()));
}

void Saying::stop()
{
    if (m_words == 0)
        return;
    const std::string said = m_current.text();
    if (!said.ends_with(".'"))
        m_current.pieces.push_back(words("."));
    m_sentences.push_back(std::exchange(m_current, {}));
    m_words = 0;
}

bool Saying::isAfterColon() const
{
    return m_current.text().ends_with(": ");
}

std::vector<Sentence> Saying::take()
{
    stop();
    return std::exchange(m_sentences, {});
}

} // namespace morrow
