// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/rules.h"
#include "support/json_text.h"

#include <array>
#include <set>

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr std::array<std::string_view, 2> kChoices{"left", "right"};

FieldRule ruleOfForm(Form form)
{
    FieldRule rule{.field = Field::Value, .form = form};
    if (form == Form::Number || form == Form::Whole) {
        rule.least = Decimal::whole(-1);
        rule.most = Decimal::whole(10);
    }
    if (form == Form::Choice)
        rule.choices = kChoices;
    return rule;
}

/// A value as text, a number with # before it, so that "3" and 3 differ.
std::string shown(const Body::Value &value)
{
    if (const auto *number = std::get_if<Decimal>(&value))
        return "#" + number->toString();
    return std::get<std::string>(value);
}

/// `missing text`, `pain not beside declined`, `value out of bounds`.
std::string shown(const std::vector<BodyProblem> &problems)
{
    std::string all;
    for (const BodyProblem &problem : problems) {
        const std::string field(name(problem.field));
        all += all.empty() ? "" : ", ";
        all += problem.code == BodyProblem::Code::Missing    ? "missing " + field
            : problem.code == BodyProblem::Code::NotAllowed  ? field + " not beside " + std::string(name(problem.other))
            : problem.code == BodyProblem::Code::OutOfBounds ? field + " out of bounds of " + std::string(name(problem.other))
                                                             : "another problem";
    }
    return all;
}

} // namespace

