// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/heard.h"

#include <QAccessible>
#include <QQuickItem>

#include <memory>

namespace morrow::test {

namespace {

/// The scale's box that says \a words.
QAccessibleInterface *boxOf(const Stage &stage, const QString &words)
{
    for (QAccessibleInterface *node : walk(stage.find(QStringLiteral("pain")))) {
        if (node->text(QAccessible::Name) == words)
            return node;
    }
    return nullptr;
}

} // namespace

/// Whoever hears the page is told each control's name, role and state, and can act.
class tst_accessible : public QObject
{
    Q_OBJECT

    std::unique_ptr<Stage> m_stage;

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_stage = std::make_unique<Stage>(QStringLiteral("Gallery.qml"));
        m_stage->show({});
    }

    void everythingThatActsHasANameAndAnAction()
    {
        int acting = 0;
        QCOMPARE(unnamed(m_stage->page(), acting), QStringList());
        QCOMPARE(acting, 11 + 1 + 6 + 1 + 2 + 4 + 3); // boxes, can't say, sets, all, less and more, rows, three buttons
    }

    void everyTextOfThePageIsHeardOnce()
    {
        QStringList texts;
        for (QAccessibleInterface *node : walk(m_stage->page())) {
            if (node->role() == QAccessible::StaticText || node->role() == QAccessible::Heading
                || node->role() == QAccessible::AlertMessage)
                texts << node->text(QAccessible::Name);
        }

        for (const char *once : {"Wednesday", "4 March", "Saved 07:12", "0 no pain", "10 worst imaginable", "Wrist lowering, slow",
                 "Could not save set 3: the disk is full. Free some space and tick it again."})
            QCOMPARE(texts.count(QString::fromLatin1(once)), 1);
        QVERIFY(!texts.contains(QString()));
    }

    void theScaleSaysEachStepAndWhatItsEndsMean()
    {
        const auto boxes = withRole(walk(m_stage->find(QStringLiteral("pain"))), QAccessible::RadioButton);

        QCOMPARE(boxes.size(), std::size_t{11}); // "can't say" stands apart, as a check box
        QCOMPARE(boxes[0]->text(QAccessible::Name), QStringLiteral("0 out of 10"));
        QCOMPARE(boxes[0]->text(QAccessible::Description), QStringLiteral("no pain"));
        QCOMPARE(boxes[10]->text(QAccessible::Name), QStringLiteral("10 out of 10"));
        QCOMPARE(boxes[10]->text(QAccessible::Description), QStringLiteral("worst imaginable"));
        QVERIFY(boxes[3]->state().checked);
        QVERIFY(!boxes[4]->state().checked);
    }

    void anAssistivePressAnswersTheScale()
    {
        boxOf(*m_stage, QStringLiteral("7 out of 10"))->actionInterface()->doAction(QAccessibleActionInterface::pressAction());

        QCOMPARE(m_stage->of(QStringLiteral("page"), "pain").toInt(), 7);
    }

    void anAssistiveToggleTicksASet()
    {
        QAccessibleInterface *box = heard(*m_stage, QStringLiteral("set 3"));
        QCOMPARE(box->role(), QAccessible::CheckBox);
        QCOMPARE(box->text(QAccessible::Name), QStringLiteral("Wrist lowering, right, set 3 of 6"));
        QVERIFY(!box->state().checked);

        box->actionInterface()->doAction(QAccessibleActionInterface::toggleAction());

        QCOMPARE(m_stage->of(QStringLiteral("page"), "setsDone").toInt(), 3);
        QVERIFY(box->state().checked);
    }

    void anAssistivePressOnADisabledButtonDoesNothing()
    {
        QAccessibleInterface *button = heard(*m_stage, QStringLiteral("disabled"));
        QCOMPARE(button->text(QAccessible::Description), QStringLiteral("Unavailable"));

        button->actionInterface()->doAction(QAccessibleActionInterface::pressAction());

        QCOMPARE(m_stage->of(QStringLiteral("page"), "pressed").toInt(), 0);
    }

    void theHorizonSaysItsFactInWords()
    {
        QStringList said;
        for (QAccessibleInterface *node : withRole(walk(m_stage->page()), QAccessible::Graphic))
            said << node->text(QAccessible::Description);
        QCOMPARE(said, QStringList{QStringLiteral("2 of 6 sets")});
    }

    void aNumberFieldSaysItsUnitAndLimits()
    {
        const auto fields = withRole(walk(m_stage->find(QStringLiteral("load"))), QAccessible::EditableText);

        QCOMPARE(fields.size(), std::size_t{1});
        QCOMPARE(fields[0]->text(QAccessible::Name), QStringLiteral("Weight used, kg"));
        QCOMPARE(heard(*m_stage, QStringLiteral("load"))->text(QAccessible::Description), QStringLiteral("A number from 0 to 40."));
    }

    void aDialogIsNamedByItsQuestion()
    {
        QMetaObject::invokeMethod(m_stage->find(QStringLiteral("dialog")), "open");
        m_stage->picture();

        const auto dialogs = withRole(walk(&m_stage->window()), QAccessible::Dialog);
        QCOMPARE(dialogs.size(), std::size_t{1});
        QCOMPARE(dialogs[0]->text(QAccessible::Name), QStringLiteral("Erase this diary?"));
    }
};

MORROW_SUITE(tst_accessible)

} // namespace morrow::test

#include "tst_accessible.moc"
