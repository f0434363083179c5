// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// A window to drag a file out of, as a file manager is: drag_source FILE.

#include <QDrag>
#include <QGuiApplication>
#include <QMimeData>
#include <QMouseEvent>
#include <QPainter>
#include <QRasterWindow>
#include <QTimer>
#include <QUrl>

namespace {

class Source final : public QRasterWindow
{
public:
    explicit Source(const QString &file)
        : m_file(QUrl::fromLocalFile(file))
    {
        resize(200, 80);
        setTitle(QStringLiteral("drag source"));
    }

protected:
    void paintEvent(QPaintEvent *) override { QPainter(this).fillRect(0, 0, width(), height(), Qt::white); }

    void mouseMoveEvent(QMouseEvent *event) override
    {
        if (!(event->buttons() & Qt::LeftButton))
            return;
        auto *const drag = new QDrag(this);
        auto *const data = new QMimeData;
        data->setUrls({m_file});
        drag->setMimeData(data);
        drag->exec(Qt::CopyAction);
        // The target asks for the data once it was dropped.
        QTimer::singleShot(2000, qApp, &QCoreApplication::quit);
    }

private:
    QUrl m_file;
};

} // namespace

int main(int argc, char **argv)
{
    const QGuiApplication app(argc, argv);
    Source source(QGuiApplication::arguments().value(1));
    source.show();
    return QGuiApplication::exec();
}
