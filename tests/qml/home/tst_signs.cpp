// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "model/heard.h"
#include "qml/home/home_screens.h"

#include <QQuickItem>

namespace morrow::test {

/// A sign that is written down, and what follows.
class tst_signs : public QObject
{
    Q_OBJECT

    static SignReport &newest(SafetyModel &safety)
    {
        auto reports = safety.reports();
        return *reports.at(&reports, 0);
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aSignIsChosenAskedAboutAndThenNothingElseIsShown()
    {
        HomeScreen screen(QStringLiteral("signs"));
        Stage &stage = screen.stage();
        QQuickItem *row = nullptr;
        for (QQuickItem *item : visibleItems(stage.page())) {
            if (item->inherits("QQuickAbstractButton") && item->property("text").toString() == QLatin1String("You might be pregnant"))
                row = item;
        }
        QVERIFY(row != nullptr);

        QMetaObject::invokeMethod(row, "press");
        stage.picture();
        QVERIFY(screen.stay().fresh().empty());
        QTest::keyClick(&stage.window(), Qt::Key_Escape);
        stage.picture();
        QVERIFY(!screen.stay().session().safety()->stops());

        screen.stay().session().safety()->report(QStringLiteral("You might be pregnant"));
        stage.picture();
        QVERIFY(stage.find(QStringLiteral("tells nobody")) != nullptr);
        QCOMPARE(screen.stay().fresh().size(), std::size_t(1));
        QVERIFY(screen.press(QStringLiteral("not yet")));
        QVERIFY(stage.find(QStringLiteral("tells nobody")) == nullptr);
    }

    void theExercisesWaitUntilTheClinicWasHeard()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        SafetyModel &safety = *stay.session().safety();
        QVERIFY(!safety.waits());

        safety.report(QStringLiteral("Fever"));
        QVERIFY(safety.waits());
        QCOMPARE(safety.whom(), QStringLiteral("K. L., physiotherapist"));
        safety.called(true);
        QVERIFY(safety.waits());
        QCOMPARE(newest(safety).state(), QStringLiteral("Written down on 23 April 2026. You have called."));

        safety.heard(&newest(safety), SafetyModel::Wait);
        QVERIFY(safety.waits());
        safety.heard(&newest(safety), SafetyModel::Lighter);
        QVERIFY(!safety.waits());
        QCOMPARE(safety.open(), 1); // what was heard does not clear it

        // A correction of the sign keeps what was heard about it.
        safety.calledAbout(&newest(safety));
        QVERIFY(!safety.waits());
        QCOMPARE(newest(safety).state(), QStringLiteral("Written down on 23 April 2026. You have called. You heard: go on, lighter."));
    }

    void aSignWrittenDownByMistakeIsTakenBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        SafetyModel &safety = *stay.session().safety();
        safety.report(QStringLiteral("Fever"));
        safety.called(false);

        safety.takeBack(&newest(safety));

        QVERIFY(!safety.waits());
        QCOMPARE(safety.open(), 0);
        QCOMPARE(stay.fresh().size(), std::size_t(3)); // reported, not called, taken back
    }

    void aSignThatTheClinicAnsweredForAsksForNothing()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        QCOMPARE(stay.session().safety()->open(), 0);
        QCOMPARE(newest(*stay.session().safety()).state(),
            QStringLiteral("Written down on 31 March 2026. Your clinic answered for it on 1 April 2026. You heard: go on."));
    }

    void everyTextIsMarkedAsNotApprovedYet()
    {
        QFile file(QStringLiteral(":/morrow/texts/signs_en.json"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QByteArray texts = file.readAll();
        QVERIFY(texts.contains("Needs a clinician's approval"));
        QVERIFY(texts.contains("common practice, no source"));
        Stay stay;
        auto groups = stay.session().safety()->groups();
        QCOMPARE(groups.count(&groups), 3);
    }
};

MORROW_SUITE(tst_signs)

} // namespace morrow::test

#include "tst_signs.moc"
