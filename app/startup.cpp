// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "startup.h"

#include <QCommandLineParser>
#include <QCoreApplication>
#include <QDir>
#include <QGuiApplication>
#include <QPalette>
#include <QQmlComponent>
#include <QScreen>
#include <QStandardPaths>
#include <QTimer>

#include <chrono>
#include <cstdio>
#include <cstdlib>

namespace morrow {

namespace {

/// Begins at a given moment and runs with the machine's monotonic clock.
class RunningClock final : public Clock
{
public:
    explicit RunningClock(const Moment &start)
        : m_start(start)
    {
    }

    [[nodiscard]] Moment now() const override
    {
        const auto passed = std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - m_made);
        return {m_start.utcMs + passed.count(), m_start.offsetMinutes};
    }

private:
    Moment m_start;
    std::chrono::steady_clock::time_point m_made = std::chrono::steady_clock::now();
};

[[noreturn]] void refuse(const QString &why)
{
    std::fprintf(stderr, "%s: %s\n", qPrintable(QCoreApplication::applicationName()), qPrintable(why));
    std::exit(2);
}

QSize readSize(const QString &text)
{
    const QStringList parts = text.split(QLatin1Char('x'));
    bool isWide = false;
    bool isHigh = false;
    const QSize size(parts.value(0).toInt(&isWide), parts.value(1).toInt(&isHigh));
    if (parts.size() != 2 || !isWide || !isHigh || size.width() < 320 || size.height() < 320 || size.width() > 8192 || size.height() > 8192)
        refuse(QStringLiteral("--window needs a size such as 360x740, at least 320x320."));
    return size;
}

/// Theme, which only QML knows by name.
QObject *themeOf(QQmlEngine &engine)
{
    QQmlComponent asking(&engine);
    asking.setData("import QtQml\nimport Morrow.Style\nQtObject { readonly property QtObject theme: Theme }", QUrl());
    const std::unique_ptr<QObject> asked(asking.create());
    return asked ? asked->property("theme").value<QObject *>() : nullptr;
}

} // namespace

void prepareDrawing()
{
    // Pages of text and boxes need no graphics card: drawn by the processor they look the same
    // on every machine, and the first frame comes sooner.
    if (qEnvironmentVariableIsEmpty("QT_QUICK_BACKEND"))
        QQuickWindow::setGraphicsApi(QSGRendererInterface::Software);
}

