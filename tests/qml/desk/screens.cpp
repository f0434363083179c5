// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/desk/screens.h"

#include <QCoreApplication>
#include <QQuickItem>

#include <functional>
#include <map>

namespace morrow::test {

namespace {

using Arrange = std::function<void(Sitting &, Stage &)>;

void look(Stage &stage, const char *ref)
{
    QMetaObject::invokeMethod(stage.page(), "look", Q_ARG(QString, QString::fromLatin1(ref)));
}

struct Screen
{
    std::function<void(Sitting &)> before; ///< while the desk is closed
    Arrange after;
};

const std::map<QString, Screen> &screens()
{
    static const auto caseload = [](Sitting &sitting) { sitting.addCaseload(); };
    static const std::map<QString, Screen> all{
        {QStringLiteral("first-run"), {[](Sitting &) {}, [](Sitting &, Stage &) {}}},
        {QStringLiteral("caseload"), {caseload, [](Sitting &, Stage &) {}}},
        {QStringLiteral("review"), {caseload, [](Sitting &, Stage &stage) { look(stage, "ref-ek"); }}},
        {QStringLiteral("review-long-name"), {caseload, [](Sitting &, Stage &stage) { look(stage, "ref-sato"); }}},
        {QStringLiteral("review-two"), {caseload, [](Sitting &, Stage &stage) { look(stage, "ref-two"); }}},
        {QStringLiteral("table"),
            {caseload,
                [](Sitting &sitting, Stage &stage) {
                    look(stage, "ref-ek");
                    sitting.session().review()->setSinceVisit(false);
                    stage.picture();
                    QObject *const button = stage.find(QStringLiteral("as table"));
                    if (button != nullptr)
                        QMetaObject::invokeMethod(button, "press");
                }}},
        {QStringLiteral("figures-of-a-day"),
            {caseload,
                [](Sitting &sitting, Stage &stage) {
                    look(stage, "ref-ek");
                    sitting.session().review()->setSinceVisit(false);
                    stage.picture();
                    for (const char *const named : {"as table", "day 8"}) {
                        if (QObject *const target = stage.find(QLatin1String(named)))
                            QMetaObject::invokeMethod(target, "press");
                        stage.picture();
                    }
                }}},
        {QStringLiteral("figures"),
            {caseload,
                [](Sitting &, Stage &stage) {
                    look(stage, "ref-ek");
                    stage.picture();
                    QObject *const sentence = stage.find(QStringLiteral("sentence 1"));
                    if (sentence != nullptr)
                        QMetaObject::invokeMethod(sentence, "press");
                }}},
        {QStringLiteral("files"),
            {[](Sitting &sitting) {
                 sitting.addPerson("ref-ek", {"Ek, Tomas", "2207", 1971}, bakersDiary(*CivilDay::parse("2026-04-20")));
             },
                [](Sitting &sitting, Stage &) {
                    sitting.takeIn(
                        {sitting.handOver("summary.json", "ref-ek", bakersDiary()), sitting.writeFile("holiday.json", "{\"a\":1}"),
                            sitting.handOver("from-a-neighbouring-clinic-2026-04-27-summary-of-the-diary.json", "ref-new", bakersDiary())});
                }}},
        {QStringLiteral("many-things"),
            {[](Sitting &sitting) {
                 sitting.addPerson("ref-many", {"Lindqvist-Achterberg, Wilhelmina Josephine", "", 2001}, diaryOfManyThings());
             },
                [](Sitting &, Stage &stage) { look(stage, "ref-many"); }}},
        {QStringLiteral("no-plan"),
            {[](Sitting &sitting) {
                 sitting.addPerson("ref-many", {"Ek, Tomas", "", {}}, diaryOfManyThings());
             },
                [](Sitting &sitting, Stage &stage) {
                    look(stage, "ref-many");
                    sitting.session().review()->setComplaintIndex(2);
                }}},
        {QStringLiteral("not-open"),
            {[](Sitting &sitting) {
                 std::filesystem::create_directories(sitting.folder());
                 static_cast<void>(sitting.writeFile("desk/letter.txt", "Dear colleague"));
             },
                [](Sitting &, Stage &) {}}},
    };
    return all;
}

} // namespace

QStringList deskScreens()
{
    QStringList names;
    for (const auto &[name, screen] : screens())
        names << name;
    return names;
}

DeskScreen::DeskScreen(const QString &name)
    : m_sitting(std::make_unique<Sitting>())
{
    const Screen &screen = screens().at(name);
    screen.before(*m_sitting);
    m_sitting->open();
    m_stage = std::make_unique<Stage>(QStringLiteral("qrc:/qt/qml/Morrow/Desk/DeskPage.qml"), m_sitting->properties());
    if (m_stage->page() == nullptr)
        return;
    m_stage->show({});
    screen.after(*m_sitting, *m_stage);
    m_stage->picture();
}

QQuickItem *DeskScreen::scrolling() const
{
    QQuickItem *list = nullptr;
    for (QQuickItem *item : visibleItems(m_stage->page())) {
        if (item->inherits("QQuickListView"))
            list = item;
        else if (item->inherits("QQuickFlickable") && item->property("contentHeight").toDouble() > item->height())
            return item;
    }
    return list;
}

} // namespace morrow::test
