// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/field.h"
#include "model/kind.h"
#include "model/scales.h"

#include <array>
#include <set>
#include <string>

using namespace morrow;

/// Everything that stands in a body has one name, which is found again.
class tst_names : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void fieldsAreInTheOrderOfTheirNames()
    {
        for (int i = 1; i <= static_cast<int>(Field::Withdrawn); ++i)
            QVERIFY(name(static_cast<Field>(i - 1)) < name(static_cast<Field>(i)));
    }

    void everyFieldIsFoundByItsName()
    {
        for (int i = 0; i <= static_cast<int>(Field::Withdrawn); ++i) {
            const auto field = static_cast<Field>(i);
            const std::string_view text = name(field);

            QVERIFY(fieldNamed(text) == field);
            QVERIFY2(text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string_view::npos, std::string(text).c_str());
        }
    }

    void aFieldIsNamedAsItIsCalled()
    {
        // A few from both ends and the middle: a table that slipped by one row would still be sorted.
        QVERIFY(name(Field::About) == "about");
        QVERIFY(name(Field::FirstAssessmentPain) == "first_assessment_pain");
        QVERIFY(name(Field::Loads) == "loads");
        QVERIFY(name(Field::Number) == "number");
        QVERIFY(name(Field::RestsAfterVisit) == "rests_after_visit");
        QVERIFY(name(Field::StiffnessMin) == "stiffness_min");
        QVERIFY(name(Field::Withdrawn) == "withdrawn");
    }

    void noOtherTextIsAField()
    {
        for (const char *const text :
            {"", "pai", "pains", "Pain", "aaa", "zebra", "day", "recorded_at", "contact_", "contact_levels", "warmup_b"})
            QVERIFY2(!fieldNamed(text), text);
        QVERIFY(!fieldNamed(std::string_view("set\0", 4)));
    }

    void everyKindIsFoundByItsName()
    {
        static constexpr std::array<const char *, kKindCount> names{"check", "set", "session", "skip", "easier", "stage", "setting",
            "unusual", "note", "flag", "outcome", "pause", "visit", "heard", "put_aside", "handed", "complaint", "plan", "cleared",
            "closed", "memo", "known_as", "alias", "set_aside"};

        for (int i = 0; i < kKindCount; ++i) {
            const auto kind = static_cast<Kind>(i);
            QCOMPARE(std::string(name(kind)), std::string(names[static_cast<std::size_t>(i)]));
            QVERIFY(kindNamed(names[static_cast<std::size_t>(i)]) == kind);
        }
        for (const char *const text : {"", "Check", "sets", "put-aside"})
            QVERIFY2(!kindNamed(text), text);
    }

    void everyAuthorIsFoundByItsName()
    {
        for (const Author author : {Author::Patient, Author::Helper, Author::Clinic})
            QVERIFY(authorNamed(name(author)) == author);
        QVERIFY(name(Author::Patient) == "patient");
        QVERIFY(name(Author::Helper) == "helper");
        QVERIFY(name(Author::Clinic) == "clinic");
        QVERIFY(!authorNamed("nurse"));
    }

    void everySideIsFoundByItsName()
    {
        for (const Side side : {Side::Left, Side::Right, Side::Both})
            QVERIFY(sideNamed(name(side)) == side);
        QVERIFY(name(Side::Left) == "left");
        QVERIFY(!sideNamed("middle"));
        QVERIFY(!sideNamed(""));
    }
};

MORROW_SUITE(tst_names)

#include "tst_names.moc"