/// The one schema: what each kind may say, who may say it, and in which form.
class tst_rules : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void everyKindHasARule()
    {
        for (int i = 0; i < kKindCount; ++i) {
            const KindRule &rule = ruleOf(static_cast<Kind>(i));
            QCOMPARE(static_cast<int>(rule.kind), i);
            std::set<Field> fields;
            for (const FieldRule &field : rule.fields) {
                QVERIFY2(fields.insert(field.field).second, std::string(name(field.field)).c_str());
                QVERIFY(field.least <= field.most);
                QVERIFY((field.form == Form::Choice) == !field.choices.empty());
                QCOMPARE(ruleOf(rule.kind, field.field), &field);
            }
            QVERIFY2(fields.contains(Field::Withdrawn), std::string(name(rule.kind)).c_str());
            for (const Field about : rule.about.fields)
                QVERIFY(fields.contains(about) && ruleOf(rule.kind, about)->names); // a withdrawal has to hold it
        }
        QVERIFY(!ruleOf(Kind::Check, Field::Reps));
    }

    void whatAnEntryIsAboutIsThatOfTheDesign_data()
    {
        QTest::addColumn<int>("kind");
        QTest::addColumn<QByteArray>("about"); // fields, `day` first where the day is a part
        QTest::addColumn<QByteArray>("author");
        const auto row = [](Kind kind, const char *about, const char *author) {
            QTest::newRow(std::string(name(kind)).c_str()) << static_cast<int>(kind) << QByteArray(about) << QByteArray(author);
        };

        row(Kind::Check, "day complaint", "patient");
        row(Kind::Set, "day slot item set", "patient");
        row(Kind::Session, "day complaint slot", "patient");
        row(Kind::Skip, "day complaint slot", "patient");
        row(Kind::Easier, "day complaint slot", "patient");
        row(Kind::Stage, "day item", "either");
        row(Kind::Setting, "key", "either");
        row(Kind::Unusual, "", "either");
        row(Kind::Note, "", "either");
        row(Kind::Flag, "", "either");
        row(Kind::Outcome, "", "either");
        row(Kind::Pause, "", "either");
        row(Kind::Visit, "", "either");
        row(Kind::Heard, "", "patient");
        row(Kind::PutAside, "", "patient");
        row(Kind::Handed, "", "patient");
        row(Kind::Complaint, "complaint", "clinic");
        row(Kind::Plan, "", "clinic");
        row(Kind::Cleared, "", "clinic");
        row(Kind::Closed, "", "clinic");
        row(Kind::Memo, "", "clinic");
        row(Kind::KnownAs, "", "clinic");
        row(Kind::Alias, "", "clinic");
        row(Kind::SetAside, "", "clinic");
    }

    void whatAnEntryIsAboutIsThatOfTheDesign()
    {
        QFETCH(int, kind);
        QFETCH(QByteArray, about);
        QFETCH(QByteArray, author);

        const KindRule &rule = ruleOf(static_cast<Kind>(kind));

        std::string found = rule.about.byDay ? "day" : "";
        for (const Field field : rule.about.fields)
            found += (found.empty() ? "" : " ") + std::string(name(field));
        QCOMPARE(QByteArray::fromStdString(found), about);
        QCOMPARE(rule.about.isOwnThing(), about.isEmpty());
        QCOMPARE(rule.patient, author != "clinic");
        QCOMPARE(rule.clinic, author != "patient");
    }

    void aValueIsReadInItsForm_data()
    {
        QTest::addColumn<int>("form");
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("value"); // # before a number; empty: refused
        const auto row = [](Form form, const char *what, const QByteArray &text, const char *value) {
            QTest::addRow("%d %s", static_cast<int>(form), what) << static_cast<int>(form) << text << QByteArray(value);
        };

        row(Form::Text, "words", "two words", "two words");
        row(Form::Text, "tab, CR and LF", "a\tb\r\nc", "a\tb\r\nc");
        row(Form::Text, "spaces", "  ", "  ");
        row(Form::Text, "nothing", "", "");
        row(Form::Text, "a bell", "\a", "");
        row(Form::Text, "a zero byte", QByteArray("a\0", 2), "");
        row(Form::Text, "delete", "\x7f", "");
        row(Form::Text, "a C1 control", "\xc2\x80", "");
        row(Form::Text, "a no-break space", "\xc2\xa0", "\xc2\xa0");
        row(Form::Text, "bad UTF-8", "\xff", "");
        row(Form::Id, "ours", "019d43e1-0ea6-73bc-bf68-e0841eb0b9cc", "019d43e1-0ea6-73bc-bf68-e0841eb0b9cc");
        row(Form::Id, "64", QByteArray(64, 'x'), QByteArray(64, 'x').constData());
        row(Form::Id, "65", QByteArray(65, 'x'), "");
        row(Form::Id, "a space", "a b", "");
        row(Form::Word, "a word", "früh", "früh");
        row(Form::Word, "a space", "very early", "");
        row(Form::Word, "a tab", "a\tb", "");
        row(Form::Words, "one", "morning", "morning");
        row(Form::Words, "in their order", "noon morning", "noon morning");
        row(Form::Words, "two spaces", "noon  morning", "");
        row(Form::Words, "a space behind", "noon ", "");
        row(Form::Words, "a space before", " noon", "");
        row(Form::Words, "one twice", "noon am noon", "");
        row(Form::Number, "a decimal", "2.50", "#2.5");
        row(Form::Number, "the least", "-1", "#-1");
        row(Form::Number, "less", "-1.001", "");
        row(Form::Number, "the most", "10.000", "#10");
        row(Form::Number, "more", "10.001", "");
        row(Form::Number, "four decimals", "1.0000", "");
        row(Form::Number, "a plus", "+1", "");
        row(Form::Number, "an exponent", "1e0", "");
        row(Form::Number, "a space", " 1", "");
        row(Form::Number, "NaN", "NaN", "");
        row(Form::Number, "infinity", "inf", "");
        row(Form::Whole, "whole", "3", "#3");
        row(Form::Whole, "whole with zeros", "3.000", "#3");
        row(Form::Whole, "a half", "3.5", "");
        row(Form::Whole, "more", "11", "");
        row(Form::Day, "a day", "2024-02-29", "2024-02-29");
        row(Form::Day, "none", "2026-02-29", "");
        row(Form::Day, "short", "2026-2-9", "");
        row(Form::Day, "before 1900", "1899-12-31", "");
        row(Form::TimeOfDay, "a time", "23:59", "23:59");
        row(Form::TimeOfDay, "24:00", "24:00", "");
        row(Form::TimeOfDay, "60 minutes", "04:60", "");
        row(Form::TimeOfDay, "short", "4:00", "");
        row(Form::TimeOfDay, "letters", "0a:00", "");
        row(Form::Moment, "an instant", "2026-03-03T07:00:00+01:00", "2026-03-03T07:00:00+01:00");
        row(Form::Moment, "without offset", "2026-03-03T07:00:00", "");
        row(Form::Choice, "one", "left", "left");
        row(Form::Choice, "another", "both", "");
        row(Form::Choice, "capitals", "Left", "");
        row(Form::Rule, "in one form", "byday=tu,mo;freq=weekly", "FREQ=WEEKLY;BYDAY=MO,TU");
        row(Form::Rule, "none", "FREQ=HOURLY", "");
        row(Form::Asks, "in one order", "spare during", "during spare");
        row(Form::Asks, "none", "none", "none");
        row(Form::Asks, "none beside another", "none during", "");
        row(Form::Asks, "another", "during mood", "");
        row(Form::Asks, "one twice", "during during", "");
        row(Form::Asks, "part of one", "dur", "");
        row(Form::List, "a list", "[]", "");
    }

    void aValueIsReadInItsForm()
    {
        QFETCH(int, form);
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, value);

        const auto read = readValue(ruleOfForm(static_cast<Form>(form)), text.toStdString());

        QCOMPARE(read.has_value(), !value.isEmpty());
        if (read)
            QCOMPARE(QByteArray::fromStdString(shown(*read)), value);
    }

    void aBodyHasNoProblemOrTheseProblems_data()
    {
        QTest::addColumn<int>("kind");
        QTest::addColumn<QByteArray>("body");
        QTest::addColumn<QByteArray>("problems");
        const auto row = [](const char *what, Kind kind, const char *body, const char *problems) {
            QTest::addRow("%s", what) << static_cast<int>(kind) << QByteArray::fromStdString(json(body)) << QByteArray(problems);
        };

        row("a check", Kind::Check, "{'complaint':'heel','pain':4}", "");
        row("an empty check", Kind::Check, "{'complaint':'heel'}", "");
        row("a check about nothing", Kind::Check, "{'pain':4}", "missing complaint");
        row("a check declined", Kind::Check, "{'complaint':'heel','declined':1,'stiffness_min':5}", "");
        row("pain beside declined", Kind::Check, "{'complaint':'heel','declined':1,'pain':4}", "pain not beside declined");
        row("pain beside not declined", Kind::Check, "{'complaint':'heel','declined':0,'pain':4}", "");
        row("a check withdrawn", Kind::Check, "{'complaint':'heel','withdrawn':1}", "");
        row("a check withdrawn with pain", Kind::Check, "{'complaint':'heel','pain':4,'withdrawn':1}", "pain not beside withdrawn");
        row("a check withdrawn about nothing", Kind::Check, "{'withdrawn':1}", "missing complaint");
        row("a set", Kind::Set, "{'item':'raise','reps':12,'set':1,'slot':'am'}", "");
        row("a set without reps", Kind::Set, "{'item':'raise','set':1,'slot':'am'}", "missing reps");
        row("a set withdrawn", Kind::Set, "{'item':'raise','set':1,'slot':'am','withdrawn':1}", "");
        row("a set withdrawn, which one is not said", Kind::Set, "{'item':'raise','slot':'am','withdrawn':1}", "missing set");
        row("a note without text", Kind::Note, "{'complaint':'heel','kind':'note'}", "missing text");
        row("an unsure without text", Kind::Note, "{'complaint':'heel','kind':'unsure'}", "");
        row("a pause", Kind::Pause, "{'to':'2026-03-03'}", "");
        row("a pause that ends before it starts", Kind::Pause, "{'to':'2026-03-02'}", "to out of bounds of from");
        row("a pause without end", Kind::Pause, "{}", "missing to");
        row("a pause withdrawn", Kind::Pause, "{'withdrawn':1}", "");
        row("an activity", Kind::Outcome, "{'complaint':'heel','kind':'activity','name':'run','value':10}", "");
        row("an activity of 11", Kind::Outcome, "{'complaint':'heel','kind':'activity','name':'run','value':11}",
            "value out of bounds of kind");
        row("an activity without name", Kind::Outcome, "{'complaint':'heel','kind':'activity','value':1}", "missing name");
        row("overall 100", Kind::Outcome, "{'complaint':'heel','kind':'overall','value':100}", "");
        row("overall 101", Kind::Outcome, "{'complaint':'heel','kind':'overall','value':101}", "value out of bounds of kind");
        row("overall 50.5", Kind::Outcome, "{'complaint':'heel','kind':'overall','value':50.5}", "value out of bounds of kind");
        row("a change of -5", Kind::Outcome, "{'complaint':'heel','kind':'change','value':-5}", "");
        row("a change of -6", Kind::Outcome, "{'complaint':'heel','kind':'change','value':-6}", "value out of bounds of kind");
        row("acceptable 1", Kind::Outcome, "{'complaint':'heel','kind':'acceptable','value':1}", "");
        row("acceptable 2", Kind::Outcome, "{'complaint':'heel','kind':'acceptable','value':2}", "value out of bounds of kind");
        row("a test", Kind::Outcome, "{'complaint':'heel','kind':'test','name':'hop','unit':'cm','value':120.5}", "");
        row("a test of nothing", Kind::Outcome, "{'complaint':'heel','kind':'test','value':1}", "missing name, missing unit");
        row("an outcome without value", Kind::Outcome, "{'complaint':'heel','kind':'overall'}", "missing value");
        row("a visit withdrawn", Kind::Visit, "{'complaint':'heel','withdrawn':1}", "");
        row("a plan without items", Kind::Plan, "{'complaint':'heel','number':1,'plan':'p'}", "missing items");
        row("a complaint without place", Kind::Complaint, "{'complaint':'heel'}", "missing place");
    }

    void aBodyHasNoProblemOrTheseProblems()
    {
        QFETCH(int, kind);
        QFETCH(QByteArray, body);
        QFETCH(QByteArray, problems);

        const auto read = BodyReader().read(body.toStdString());

        QVERIFY(read);
        QCOMPARE(QByteArray::fromStdString(shown(problemsOf(static_cast<Kind>(kind), *read, CivilDay::parse("2026-03-03")))), problems);
    }

    void aSettingOfThePersonHasItsForm()
    {
        QVERIFY(settingRule("day_starts") && readValue(*settingRule("day_starts"), "04:00"));
        QVERIFY(!readValue(*settingRule("day_starts"), "4"));
        QVERIFY(settingRule("body_mass_kg") && readValue(*settingRule("body_mass_kg"), "70.5"));
        QVERIFY(!readValue(*settingRule("body_mass_kg"), "0"));
        QVERIFY(settingRule("time_zone") && readValue(*settingRule("time_zone"), "Europe/Berlin"));
        QVERIFY(!settingRule("during_limit"));
    }
};

MORROW_SUITE(tst_rules)

#include "tst_rules.moc"
