// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/geometry.h"
#include "qml/heard.h"
#include "qml/home/home_screens.h"

#include <QQuickItem>

#include <map>

namespace morrow::test {

/// Each number of home opens the entries that it was made of.
class tst_opening : public QObject
{
    Q_OBJECT

    static TodayComplaint &complaint(Stay &stay)
    {
        auto complaints = stay.session().today()->complaints();
        return *complaints.at(&complaints, 0);
    }

    static TodaySession &session(Stay &stay, qsizetype place)
    {
        auto sessions = complaint(stay).sessions();
        return *sessions.at(&sessions, place);
    }

    /// "number | how | how many", and below each "day: what" of its entries.
    static QStringList opened(Stay &stay)
    {
        QStringList all;
        if (!stay.session().figures()->isShown())
            return {QStringLiteral("nothing is open")};
        for (const WordRow &row : stay.session().figures()->rows()->all()) {
            all << QStringList{row.lead, row.text, row.below}.join(QStringLiteral(" | "));
            for (const WordRow &entry : row.rows->all())
                all << entry.lead + QStringLiteral(": ") + entry.text;
        }
        return all;
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theSetsOfTheDayAreThoseThatWereTicked()
    {
        Stay stay;
        stay.begin(diaryOfAnyThreeDays());
        stay.open();
        stay.session().today()->tickAll(&session(stay, 0));

        stay.session().today()->openSets();

        QCOMPARE(stay.session().figures()->subject(), QStringLiteral("Thursday"));
        QCOMPARE(opened(stay),
            (QStringList{QStringLiteral("3 of 3 sets | The sets that this day asks for and that are done. | 3 entries"),
                QStringLiteral("23 April 2026: Squat with the heels on a rolled-up towel, set 1, 8 reps, day"),
                QStringLiteral("23 April 2026: Squat with the heels on a rolled-up towel, set 2, 8 reps, day"),
                QStringLiteral("23 April 2026: Squat with the heels on a rolled-up towel, set 3, 8 reps, day"),
                QStringLiteral("How many are asked | These entries decide it, together with your plan. | 5 entries"),
                QStringLiteral("13 April 2026: Squat with the heels on a rolled-up towel, stage 2"),
                QStringLiteral("20 April 2026: Squat with the heels on a rolled-up towel, set 1, 8 reps, day"),
                QStringLiteral("20 April 2026: Squat with the heels on a rolled-up towel, set 2, 8 reps, day"),
                QStringLiteral("20 April 2026: Squat with the heels on a rolled-up towel, set 3, 8 reps, day"),
                QStringLiteral("22 April 2026: Squat with the heels on a rolled-up towel, set 1, 8 reps, day")}));
    }

    void aDayWithoutASetSaysSo()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->openSets();

        QCOMPARE(
            opened(stay).first(), QStringLiteral("0 of 6 sets | No set that this day asks for is done yet. | No entry stands behind it."));
    }

    void theDaysOfTheWeekOpenTheirSets()
    {
        Stay stay;
        stay.begin(diaryOfAnyThreeDays());
        stay.open();
        auto cards = session(stay, 0).cards();
        TodayCard &card = *cards.at(&cards, 0);
        QCOMPARE(card.week(), QStringLiteral("2 of 3 days this week so far"));

        stay.session().today()->openWeek(&card);

        QCOMPARE(stay.session().figures()->subject(), card.title);
        const QStringList all = opened(stay);
        QCOMPARE(all.first(),
            QStringLiteral("2 of 3 days this week so far | The days of this week, before this one, on which you did a set. | 4 entries"));
        QCOMPARE(all.filter(QStringLiteral("20 April 2026: ")).size(), 3);
        QCOMPARE(all.filter(QStringLiteral("22 April 2026: ")).size(), 1);
        QCOMPARE(all.filter(QStringLiteral("17 April 2026: ")).size(), 0);
    }

    void theLastAnswersOpenThemselves()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        TodayModel &today = *stay.session().today();

        QCOMPARE(complaint(stay).check()->last(), QStringLiteral("Your last answers: 3, 3, 2."));
        today.openLastChecks(&complaint(stay));
        QCOMPARE(opened(stay),
            (QStringList{QStringLiteral("Your last answers: 3, 3, 2. | The newest answers before this day, at most 3. | 3 entries"),
                QStringLiteral("20 April 2026: pain 3, stiff for 10 min"), QStringLiteral("21 April 2026: pain 3, stiff for 5 min"),
                QStringLiteral("22 April 2026: pain 2, stiff for 5 min")}));

