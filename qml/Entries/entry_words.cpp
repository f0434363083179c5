// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Entries/entry_words.h"

#include "Entries/said.h"
#include "model/body.h"

#include <QCoreApplication>
#include <QStringList>

namespace morrow {

namespace {

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(EntryWords)
};

QString exerciseOf(const Diary &diary, std::string_view item)
{
    for (const ComplaintDiary &complaint : diary.complaints()) {
        for (const ItemDiary &each : complaint.items) {
            if (each.item.key == item)
                return plainText(each.item.exercise);
        }
    }
    return plainText(item);
}

/// What stands in an entry, a value a part.
class Parts
{
public:
    explicit Parts(const Body &body)
        : m_body(body)
    {
    }

    /// \a words with %1 for the number, if there is one.
    Parts &number(Field field, const QString &words)
    {
        if (const Decimal *const value = m_body.number(field))
            m_parts << words.arg(numberWords(*value));
        return *this;
    }
    Parts &text(Field field)
    {
        if (const auto text = m_body.textOr(field); !text.empty())
            m_parts << plainText(text);
        return *this;
    }
    Parts &words(const QString &words)
    {
        m_parts << words;
        return *this;
    }
    Parts &words(Field field, std::string_view value, const QString &words)
    {
        if (m_body.textOr(field) == value)
            m_parts << words;
        return *this;
    }

