// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/home/home_screens.h"

#include <QFile>
#include <QQuickItem>

#include <functional>
#include <map>

namespace morrow::test {

namespace {

struct Screen
{
    Moment now = kMorning;
    std::function<void(Stay &)> before; ///< while the session is not open
    std::function<void(HomeScreen &)> after;
};

TodaySession *sessionAt(HomeScreen &screen, qsizetype complaint, qsizetype session)
{
    auto complaints = screen.stay().session().today()->complaints();
    auto sessions = complaints.at(&complaints, complaint)->sessions();
    return sessions.at(&sessions, session);
}

void report(HomeScreen &screen)
{
    screen.turnTo(2);
    screen.stay().session().safety()->report(QStringLiteral("New numbness, tingling or weakness"));
}

void leaveOneOut(HomeScreen &screen)
{
    screen.turnTo(1);
    VisitModel &visit = *screen.stay().session().visit();
    static_cast<void>(visit.ask(QStringLiteral("May I cycle to work again?")));
    auto questions = visit.questions();
    visit.takeBack(questions.at(&questions, 0));
    screen.stage().picture();
}

const std::map<QString, Screen> &screens()
{
    static const auto nothing = [](HomeScreen &) {};
    static const auto baker = [](Stay &stay) { stay.begin(bakerBefore(kMorning)); };
    static const std::map<QString, Screen> all{
        {QStringLiteral("first-run"), {kMorning, [](Stay &) {}, nothing}},
        {QStringLiteral("first-run-refused"),
            {kMorning, [](Stay &) {},
                [](HomeScreen &screen) {
                    const QString file = screen.stay().writeFile("a-letter-about-the-holiday-house-in-july.json", "Dear all");
                    screen.stay().session().openFiles({QUrl::fromLocalFile(file)});
                }}},
        {QStringLiteral("demo"), {kMorning, [](Stay &) {}, [](HomeScreen &screen) { screen.stay().session().openDemo(); }}},
        {QStringLiteral("today"), {kMorning, baker, nothing}},
        {QStringLiteral("today-answered"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    TodayModel &today = *screen.stay().session().today();
                    auto complaints = today.complaints();
                    today.check(complaints.at(&complaints, 0), 3);
                    today.tickAll(sessionAt(screen, 0, 0));
                    auto cards = sessionAt(screen, 0, 1)->cards();
                    auto rows = cards.at(&cards, 0)->rows();
                    auto sets = rows.at(&rows, 0)->sets();
                    today.tick(rows.at(&rows, 0), sets.at(&sets, 0));
                    today.rateDuring(sessionAt(screen, 0, 1), 4);
                }}},
        {QStringLiteral("first-day"), {kFirstMorning, [](Stay &stay) { stay.begin(bakerBefore(kFirstMorning)); }, nothing}},
        {QStringLiteral("all-done"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    screen.stay().session().today()->tickAll(sessionAt(screen, 0, 0));
                    screen.stay().session().today()->tickAll(sessionAt(screen, 0, 1));
                }}},
        {QStringLiteral("all-missed"),
            {kMorning,
                [](Stay &stay) {
                    std::vector<Entry> entries = bakerBefore(kMorning);
                    std::erase_if(entries, [](const Entry &entry) { return entry.author != Author::Clinic; });
                    stay.begin(entries);
                },
                [](HomeScreen &screen) { screen.stay().session().today()->setYesterday(true); }}},
        {QStringLiteral("limit"), {kMorning, baker, [](HomeScreen &screen) { screen.press(QStringLiteral("is it all right")); }}},
        {QStringLiteral("opened-nothing"), {kMorning, baker, [](HomeScreen &screen) { screen.press(QStringLiteral("sets")); }}},
        {QStringLiteral("opened-sets"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    screen.stay().session().today()->tickAll(sessionAt(screen, 0, 1));
                    screen.stage().picture();
                    screen.press(QStringLiteral("sets"));
                }}},
        {QStringLiteral("any-days"), {kMorning, [](Stay &stay) { stay.begin(diaryOfAnyThreeDays()); }, nothing}},
        {QStringLiteral("opened-week"),
            {kMorning, [](Stay &stay) { stay.begin(diaryOfAnyThreeDays()); },
                [](HomeScreen &screen) { screen.press(QStringLiteral("week")); }}},
        {QStringLiteral("skipped"),
            {kMorning, baker,
                [](HomeScreen &screen) { screen.stay().session().today()->skip(sessionAt(screen, 0, 1), QStringLiteral("too sore")); }}},
        {QStringLiteral("waiting"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    report(screen);
                    screen.stay().session().safety()->called(false);
                    screen.turnTo(0);
                }}},
        {QStringLiteral("no-plan"), {kMorning, [](Stay &stay) { stay.begin({}); }, nothing}},
        {QStringLiteral("many-things"), {kMorning, [](Stay &stay) { stay.begin(diaryOfManyThings()); }, nothing}},
        {QStringLiteral("long-names"), {kMorning, [](Stay &stay) { stay.begin(diaryOfLongNames()); }, nothing}},
        {QStringLiteral("visit"), {kMorning, baker, [](HomeScreen &screen) { screen.turnTo(1); }}},
        {QStringLiteral("visit-listed"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    screen.turnTo(1);
                    screen.stay().session().visit()->setListed(true);
                }}},
        {QStringLiteral("visit-saved"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    screen.turnTo(1);
                    static_cast<void>(screen.stay().session().visit()->ask(QStringLiteral("May I cycle to work again?")));
                    screen.stay().session().visit()->save();
                }}},
        {QStringLiteral("visit-left-out"), {kMorning, baker, leaveOneOut}},
        {QStringLiteral("opened-left-out"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    leaveOneOut(screen);
                    screen.press(QStringLiteral("left out"));
                }}},
        {QStringLiteral("signs"), {kMorning, baker, [](HomeScreen &screen) { screen.turnTo(2); }}},
        {QStringLiteral("signs-open"),
            {kMorning, baker,
                [](HomeScreen &screen) {
                    report(screen);
                    screen.stay().session().safety()->called(false);
                }}},
        {QStringLiteral("stop"), {kMorning, baker, report}},
        {QStringLiteral("not-open"),
            {kMorning,
                [](Stay &stay) {
                    std::filesystem::create_directories(stay.folder());
                    QFile file(QString::fromStdString((stay.folder() / "diary.db").string()));
                    static_cast<void>(file.open(QIODevice::WriteOnly));
                    file.write("Dear all, this is no diary but a letter that was saved under its name by mistake.");
                },
                nothing}},
    };
    return all;
}

} // namespace

