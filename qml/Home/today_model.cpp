// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/today_model.h"

#include "Entries/said.h"
#include "Home/home_session.h"
#include "Home/home_words.h"
#include "Home/today_figures.h"
#include "Home/today_filling.h"
#include "Home/today_words.h"
#include "model/remarks.h"

#include <QPointer>

#include <algorithm>
#include <array>

namespace morrow {

namespace {

constexpr int kReplyDays = 14; ///< how long a reply stands on top of the page

int scoreOf(std::optional<PainScore> score)
{
    return score ? score->value() : -1;
}

/// Where a session stands on the page: as the day goes, those of other names after it.
std::size_t placeInDay(const AskedSession &session)
{
    static constexpr std::array kTimes{"morning", "noon", "afternoon", "evening"};
    return static_cast<std::size_t>(std::ranges::find(kTimes, session.slot) - kTimes.begin());
}

} // namespace

/// What the day asks, with the part of it that a page pointed at.
struct TodayModel::Place
{
    const Diary &diary;
    Today today;
    const AskedComplaint *complaint = nullptr;
    const AskedSession *session = nullptr;

    [[nodiscard]] const Entry &entry(EntryIndex index) const { return diary.entries()[index]; }
};

TodayModel::TodayModel(HomeSession &session)
    : m_session(session)
    , m_day(diaryDay({}, {}))
{
    connect(&session, &HomeSession::changed, this, &TodayModel::read);
}

TodayModel::~TodayModel() = default;

QString TodayModel::progress() const
{
    return TodayWords::progress(m_setsDone, m_setsDue);
}

void TodayModel::setYesterday(bool yesterday)
{
    if (m_yesterday == yesterday)
        return;
    m_yesterday = yesterday;
    read();
}

void TodayModel::read()
{
    if (!m_session.diary())
        return;
    m_day = m_session.day() - (m_yesterday ? 1 : 0);
    const Diary &diary = m_session.diary()->recent(m_session.now());
    Today today = morrow::today(diary, m_day);
    for (AskedComplaint &complaint : today.complaints)
        std::ranges::stable_sort(complaint.sessions, {}, placeInDay);
    if (std::string shape = shapeOf(today); shape != m_shape) {
        m_shape = std::move(shape);
        build(today);
    }
    for (std::size_t i = 0; i < today.complaints.size(); ++i)
        fill(*m_complaints[static_cast<qsizetype>(i)], today.complaints[i], diary, m_day);

    m_line = HomeWords::weekday(m_day);
    m_beside = HomeWords::date(m_day);
    m_setsDue = today.setsDue;
    m_setsDone = today.setsDone;
    m_replyHead.clear();
    m_reply.clear();
    for (const Note &note : Remarks::of(diary).notes) { // by day: the last is the newest
        if (note.kind == NoteKind::Reply && note.day > m_day - kReplyDays && note.day <= m_day) {
            m_replyHead = TodayWords::replyHead(note.day, m_day);
            m_reply = plainText(note.text);
        }
    }
    Q_EMIT changed();
}

void TodayModel::build(const Today &today)
{
    for (TodayComplaint *old : m_complaints)
        old->deleteLater(); // the page may be inside a call to one of them
    m_complaints = partsOf(today, this);
    Q_EMIT partsChanged();
}

std::optional<TodayModel::Place> TodayModel::placeOf(const TodayComplaint &complaint)
{
    if (!m_session.diary())
        return std::nullopt;
    const Diary &diary = m_session.diary()->recent(m_session.now());
    Place place{.diary = diary, .today = morrow::today(diary, m_day)};
    for (const AskedComplaint &asked : place.today.complaints) {
        if (asked.complaint->complaint.key == complaint.key())
            place.complaint = &asked;
    }
    if (place.complaint == nullptr)
        return std::nullopt;
    return place;
}

std::optional<TodayModel::Place> TodayModel::placeOf(const TodaySession &session)
{
    auto place = placeOf(session.complaint());
    if (!place)
        return std::nullopt;
    for (const AskedSession &asked : place->complaint->sessions) {
        if (asked.slot == session.slot())
            place->session = &asked;
    }
    if (place->session == nullptr)
        return std::nullopt;
    return place;
}

Draft TodayModel::draft(Kind kind, const TodayComplaint &complaint) const
{
    Draft draft{.kind = kind, .day = m_day, .author = Author::Patient};
    draft.body.set(Field::Complaint, complaint.key());
    return draft;
}

void TodayModel::answerCheck(TodayComplaint &complaint, const CheckAnswer &answer)
{
    const auto place = placeOf(complaint);
    if (!place)
        return;
    const QPointer<TodayComplaint> part(&complaint);
    Draft draft = this->draft(Kind::Check, complaint);
    if (place->complaint->check)
        draft.replaces = place->entry(place->complaint->check->entry).id;
    if (answer.score)
        draft.body.set(Field::Pain, Decimal::whole(*answer.score));
    if (answer.declined)
        draft.body.set(Field::Declined, Decimal::whole(1));
    if (answer.stiffness)
        draft.body.set(Field::StiffnessMin, Decimal::whole(*answer.stiffness));
    const Kept kept = m_session.record({std::move(draft)});
    if (part)
        part->check()->setFailure(kept.failure);
}

TodayModel::CheckAnswer TodayModel::checkOf(const TodayComplaint &complaint)
{
    const auto place = placeOf(complaint);
    if (!place || !place->complaint->check)
        return {};
    const Check &check = *place->complaint->check;
    return {.score = check.pain ? std::optional(check.pain->value()) : std::nullopt,
        .declined = check.declined,
        .stiffness = check.stiffnessMinutes};
}

void TodayModel::check(TodayComplaint *complaint, int score)
{
    CheckAnswer answer = checkOf(*complaint);
    answer.score = score;
    answer.declined = false;
    answerCheck(*complaint, answer);
}

void TodayModel::checkDeclined(TodayComplaint *complaint)
{
    CheckAnswer answer = checkOf(*complaint);
    answer.score.reset();
    answer.declined = true;
    answerCheck(*complaint, answer);
}

void TodayModel::stiffness(TodayComplaint *complaint, int thousandths)
{
    CheckAnswer answer = checkOf(*complaint);
    answer.stiffness = thousandths < 0 ? std::nullopt : std::optional(thousandths / kThousandths);
    if (!answer.score && !answer.declined && !answer.stiffness)
        takeBackCheck(complaint);
    else
        answerCheck(*complaint, answer);
}

void TodayModel::takeBackCheck(TodayComplaint *complaint)
{
    const auto place = placeOf(*complaint);
    if (!place || !place->complaint->check)
        return;
    const QPointer<TodayComplaint> part(complaint);
    const Kept kept = m_session.takeBack({place->entry(place->complaint->check->entry)});
    if (part)
        part->check()->setFailure(kept.failure);
}

void TodayModel::tick(TodayRow *row, TodaySet *set)
{
    TodayCard &card = row->card();
    const auto place = placeOf(card.session());
    if (!place)
        return;
    const QPointer<TodayCard> part(&card);
    const auto asked
        = std::ranges::find_if(place->session->items, [row](const AskedItem &item) { return item.item->item.key == row->item(); });
    if (asked == place->session->items.end())
        return;
    const auto at = static_cast<std::size_t>(set->number) - 1;
    const SetDone *const before = at < asked->sets.size() ? asked->sets[at] : nullptr;
    const Kept kept = isDone(before)
        ? m_session.takeBack({place->entry(before->entry)})
        : m_session.record({setDraft(*place->session, *asked, set->number, SetHow::Tick, before ? &place->entry(before->entry) : nullptr)});
    if (part)
        part->setFailure(kept.failure);
}

Draft TodayModel::setDraft(const AskedSession &session, const AskedItem &item, int number, SetHow how, const Entry *before) const
{
    Draft draft{.kind = Kind::Set, .day = m_day, .author = Author::Patient};
    const Dose &dose = item.dose();
    draft.body.set(Field::Slot, session.slot);
    draft.body.set(Field::Item, item.item->item.key);
    draft.body.set(Field::Set, Decimal::whole(number));
    draft.body.set(Field::Reps, Decimal::whole(dose.reps));
    if (dose.isHeld())
        draft.body.set(Field::HoldS, Decimal::whole(dose.holdSeconds));
    if (dose.loadKg.thousandths() > 0)
        draft.body.set(Field::LoadKg, dose.loadKg);
    draft.body.set(Field::How, std::string(how == SetHow::All ? "all" : "tick"));
    if (before)
        draft.replaces = before->id;
    return draft;
}

void TodayModel::tickAll(TodaySession *session)
{
    const auto place = placeOf(*session);
    if (!place)
        return;
    std::vector<Draft> drafts;
    for (const AskedItem &item : place->session->items) {
        if (!item.isDue)
            continue;
        for (int number = 1; number <= item.dose().sets; ++number) {
            const SetDone *const before = item.sets[static_cast<std::size_t>(number) - 1];
            if (!isDone(before))
                drafts.push_back(setDraft(*place->session, item, number, SetHow::All, before ? &place->entry(before->entry) : nullptr));
        }
    }
    if (drafts.empty())
        return;
    const QPointer<TodaySession> part(session);
    const Kept kept = m_session.record(std::move(drafts));
    if (part)
        part->setFailure(kept.failure);
}

void TodayModel::takeBackAll(TodaySession *session)
{
    const auto place = placeOf(*session);
    if (!place)
        return;
    std::vector<Entry> entries;
    for (const AskedItem &item : place->session->items) {
        for (const SetDone *set : item.sets) {
            if (isDone(set) && set->how == SetHow::All)
                entries.push_back(place->entry(set->entry));
        }
    }
    if (entries.empty())
        return;
    const QPointer<TodaySession> part(session);
    const Kept kept = m_session.takeBack(entries);
    if (part)
        part->setFailure(kept.failure);
}

void TodayModel::rateDuring(TodaySession *session, int score)
{
    rate(*session, Field::PainDuring, score);
}

void TodayModel::rateAfter(TodaySession *session, int score)
{
    rate(*session, Field::PainAfter, score);
}

void TodayModel::takeBackDuring(TodaySession *session)
{
    rate(*session, Field::PainDuring, std::nullopt);
}

void TodayModel::takeBackAfter(TodaySession *session)
{
    rate(*session, Field::PainAfter, std::nullopt);
}

void TodayModel::rate(TodaySession &session, Field field, std::optional<int> score)
{
    const auto place = placeOf(session);
    if (!place)
        return;
    const Session *const before = place->session->session;
    int during = before ? scoreOf(before->painDuring) : -1; // -1: no answer
    int after = before ? scoreOf(before->painAfter) : -1;
    (field == Field::PainDuring ? during : after) = score.value_or(-1);

    const QPointer<TodaySession> part(&session);
    Kept kept;
    if (during < 0 && after < 0) {
        if (before)
            kept = m_session.takeBack({place->entry(before->entry)});
    } else {
        Draft draft = this->draft(Kind::Session, session.complaint());
        draft.body.set(Field::Slot, session.slot());
        if (before)
            draft.replaces = place->entry(before->entry).id;
        if (during >= 0)
            draft.body.set(Field::PainDuring, Decimal::whole(during));
        if (after >= 0)
            draft.body.set(Field::PainAfter, Decimal::whole(after));
        kept = m_session.record({std::move(draft)});
    }
    if (part)
        (field == Field::PainDuring ? part->during() : part->after())->setFailure(kept.failure);
}

void TodayModel::skip(TodaySession *session, const QString &reason)
{
    const auto place = placeOf(*session);
    if (!place)
        return;
    const QPointer<TodaySession> part(session);
    Draft draft = this->draft(Kind::Skip, session->complaint());
    draft.body.set(Field::Slot, session->slot());
    draft.body.set(Field::Reason, reason.toStdString());
    if (place->session->skip)
        draft.replaces = place->entry(place->session->skip->entry).id;
    const Kept kept = m_session.record({std::move(draft)});
    if (part)
        part->setFailure(kept.failure);
}

void TodayModel::takeBackSkip(TodaySession *session)
{
    const auto place = placeOf(*session);
    if (!place || !place->session->skip)
        return;
    const QPointer<TodaySession> part(session);
    const Kept kept = m_session.takeBack({place->entry(place->session->skip->entry)});
    if (part)
        part->setFailure(kept.failure);
}

void TodayModel::openSets()
{
    if (!m_session.diary())
        return;
    const Diary &diary = m_session.diary()->recent(m_session.now());
    m_session.figures()->show(m_line, TodayFigures::sets(diary, morrow::today(diary, m_day)));
}

void TodayModel::openWeek(TodayCard *card)
{
    const auto place = placeOf(card->session());
    if (!place)
        return;
    // Left and right stand on one card, and the week of the first is said.
    const std::string &key = card->all.front()->item();
    const auto item = std::ranges::find_if(place->session->items, [&key](const AskedItem &each) { return each.item->item.key == key; });
    if (item != place->session->items.end())
        m_session.figures()->show(card->title, TodayFigures::week(place->diary, *place->complaint->complaint, *item, m_day));
}

void TodayModel::openLastChecks(TodayComplaint *complaint)
{
    if (const auto place = placeOf(*complaint))
        m_session.figures()->show(
            complaint->check()->question(), TodayFigures::last(place->diary, TodayWords::lastChecks(*place->complaint->complaint, m_day)));
}

void TodayModel::openLastDuring(TodaySession *session)
{
    if (const auto place = placeOf(*session))
        m_session.figures()->show(
            session->during()->question(), TodayFigures::last(place->diary, TodayWords::lastDuring(*place->complaint->complaint, m_day)));
}

void TodayModel::openLastAfter(TodaySession *session)
{
    if (const auto place = placeOf(*session))
        m_session.figures()->show(
            session->after()->question(), TodayFigures::last(place->diary, TodayWords::lastAfter(*place->complaint->complaint, m_day)));
}

} // namespace morrow