    [[nodiscard]] QString joined() const { return m_parts.join(QStringLiteral(", ")); }

private:
    const Body &m_body;
    QStringList m_parts;
};

QString setWords(const Diary &diary, const Body &body)
{
    Parts parts(body);
    parts.words(exerciseOf(diary, body.textOr(Field::Item)));
    return parts.number(Field::Set, Words::tr("set %1"))
        .number(Field::Reps, Words::tr("%1 reps"))
        .number(Field::HoldS, Words::tr("held %1 s"))
        .number(Field::LoadKg, Words::tr("%1 kg"))
        .number(Field::Spare, Words::tr("%1 more would have gone"))
        .text(Field::Slot)
        .joined();
}

QString visitWords(const Body &body)
{
    Parts parts(body);
    parts.words(Words::tr("visit"));
    return parts.number(Field::Impulses, Words::tr("%1 impulses"))
        .number(Field::Bar, Words::tr("%1 bar"))
        .number(Field::Hz, Words::tr("%1 Hz"))
        .number(Field::WarmupImpulses, Words::tr("%1 impulses to warm up"))
        .number(Field::AreaCm2, Words::tr("%1 cm²"))
        .number(Field::PainDuring, Words::tr("worst pain %1"))
        .text(Field::Reaction)
        .joined();
}

QString noteWords(const Diary &diary, const Body &body)
{
    Parts parts(body);
    parts.words(Field::Kind, "question", Words::tr("question"))
        .words(Field::Kind, "answer", Words::tr("answer"))
        .words(Field::Kind, "unsure", Words::tr("not sure how"))
        .words(Field::Kind, "reply", Words::tr("reply"))
        .words(Field::Kind, "note", Words::tr("note"));
    if (const auto item = body.textOr(Field::Item); !item.empty())
        parts.words(exerciseOf(diary, item));
    return parts.text(Field::Text).joined();
}

QString pauseWords(const Body &body)
{
    Parts parts(body);
    parts.words(Words::tr("pause"));
    if (const auto to = CivilDay::parse(body.textOr(Field::To)))
        //: The last day of a pause.
        parts.words(Words::tr("to %1").arg(fullDate(*to)));
    return parts.text(Field::Reason).joined();
}

QString planWords(const Body &body)
{
    Parts parts(body);
    parts.words(Words::tr("plan"));
    return parts.number(Field::Number, Words::tr("revision %1")).joined();
}

QString whatOf(const Diary &diary, const Entry &entry, const Body &body)
{
    if (body.intOr(Field::Withdrawn, 0) != 0)
        return Words::tr("taken back");
    Parts parts(body);
    switch (entry.kind) {
    case Kind::Check:
        parts.number(Field::Pain, Words::tr("pain %1")).number(Field::StiffnessMin, Words::tr("stiff for %1 min"));
        return body.intOr(Field::Declined, 0) != 0 ? Words::tr("can’t say") : parts.joined();
    case Kind::Set:
        return setWords(diary, body);
    case Kind::Session:
        return parts.number(Field::PainDuring, Words::tr("worst pain in exercise %1"))
            .number(Field::PainAfter, Words::tr("after it %1"))
            .text(Field::Slot)
            .joined();
    case Kind::Skip:
        return parts.words(Words::tr("skipped")).text(Field::Slot).text(Field::Reason).joined();
    case Kind::Easier:
        return parts.words(Words::tr("bad-day dose")).text(Field::Slot).joined();
    case Kind::Stage:
        return parts.words(exerciseOf(diary, body.textOr(Field::Item)))
            .number(Field::Stage, Words::tr("stage %1"))
            .text(Field::Reason)
            .joined();
    case Kind::Flag:
        return parts.words(Words::tr("sign"))
            .text(Field::Sign)
            .text(Field::Note)
            .words(Field::Told, "yes", Words::tr("clinic told"))
            .words(Field::Told, "no", Words::tr("clinic not told"))
            .joined();
    case Kind::Cleared:
        return Words::tr("sign cleared");
    case Kind::Outcome:
        return parts.text(Field::Name).number(Field::Value, QStringLiteral("%1")).text(Field::Unit).joined();
    case Kind::Pause:
        return pauseWords(body);
    case Kind::Visit:
        return visitWords(body);
    case Kind::Complaint:
        return parts.words(Words::tr("complaint"))
            .text(Field::Region)
            .number(Field::FirstAssessmentPain, Words::tr("pain %1 at first assessment"))
            .joined();
    case Kind::Plan:
        return planWords(body);
    case Kind::Memo:
        return parts.text(Field::Note).text(Field::NextTime).joined();
    case Kind::Note:
        return noteWords(diary, body);
    case Kind::Unusual:
        return parts.words(Words::tr("unusual day")).text(Field::Text).joined();
    case Kind::Heard:
        return parts.words(Words::tr("what the clinic said"))
            .words(Field::Answer, "go-on", Words::tr("go on"))
            .words(Field::Answer, "lighter", Words::tr("go on, lighter"))
            .words(Field::Answer, "wait", Words::tr("wait"))
            .joined();
    case Kind::PutAside:
        return Words::tr("the plan is no longer followed");
    case Kind::Closed:
        return parts.words(Words::tr("end of the treatment")).text(Field::EndReason).joined();
    case Kind::Setting:
        return parts.words(Words::tr("setting")).text(Field::Key).text(Field::Value).joined();
    default: // stays where it was made
        return plainText(name(entry.kind));
    }
}

QString howOf(const Diary &diary, EntryIndex index, const Entry &entry)
{
    const QString who = entry.author == Author::Patient ? Words::tr("by the person")
        : entry.author == Author::Helper                ? Words::tr("by a helper")
                                                        : Words::tr("by the clinic");
    QStringList parts{who};
    const auto recorded = diary.recordedOn(index);
    if (!recorded)
        parts << Words::tr("from paper");
    else if (*recorded != entry.day)
        //: When an entry was made, of another day than the one it is about.
        parts << Words::tr("on %1").arg(fullDate(*recorded));
    if (entry.replaces)
        parts << Words::tr("a correction");
    return parts.join(QStringLiteral(", "));
}

} // namespace

EntryWords entryWords(const Diary &diary, EntryIndex index)
{
    const Entry &entry = diary.entries()[index];
    BodyReader reader;
    const auto body = reader.read(entry.body);
    return {fullDate(entry.day), body ? whatOf(diary, entry, *body) : Words::tr("cannot be read"), howOf(diary, index, entry)};
}

} // namespace morrow