QStringList homeScreens()
{
    QStringList names;
    for (const auto &[name, screen] : screens())
        names << name;
    return names;
}

HomeScreen::HomeScreen(const QString &name)
{
    const Screen &screen = screens().at(name);
    m_stay = std::make_unique<Stay>(screen.now);
    screen.before(*m_stay);
    m_stay->open();
    m_stage = std::make_unique<Stage>(QStringLiteral("qrc:/qt/qml/Morrow/Home/HomePage.qml"), m_stay->properties());
    if (m_stage->page() == nullptr)
        return;
    m_stage->show({});
    screen.after(*this);
    m_stage->picture();
}

bool HomeScreen::press(const QString &objectName)
{
    QObject *const control = m_stage->find(objectName);
    const bool pressed = control != nullptr && QMetaObject::invokeMethod(control, "press");
    m_stage->picture();
    return pressed;
}

void HomeScreen::turnTo(int view)
{
    QMetaObject::invokeMethod(m_stage->page(), "show", Q_ARG(int, view));
    m_stage->picture();
}

QQuickItem *HomeScreen::scrolling() const
{
    QQuickItem *last = nullptr;
    for (QQuickItem *item : visibleItems(m_stage->page())) {
        if (item->inherits("QQuickFlickable") && item->property("contentHeight").toDouble() > item->height())
            last = item;
    }
    return last;
}

} // namespace morrow::test
