// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/today_filling.h"

#include "Entries/said.h"
#include "Home/home_words.h"
#include "Home/today_words.h"

#include <algorithm>
#include <vector>

namespace morrow {

namespace {

/// Exercises of a session that stand on one card: left and right of the same at the same dose.
std::vector<std::vector<const AskedItem *>> cardsOf(const AskedSession &session)
{
    std::vector<std::vector<const AskedItem *>> cards;
    for (const AskedItem &item : session.items) {
        const auto isOtherSide = [&item](const std::vector<const AskedItem *> &card) {
            const Item &first = card.front()->item->item;
            const Item &second = item.item->item;
            return card.size() == 1 && first.exercise == second.exercise && first.side && second.side && first.side != second.side
                && card.front()->dose() == item.dose();
        };
        if (!cards.empty() && isOtherSide(cards.back()))
            cards.back().push_back(&item);
        else
            cards.push_back({&item});
    }
    return cards;
}

const std::string &keyPointOf(const AskedItem &item)
{
    return item.item->item.stages[static_cast<std::size_t>(item.stage) - 1].keyPoint;
}

/// When \a entry was kept; empty where it was typed in from paper.
QString savedWhen(const Entry &entry)
{
    return entry.recorded ? HomeWords::saved(*entry.recorded) : QString();
}

/// The later of two entries by what was recorded, nullptr where neither was.
const Entry *later(const Entry *one, const Entry *other)
{
    if (one == nullptr || other == nullptr)
        return one == nullptr ? other : one;
    return one->recorded < other->recorded ? other : one;
}

int scoreOf(std::optional<PainScore> score)
{
    return score ? score->value() : -1;
}

TodayCard *makeCard(const std::vector<const AskedItem *> &items, TodaySession &session)
{
    auto *const card = new TodayCard(session);
    const AskedItem &first = *items.front();
    card->title = plainText(first.item->item.exercise);
    card->sentence = HomeWords::sentence(first.dose());
    card->keyPoint = plainText(keyPointOf(first));
    for (const AskedItem *item : items) {
        auto *const row = new TodayRow(item->item->item.key, *card);
        if (item->item->item.side)
            row->side = sideWords(*item->item->item.side);
        for (std::size_t place = 0; place < item->sets.size(); ++place) {
            auto *const set = new TodaySet(row);
            set->number = static_cast<int>(place) + 1;
            set->spoken = TodayWords::set(card->title, row->side, set->number, static_cast<int>(item->sets.size()));
            row->all << set;
        }
        card->all << row;
    }
    return card;
}

TodayRating::State duringOf(const AskedSession &asked, const ComplaintDiary &complaint, CivilDay day, const QString &said)
{
    const bool isAsked = complaint.plan && complaint.plan->asks.during;
    const int value = asked.session ? scoreOf(asked.session->painDuring) : -1;
    return {.asked = isAsked || value >= 0,
        //: A rating after a session.
        .question = TodayWords::tr("Worst pain in the exercise"),
        .value = value,
        .said = value >= 0 ? said : QString(),
        .limit = TodayWords::duringLimit(complaint),
        .last = TodayWords::lastDuring(complaint, day).words};
}

TodayRating::State afterOf(const AskedSession &asked, const ComplaintDiary &complaint, CivilDay day, const QString &said)
{
    const bool isAsked = complaint.plan && complaint.plan->asks.after;
    const int value = asked.session ? scoreOf(asked.session->painAfter) : -1;
    return {.asked = isAsked || value >= 0,
        //: A rating after a session.
        .question = TodayWords::tr("Pain afterwards"),
        .value = value,
        .said = value >= 0 ? said : QString(),
        .limit = TodayWords::afterLimit(complaint),
        .last = TodayWords::lastAfter(complaint, day).words};
}

void fill(TodaySession &session, const AskedSession &asked, const ComplaintDiary &complaint, const Diary &diary, CivilDay day)
{
    TodaySession::State state{.setsDue = asked.setsDue(), .setsDone = asked.setsDone(), .exercises = static_cast<int>(session.all.size())};
    const auto cards = cardsOf(asked);
    for (std::size_t i = 0; i < cards.size(); ++i) {
        TodayCard &card = *session.all[static_cast<qsizetype>(i)];
        const Entry *last = nullptr;
        for (std::size_t j = 0; j < cards[i].size(); ++j) {
            for (std::size_t place = 0; place < cards[i][j]->sets.size(); ++place) {
                const SetDone *const set = cards[i][j]->sets[place];
                card.all[static_cast<qsizetype>(j)]->all[static_cast<qsizetype>(place)]->setDone(isDone(set));
                if (!isDone(set))
                    continue;
                last = later(last, &diary.entries()[set->entry]);
                state.anyDone = true;
                state.tickedAtOnce = state.tickedAtOnce || set->how == SetHow::All;
            }
        }
        card.set(TodayWords::week(*cards[i].front()), last ? savedWhen(*last) : QString());
    }
    if (asked.skip) {
        state.skipped = true;
        state.skipWords = TodayWords::skipped(asked.skip->reason);
        state.said = savedWhen(diary.entries()[asked.skip->entry]);
    }
    session.set(state);
    const QString said = asked.session ? savedWhen(diary.entries()[asked.session->entry]) : QString();
    session.during()->set(duringOf(asked, complaint, day, said));
    session.after()->set(afterOf(asked, complaint, day, said));
}

} // namespace

bool isDone(const SetDone *set)
{
    return set != nullptr && set->reps >= 1;
}

std::string shapeOf(const Today &today)
{
    std::string shape = today.day.toString();
    for (const AskedComplaint &complaint : today.complaints) {
        shape += '\n' + complaint.complaint->complaint.key;
        if (complaint.complaint->plan)
            shape += ' ' + complaint.complaint->plan->id + ' ' + std::to_string(complaint.complaint->plan->number);
        for (const AskedSession &session : complaint.sessions) {
            shape += "\n " + session.slot;
            for (const AskedItem &item : session.items)
                shape += "\n  " + item.item->item.key + ' ' + std::to_string(item.stage) + ' ' + std::to_string(item.sets.size());
        }
    }
    return shape;
}

QList<TodayComplaint *> partsOf(const Today &today, QObject *parent)
{
    QList<TodayComplaint *> parts;
    for (const AskedComplaint &asked : today.complaints) {
        auto *const part = new TodayComplaint(asked.complaint->complaint.key, parent);
        if (today.complaints.size() > 1)
            part->name = HomeWords::name(asked.complaint->complaint);
        for (const AskedSession &askedSession : asked.sessions) {
            auto *const session = new TodaySession(askedSession.slot, *part);
            session->title = TodayWords::slot(askedSession.slot);
            for (const auto &items : cardsOf(askedSession))
                session->all << makeCard(items, *session);
            part->all << session;
        }
        parts << part;
    }
    return parts;
}

void fill(TodayComplaint &part, const AskedComplaint &asked, const Diary &diary, CivilDay day)
{
    const ComplaintDiary &complaint = *asked.complaint;
    const Check *const check = asked.check;
    const bool isAsked = asked.isCheckDue || check != nullptr;
    const bool asksStiffness = complaint.plan && complaint.plan->asks.stiffness;
    part.check()->set({.asked = isAsked,
        .question = TodayWords::question(complaint),
        .value = check ? scoreOf(check->pain) : -1,
        .declined = check != nullptr && check->declined,
        .said = check ? savedWhen(diary.entries()[check->entry]) : QString(),
        .limit = TodayWords::checkLimit(complaint),
        .last = TodayWords::lastChecks(complaint, day).words});
    const bool knowsStiffness = check != nullptr && check->stiffnessMinutes;
    part.set({.stiffnessAsked = isAsked && (asksStiffness || knowsStiffness),
        .stiffness = knowsStiffness ? *check->stiffnessMinutes * kThousandths : -1,
        .quiet = TodayWords::quiet(asked)});
    for (std::size_t i = 0; i < asked.sessions.size(); ++i)
        fill(*part.all[static_cast<qsizetype>(i)], asked.sessions[i], complaint, diary, day);
}

} // namespace morrow