StartOptions readOptions(const Program &program)
{
    QCoreApplication::setApplicationName(program.name);
    QGuiApplication::setDesktopFileName(program.name);
    QCommandLineParser parser;
    parser.setApplicationDescription(program.summary);
    const QCommandLineOption help = parser.addHelpOption();
    const QCommandLineOption store({QStringLiteral("store")}, QStringLiteral("Keep everything in DIR."), QStringLiteral("DIR"));
    const QCommandLineOption now(
        {QStringLiteral("now")}, QStringLiteral("Take MOMENT (RFC 3339) for the present."), QStringLiteral("MOMENT"));
    const QCommandLineOption since({QStringLiteral("since")},
        QStringLiteral("Print when the first frame is seen, counted from MS of the monotonic clock."), QStringLiteral("MS"));
    const QCommandLineOption theme({QStringLiteral("theme")}, QStringLiteral("light, dark or contrast."), QStringLiteral("NAME"));
    const QCommandLineOption text({QStringLiteral("text")}, QStringLiteral("Text size, 100 to 200 percent."), QStringLiteral("PERCENT"));
    const QCommandLineOption motion({QStringLiteral("less-motion")}, QStringLiteral("Nothing fades or moves."));
    const QCommandLineOption window({QStringLiteral("window")}, QStringLiteral("Size of the window, 360x740."), QStringLiteral("SIZE"));
    const QCommandLineOption demo({QStringLiteral("demo")}, QStringLiteral("Show the diary of somebody invented."));
    const QCommandLineOption picture(
        {QStringLiteral("picture")}, QStringLiteral("Draw the window into FILE, a PNG, and end."), QStringLiteral("FILE"));
    const QCommandLineOption person({QStringLiteral("person")}, QStringLiteral("Open the review of somebody."), QStringLiteral("REF"));
    parser.addOptions({store, now, since, theme, text, motion, window, picture});
    if (program.hasDemo)
        parser.addOption(demo);
    if (program.hasPersons)
        parser.addOption(person);
    parser.addPositionalArgument(QStringLiteral("FILES"), QStringLiteral("Files to open."), QStringLiteral("[FILES...]"));
    if (!parser.parse(QCoreApplication::arguments()))
        refuse(parser.errorText());
    if (parser.isSet(help)) {
        std::fputs(qPrintable(parser.helpText()), stdout);
        std::exit(0);
    }

    StartOptions options;
    options.files = parser.positionalArguments();
    options.isDemo = program.hasDemo && parser.isSet(demo);
    options.lessMotion = parser.isSet(motion) || parser.isSet(picture);
    options.picture = parser.value(picture);
    if (program.hasPersons)
        options.person = parser.value(person);
    const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    const QString folder = parser.isSet(store) ? parser.value(store) : data + QLatin1Char('/') + program.name;
    options.folder = folder.toStdString();
    if (parser.isSet(now)) {
        options.now = parseMoment(parser.value(now).toStdString());
        if (!options.now)
            refuse(QStringLiteral("--now needs a moment such as 2026-03-02T07:14:05+01:00."));
    }
    if (parser.isSet(since))
        options.since = parser.value(since).toLongLong();
    if (parser.isSet(theme)) {
        const qsizetype mode
            = QStringList{QStringLiteral("light"), QStringLiteral("dark"), QStringLiteral("contrast")}.indexOf(parser.value(theme));
        if (mode < 0)
            refuse(QStringLiteral("--theme needs light, dark or contrast."));
        options.mode = static_cast<int>(mode);
    }
    if (parser.isSet(text)) {
        options.textPercent = parser.value(text).toInt();
        if (options.textPercent < 100 || options.textPercent > 200)
            refuse(QStringLiteral("--text needs a number from 100 to 200."));
    }
    if (parser.isSet(window))
        options.size = readSize(parser.value(window));
    return options;
}

QList<QUrl> localFiles(const QStringList &files)
{
    QList<QUrl> urls;
    for (const QString &file : files)
        urls << QUrl::fromLocalFile(QDir::current().absoluteFilePath(file));
    return urls;
}

std::unique_ptr<Clock> clockFrom(const std::optional<Moment> &start)
{
    if (start)
        return std::make_unique<RunningClock>(*start);
    return systemClock();
}

void dress(QQmlEngine &engine, QQuickWindow &window, const StartOptions &options)
{
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
    QObject *const theme = themeOf(engine);
    if (!theme)
        return;
    const QPalette palette = QGuiApplication::palette();
    const bool isDark = palette.color(QPalette::WindowText).lightness() > palette.color(QPalette::Window).lightness();
    theme->setProperty("mode", options.mode.value_or(isDark ? 1 : 0));
    theme->setProperty("textPercent", options.textPercent);
    theme->setProperty("lessMotion", options.lessMotion);
    const auto fit = [theme, &window] { theme->setProperty("pixelRatio", window.effectiveDevicePixelRatio()); };
    fit();
    QObject::connect(&window, &QWindow::screenChanged, theme, fit);
}

void watch(QQuickWindow &window, const StartOptions &options)
{
    if (options.size)
        window.resize(*options.size);
    const auto drawn = [since = options.since, picture = options.picture, &window] {
        if (since) {
            const auto now = std::chrono::steady_clock::now().time_since_epoch();
            std::printf("first frame %lld ms\n",
                static_cast<long long>(std::chrono::duration_cast<std::chrono::milliseconds>(now).count() - *since));
            std::fflush(stdout);
        }
        if (!picture.isEmpty())
            QTimer::singleShot(
                0, &window, [picture, &window] { QCoreApplication::exit(window.grabWindow().save(picture, "PNG") ? 0 : 1); });
    };
    QObject::connect(&window, &QQuickWindow::frameSwapped, &window, drawn, Qt::SingleShotConnection);
}

} // namespace morrow