        today.openLastDuring(&session(stay, 1));
        QCOMPARE(opened(stay).mid(1).join(QLatin1Char('\n')).count(QStringLiteral("worst pain in exercise")), 3);
        QVERIFY2(opened(stay).last().startsWith(QStringLiteral("21 April 2026: worst pain in exercise 4, after it 2")),
            qPrintable(opened(stay).last()));
        today.openLastAfter(&session(stay, 1));
        QCOMPARE(opened(stay).first(),
            session(stay, 1).after()->last() + QStringLiteral(" | The newest answers before this day, at most 3. | 3 entries"));
    }

    void whatIsLeftOutOfTheFileIsToBeRead()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        visit.setShown(true);
        QVERIFY(visit.ask(QStringLiteral("May I cycle to work again?")));
        auto questions = visit.questions();
        visit.takeBack(questions.at(&questions, 0));

        visit.openLeftOut();

        QCOMPARE(opened(stay),
            (QStringList{QStringLiteral("Left out: 1 note that you changed or took back. |  | 1 entry"),
                QStringLiteral("23 April 2026: question, May I cycle to work again?")}));
    }

    void whatIsOpenClosesWhenTheDiaryChanges()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        stay.session().today()->openSets();
        QVERIFY(stay.session().figures()->isShown());

        stay.session().today()->tick(rowOf(stay), setOf(stay));

        QVERIFY(!stay.session().figures()->isShown());
        QCOMPARE(stay.session().figures()->rows()->count(), 0);
    }

    void theKeyboardAloneOpensANumberAndComesBackToIt()
    {
        HomeScreen screen(QStringLiteral("any-days"));
        Stage &stage = screen.stage();
        const auto press = [&stage](Qt::Key key) {
            QTest::keyClick(&stage.window(), key);
            stage.picture();
            return stage.window().activeFocusItem()->objectName();
        };
        QString at;
        for (int steps = 0; steps < 30 && at != QLatin1String("week"); ++steps)
            at = press(Qt::Key_Tab);
        QCOMPARE(at, QStringLiteral("week"));
        const double scrolled = screen.scrolling()->property("contentY").toDouble();

        press(Qt::Key_Space);
        QVERIFY(heardTexts(stage.page()).contains(QStringLiteral("The days of this week, before this one, on which you did a set.")));
        QVERIFY(!heardTexts(stage.page()).contains(QStringLiteral("This diary records what you enter. Nobody reads it between visits.")));
        QCOMPARE(press(Qt::Key_Tab), QStringLiteral("back"));

        QCOMPARE(press(Qt::Key_Escape), QStringLiteral("week"));
        QCOMPARE(screen.scrolling()->property("contentY").toDouble(), scrolled);
        press(Qt::Key_Return);
        press(Qt::Key_Tab);
        QCOMPARE(press(Qt::Key_Return), QStringLiteral("week"));
    }

    void aScreenReaderHearsThatANumberOpens()
    {
        HomeScreen screen(QStringLiteral("any-days"));

        QAccessibleInterface *const week = heard(screen.stage(), QStringLiteral("week"));
        QCOMPARE(week->text(QAccessible::Name), QStringLiteral("2 of 3 days this week so far"));
        QCOMPARE(week->text(QAccessible::Description), QStringLiteral("Shows the entries"));
        week->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
        screen.stage().picture();
        QVERIFY(screen.stay().session().figures()->isShown());
    }

    void aSentenceRunsInItsOwnDirectionOnEveryPage()
    {
        HomeScreen screen(QStringLiteral("any-days"));
        for (const auto direction : {Qt::LeftToRight, Qt::RightToLeft}) {
            screen.stage().show({.direction = direction});

            std::map<double, QString> words; // by place
            for (QQuickItem *item : visibleItems(qobject_cast<QQuickItem *>(screen.stage().find(QStringLiteral("week"))))) {
                if (isText(item))
                    words[placeOf(item).left()] = item->property("text").toString();
            }
            QStringList read;
            for (const auto &[place, word] : words)
                read << word;
            QCOMPARE(read.join(QLatin1Char(' ')), QStringLiteral("2 of 3 days this week so far"));
        }
    }

    void anotherPageClosesWhatIsOpen()
    {
        HomeScreen screen(QStringLiteral("opened-sets"));
        QVERIFY(screen.stay().session().figures()->isShown());

        screen.turnTo(1);

        QVERIFY(!screen.stay().session().figures()->isShown());
        QVERIFY(heardTexts(screen.stage().page()).contains(QStringLiteral("This will be handed over")));
    }

private:
    static TodayRow *rowOf(Stay &stay)
    {
        auto cards = session(stay, 0).cards();
        auto rows = cards.at(&cards, 0)->rows();
        return rows.at(&rows, 0);
    }

    static TodaySet *setOf(Stay &stay)
    {
        auto sets = rowOf(stay)->sets();
        return sets.at(&sets, 0);
    }
};

MORROW_SUITE(tst_opening)

} // namespace morrow::test

#include "tst_opening.moc"
