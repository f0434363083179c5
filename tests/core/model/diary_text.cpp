// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/diary_text.h"

#include <sstream>

namespace morrow::test {

namespace {

std::ostream &operator<<(std::ostream &out, CivilDay day)
{
    return out << day.toString();
}

std::ostream &operator<<(std::ostream &out, Decimal number)
{
    return out << number.toString();
}

std::ostream &operator<<(std::ostream &out, PainScore pain)
{
    return out << pain.value();
}

std::ostream &operator<<(std::ostream &out, Side side)
{
    return out << name(side);
}

template<class T>
std::ostream &operator<<(std::ostream &out, const std::optional<T> &value)
{
    return value ? out << *value : out << '-';
}

class Writing
{
public:
    explicit Writing(const Diary &diary)
        : m_diary(diary)
    {
    }

    std::string all()
    {
        m_out << "day starts " << m_diary.dayStarts().count() << ", mass " << m_diary.bodyMassKg() << ", unreadable "
              << m_diary.unreadable() << '\n';
        for (const Pause &pause : m_diary.pauses()) {
            m_out << "pause";
            for (const PauseVersion &version : pause.versions)
                m_out << ' ' << id(version.entry) << ' ' << version.from << ".." << version.to << (version.withdrawn ? " withdrawn" : "")
                      << " since " << version.since << ';';
            m_out << '\n';
        }
        for (const ComplaintDiary &complaint : m_diary.complaints())
            write(complaint);
        return m_out.str();
    }

private:
    [[nodiscard]] const std::string &id(EntryIndex entry) const { return m_diary.entries()[entry].id; }

    void write(const ComplaintDiary &diary)
    {
        const Complaint &complaint = diary.complaint;
        m_out << "complaint " << complaint.key << " (" << complaint.region << ") " << complaint.side << ' ' << complaint.question << ' '
              << complaint.checkRule.toString() << ' ' << complaint.firstAssessmentPain << " aside " << diary.putAsideFrom << '\n';
        if (diary.plan)
            m_out << "plan " << diary.plan->id << ' ' << diary.plan->number << " from " << diary.plan->from << '\n';
        for (const ItemDiary &item : diary.items) {
            m_out << "item " << item.item.key << '\n';
            for (const StageChange &change : item.stageChanges)
                m_out << "stage " << id(change.entry) << ' ' << change.day << ' ' << change.stage << '\n';
            for (const SetDone &set : item.sets)
                m_out << "set " << id(set.entry) << ' ' << set.day << ' ' << set.slot << ' ' << set.number << ' ' << set.reps << ' '
                      << set.holdSeconds << ' ' << set.loadKg << ' ' << set.spareReps << '\n';
        }
        for (const Check &check : diary.checks)
            m_out << "check " << id(check.entry) << ' ' << check.day << ' ' << check.pain << ' ' << check.stiffnessMinutes << ' '
                  << check.declined << '\n';
        for (const Session &session : diary.sessions)
            m_out << "session " << id(session.entry) << ' ' << session.day << ' ' << session.slot << ' ' << session.painDuring << ' '
                  << session.painAfter << '\n';
        for (const SlotMark &mark : diary.skips)
            m_out << "skip " << id(mark.entry) << ' ' << mark.day << ' ' << mark.slot << ' ' << mark.reason << '\n';
        for (const SlotMark &mark : diary.easier)
            m_out << "easier " << id(mark.entry) << ' ' << mark.day << ' ' << mark.slot << '\n';
        for (const Visit &visit : diary.visits)
            m_out << "visit " << id(visit.entry) << ' ' << visit.day << ' ' << visit.warmupImpulses << ' ' << visit.warmupBar << ' '
                  << visit.warmupHz << ' ' << visit.impulses << ' ' << visit.bar << ' ' << visit.hz << ' ' << visit.areaCm2 << ' '
                  << visit.painDuring << '\n';
        for (const Outcome &outcome : diary.outcomes)
            m_out << "outcome " << id(outcome.entry) << ' ' << outcome.day << ' ' << static_cast<int>(outcome.kind) << ' ' << outcome.name
                  << ' ' << outcome.side << ' ' << outcome.value << ' ' << outcome.unit << '\n';
    }

    const Diary &m_diary;
    std::ostringstream m_out;
};

} // namespace

std::string textOf(const Diary &diary)
{
    return Writing(diary).all();
}

} // namespace morrow::test
