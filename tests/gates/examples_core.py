# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""C++ that a rule must name, and C++ that looks alike and must pass. See examples.py for the marks."""

BREAKS = [
    # --- the arrows -------------------------------------------------------------------
    ("room", "core/base/a.cpp", '#include "model/entry.h"@@\n'),
    ("room", "core/model/a.cpp", '#include "base/result.h"\n#include "measures/measures.h"@@\n'),
    ("room", "core/measures/a.cpp", '#include "model/entry.h"\n\n#include "exchange/tables.h"@@\n#include "store/x.h"@@\n'),
    ("room", "core/store/a.cpp", '#include "measures/measures.h"@@\n#include "exchange/tables.h"@@\n'),
    ("room", "core/exchange/a.cpp", '#include <measures/measures.h>@@\n#  include "../store/diary_store.h"@@\n'),
    ("room", "core/exchange/b.cpp", '#include "actions/record.h"@@\n#include "report/page.h"@@\n'),
    ("room", "core/exchange/c.cpp", '#if __has_include("measures/measures.h")@@\n#endif\n'),
    ("room", "core/actions/a.cpp", '#include "report/page.h"@@\n'),
    ("room", "core/report/a.cpp", '#include "exchange/tables.h"@@\n#include "store/diary_store.h"@@\n'),
    ("room", "core/measures/b.cpp", '#include "Style/Theme.h"@@\n#include "batch/verbs.h"@@\n#include "support/suite.h"@@\n'),
    ("room", "core/model/b.cpp", '#include "core/store/diary_store.h"@@\n'),
    ("room", "qml/Style/a.cpp", '#include "base/result.h"@@\n'),
    ("room", "qml/Controls/a.cpp", '#include "model/entry.h"@@\n'),
    ("room", "qml/Figure/a.cpp", '#include "model/entry.h"\n#include "measures/measures.h"@@\n'),
    ("room", "qml/Charts/a.cpp", '#include "measures/measures.h"\n#include "actions/record.h"@@\n'),
    ("room", "qml/Home/a.cpp", '#include "store/diary_store.h"@@\n#include "exchange/tables.h"@@\n#include "Desk/caseload.h"@@\n'),
    ("room", "qml/Desk/a.cpp", '#include "Home/today.h"@@\n'),
    ("room", "app/home_main.cpp", '#include "store/diary_store.h"@@\n'),
    ("room", "app/reader_main.cpp", '#include "exchange/tables.h"\n#include "measures/measures.h"@@\n#include "batch/verbs.h"@@\n'),
    ("room", "core/planning/a.h", "@@#pragma once\n"),
    ("room", "core/loose.cpp", '@@#include "model/entry.h"\n'),
    ("room", "core/baseline/a.h", "@@#pragma once\n"),

    # --- libraries --------------------------------------------------------------------
    ("library", "core/exchange/a.cpp", "#include <SQLiteCpp/Database.h>@@\n#include <sqlite3.h>@@\n"),
    ("library", "tests/core/tst_measures.cpp", "#include <SQLiteCpp/Database.h>@@\n"),
    ("library", "app/desk_main.cpp", "#include <QtSql/QSqlQuery>@@\n#include <QSqlDatabase>@@\n"),
    ("library", "core/measures/a.cpp", "#include <simdjson.h>@@\n"),
    ("library", "qml/Home/a.cpp", "#include <QtCharts/QChartView>@@\n#include <QLineSeries>@@\n#include <QtGraphs/QBars3D>@@\n"
                                  "#include <QChart>@@\n#include <QChartView>@@\n#include <QValueAxis>@@\n"),
    ("library", "qml/Desk/a.cpp", "#include <QtDataVisualization/Q3DBars>@@\n"),
    ("library", "core/model/a.cpp", "#include <tl/expected.hpp>@@\n"),
    ("library", "core/store/a.cpp", "#include <openssl/evp.h>@@\n"),
    ("library", "app/a.cpp", "#include <QtNetwork>@@\n#include <QTcpSocket>@@@@(network)\n#include <QLocalSocket>@@@@(network)\n"
                             "#include <QLocalServer>@@@@(network)\n#include <QAbstractSocket>@@@@(network)\n"
                             "#include <QNetworkReply>@@@@(network)\n#include <QUdpSocket>@@@@(network)\n"
                             "#include <QSslKey>@@@@(network)\n#include <QHostInfo>@@@@(network)\n"
                             "#include <QDnsLookup>@@@@(network)\n#include <QHttpServer>@@@@(network)\n"
                             "#include <QHstsPolicy>@@@@(network)\n#include <QWebSocket>@@@@(network)\n"
                             "#include <QDtls>@@@@(network)\n#include <QOcspResponse>@@@@(network)\n"
                             "#include <QSctpSocket>@@@@(network)\n"
                             "#include <QtWebSockets>@@\n"),
    ("library", "qml/Home/b.cpp", "#include <sys/socket.h>@@\n#include <netinet/in.h>@@\n#include <arpa/inet.h>@@\n"
                                  "#include <netdb.h>@@\n#include <curl/curl.h>@@\n#include <sys/un.h>@@\n"),

    # --- Qt Core only -----------------------------------------------------------------
    ("qt-in-core", "core/model/a.h", "#include <QString>\n#include <QColor>@@\n#include <QtGui/QFont>@@\n#include <QWidget>@@\n"),
    ("qt-in-core", "core/store/a.cpp", "#include <qcolor.h>@@\n#include <QtCore/QColor>@@\n#include <QtCore/private/qzip_p.h>@@\n"),
    ("qt-in-core", "core/report/a.cpp", "#include <QPdfWriter>\n#include <QApplication>@@\n#include <QtWidgets>@@\n"),

    # --- clocks -----------------------------------------------------------------------
    ("clock", "core/model/a.cpp", """
        auto a = QDateTime::currentDateTimeUtc();@@
        auto b = QDate::currentDate();@@
        auto c = QTime::currentTime();@@
        QElapsedTimer d;@@
        QDeadlineTimer e(3);@@
        auto f = std::chrono::steady_clock::now();@@
        auto g = std::chrono::current_zone();@@
        auto h = std::chrono::zoned_time(g, f);@@
        auto i = std::time(nullptr);@@
        auto j = ::time(nullptr);@@
        auto k = time(NULL);@@
        auto k0 = time(0);@@
        auto k1 = time(nullptr);@@
        auto k2 = time( &x );@@
        auto l = clock();@@
        gettimeofday(&x, nullptr);@@
        clock_gettime(CLOCK_REALTIME, &x);@@
        timespec_get(&x, TIME_UTC);@@
        """),
    ("clock", "core/base/civil_day.cpp", "auto a = QDateTime::currentMSecsSinceEpoch();@@\n"),

    # --- locales ----------------------------------------------------------------------
    ("locale", "core/exchange/a.cpp", """
        QLocale a;@@
        setlocale(LC_ALL, "");@@
        auto b = newlocale(0, "", 0);@@
        uselocale(b);@@
        std::locale c;@@
        out.imbue(c);@@
        localeconv();@@
        nl_langinfo(CODESET);@@
        x.localeAwareCompare(y);@@
        QCollator d;@@
        strftime(x, 3, "%x", y);@@
        wcsftime(x, 3, y, z);@@
        out << std::put_time(x, y);@@
        ctime(x);@@
        asctime_r(x, y);@@
        auto e = strtod(x, y);@@
        auto f = std::stod(x);@@
        auto f0 = strtof(x, y);@@
        auto f1 = strtold(x, y);@@
        auto f2 = stof(x);@@
        auto f3 = stold(x);@@
        auto g = atof(x);@@
        sscanf(x, y, z);@@
        auto h = QTimeZone::systemTimeZoneId();@@
        localtime_r(x, y);@@
        mktime(x);@@
        tzset();@@
        x.toLocalTime();@@
        QDateTime i(x, y, Qt::LocalTime);@@
        """),
    ("locale", "core/report/a.cpp", "const QString a = QLocale().toString(x);@@\n"),
    ("locale", "core/base/clock.cpp", "const QLocale a;@@\n"),

    # --- words in core ----------------------------------------------------------------
    ("words", "core/model/a.cpp", """
        x = tr("Pain");@@
        x = qtTrId("pain");@@
        x = qsTr("Pain");@@
        x = qsTranslate("a", "Pain");@@
        x = qsTrId("pain");@@
        x = QCoreApplication::translate("a", "b");@@
        x = QT_TR_NOOP("Pain");@@
        x = QT_TRANSLATE_NOOP("a", "Pain");@@
        Q_DECLARE_TR_FUNCTIONS(A)@@
        """),
    ("words", "core/measures/a.cpp", """
        x = "Pain was lower";@@
        x = "Pain fell again";@@
        x = "reps fell again.";@@
        x = "reps fell again!";@@
        x = "reps fell again?";@@
        x = "rest for %1";@@
        x = "rest for {days}";@@
        x = u8R"(Take the next one)";@@
        x = LR"a(Take the next )" one)a";@@
        x = f("\\\"", "Take the next one");@@
        x = f('\\'', '"', "Take the next one");@@
        x = "reps under the plan";@@
        x = QStringLiteral("Rest now, "@@
                           "please");
        x = u"Load went up.";@@
        x = R"(Load fell,@@
               the week was light)";
        x = "no entry for %1 days";@@
        throw std::runtime_error("file cannot be read");@@
        """),
    ("words", "core/exchange/tables.cpp", 'qWarning() << "The row is wrong";@@\n'),
    ("words", "core/actions/a.h", '[[nodiscard]] inline const char *a = "The dose is high";@@\n'),

    # --- networks ---------------------------------------------------------------------
    ("network", "qml/Home/a.h", "QTcpSocket *a;@@\n"),
    ("network", "core/exchange/a.cpp", "class QNetworkReply;@@\nint a = socket(1, 2, 3);@@\nint b = ::connect(a, x, y);@@\n"),
    ("network", "app/a.cpp", """
        QUdpSocket *a;@@
        QAbstractSocket *b;@@
        QLocalServer *c;@@
        QHostAddress *d;@@
        QSslKey *e;@@
        QDnsLookup *f;@@
        QWebSocketServer *g;@@
        QWebSocket *h;@@
        getaddrinfo(x, y, z, w);@@
        socketpair(x, y, z, w);@@
        gethostbyname(x);@@
        inet_pton(x, y, z);@@
        ::bind(x, y, z);@@
        ::listen(x, y);@@
        ::accept(x, y, z);@@
        ::sendto(x);@@
        ::recvfrom(x);@@
        QHostInfo i;@@
        QDtlsClientVerifier j;@@
        QSctpServer k;@@
        QOcspResponse l;@@
        QHstsPolicy m;@@
        QHttpPart n;@@
        QWebEngineView *o;@@
        QWebView *p;@@
        """),

    # --- SQL --------------------------------------------------------------------------
    ("sql", "core/actions/a.cpp", """
        x = "SELECT id FROM entry WHERE day = ?";@@
        x = "  INSERT OR REPLACE INTO entry VALUES (1)";@@
        x = "UPDATE entry SET day = 3";@@
        x = "DELETE FROM entry";@@
        x = "CREATE TABLE a (b)";@@
        x = "DROP INDEX a";@@
        x = "PRAGMA user_version";@@
        x = "DROP TRIGGER a";@@
        x = "DROP VIEW a";@@
        x = "ALTER TABLE a";@@
        x = "CREATE TEMPORARY TABLE a (b)";@@
        x = "CREATE UNIQUE INDEX a";@@
        x = "CREATE VIRTUAL TABLE a";@@
        x = "BEGIN IMMEDIATE";@@
        x = "BEGIN EXCLUSIVE";@@
        x = "BEGIN DEFERRED";@@
        x = "BEGIN TRANSACTION";@@
        x = "BEGIN;";@@
        x = "COMMIT";@@
        x = "ROLLBACK";@@
        x = "VACUUM INTO ?";@@
        x = "ATTACH DATABASE ? AS b";@@
        x = "SAVEPOINT a";@@
        x = "REPLACE INTO a VALUES (1)";@@
        x = "select * from entry where day = ?";@@
        x = "delete from entry ";@@
        x = "insert into entry values (1)";@@
        x = "update entry set day = 1";@@
        x = "create table a (b)";@@
        x = "drop index a";@@
        x = "alter view a";@@
        x = "drop trigger a";@@
        x = "pragma user_version";@@
        x = R"(@@
            SELECT day
            FROM entry)";
        """),

    ("sql", "app/a.h", 'auto a = "pragma user_version";@@\n'),

    # --- names ------------------------------------------------------------------------
    ("name", "core/model/a.h", """
        class DiaryManager {};@@
        struct EntryInfo {};@@
        enum class PlanData { A };@@
        struct [[nodiscard]] Helpers {};@@
        using LoadUtil = int;@@
        union DoseCommon {};@@
        class QDiary; namespace morrow::util {}@@
        namespace plan_data {}@@
        namespace manager {}@@
        namespace helpers {}@@
        namespace common {}@@
        namespace info {}@@
        namespace TestHelper {}@@
        namespace TestUtil {}@@
        namespace TestInfo {}@@
        template <typename T> concept DoseInfo = true;@@
        enum LoadInfo {};@@
        enum struct LoadData {};@@
        """),
    ("name", "app/a.h", "class A;\nclass PlanManager;@@\n"),
    ("name", "qml/Home/a.h", "struct PlanCommon {};@@\n"),
    ("name", "tests/a.cpp", "class PlanUtil {};@@\n"),
    ("name", "core/model/entry_info.h", "@@#pragma once\n"),
    ("name", "core/model/managers.h", "@@#pragma once\n"),
    ("name", "core/model/plan_data.cpp", "@@\n"),
    ("name", "app/infos/a.txt", "@@\n"),
    ("name", "qml/utils/a.txt", "@@\n"),
    ("name", "core/base/util.cpp", "@@\n"),
    ("name", "app/batch_helpers.cpp", "@@\n"),
    ("name", "core/model/common/a.h", "@@\n"),
]

NEAR = [
    # each room takes what its row allows, its own files, and headers of the system
    ("core/model/a.cpp", '#include "model/entry.h"\n#include "entry.h"\n#include "base/result.h"\n#include <vector>\n'),
    ("core/actions/a.cpp", '#include "store/diary_store.h"\n#include "exchange/tables.h"\n#include "measures/measures.h"\n'),
    ("core/measures/a.cpp", '// #include "store/diary_store.h"\n/*\n#include "exchange/tables.h"\n*/\n'),
    ("core/measures/b.cpp", 'auto a = R"(\n)";\nauto b = "#include \\"store/x.h\\"";\n'),
    ("core/measures/d.cpp", '// goes on \\\n#include "store/x.h"\n/* never closed\n#include "store/x.h"\n'),
    ("app/batch/b.cpp", '#include "store/rows.h"\n'),
    ("qml/Home/a.cpp", '#include "Home/today.h"\n#include "Style/x.h"\n#include "actions/record.h"\n#include "a.moc"\n'),
    ("app/batch/a.cpp", '#include "batch/verbs.h"\n#include "verbs.h"\n#include "exchange/tables.h"\n#include "report/page.h"\n'),
    ("app/reader_main.cpp", '#include "exchange/tables.h"\n#include "base/result.h"\n#include "model/entry.h"\n'),
    ("tests/core/a.cpp", '#include "store/diary_store.h"\n#include "Home/today.h"\n#include "batch/verbs.h"\n#include <QTest>\n'),
    ("core/store/a.cpp", "#include <SQLiteCpp/Database.h>\n#include <sqlite3.h>\n"),
    ("tests/core/store/a.cpp", "#include <SQLiteCpp/Database.h>\n"),
    ("core/model/d.cpp", "#include <simdjson.h>\n"),
    ("core/store/c.cpp", "#include <simdjson.h>\n"),
    ("tests/bench/a.cpp", "#include <simdjson.h>\n#include <openssl/evp.h>\n#include <QTcpSocket>\n"),
    ("core/base/sha256.cpp", "#include <openssl/evp.h>\n"),
    ("tests/faults/a.cpp", "#include <sqlite3.h>\nauto a = \"SELECT 1\";\n"),
    ("core/exchange/a.cpp", "#include <simdjson.h>\n#include <openssl/evp.h>\n#include <qrencode.h>\n#include <QTimeZone>\n"),
    ("qml/Charts/a.cpp", "#include <QtCharts/QLineSeries>\n#include <QColor>\n"),
    ("core/report/a.cpp", "#include <QPainter>\n#include <QtGui/QFont>\n#include <QtCore/QString>\nx = tr(\"The week was light.\");\n"),
    ("core/base/b.cpp", "#include <QtGlobal>\n#include <queue>\n#include <QtCore/QByteArray>\n"),
    # a clock may be read in one place, and a word in a comment or a text reads none
    ("core/base/clock.cpp", "auto a = QDateTime::currentDateTime();\nauto b = QTimeZone::systemTimeZone();\n"),
    ("core/model/b.cpp", """
        // QDateTime::currentDateTime() would move the day; std::time(nullptr) too
        const QTime time(9, 0);
        auto a = x.time() + y->time() + Clock::time(3) + clock.now();
        auto b = runtime(0), c = "QLocale";
        std::uint64_t d = 1'000'000; auto e = '"'; auto f = "std::locale"; auto g = 0x1'F;
        """),
    ("app/a.cpp", "auto a = QDateTime::currentDateTime();\nQLocale b;\nx = tr(\"The file is not a diary.\");\n"),
    ("core/exchange/fhir/narrative.cpp", "x = \"The week was light.\";\n"),
    ("core/exchange/fhir_narrative.cpp", "x = \"The week was light.\";\n"),
    ("core/measures/c.cpp", """
        // The pain of the morning after is the answer to the load of the day before.
        static_assert(a < b, "the scale must be in order");
        Q_ASSERT_X(a, "where", "the set must not be empty");
        [[deprecated("use the other one instead")]] void f();
        if (!a) qFatal("SHA-256 is not available");
        assert(a && "the set must not be empty");
        [[nodiscard("the answer is the point of it")]] int g();
        x = "id day slot set"; x = "entry 1"; x = "kg reps seconds hold";
        x = "https://example.org/the/way/to/go"; x = "T00:00:00Z"; x = "%1 %2 %3"; x = "Pain"; x = "Load %1 %2";
        x = "Morrow Diary Format";
        x.str(); attr("a"); out.tr1 = 1;
        """),
    ("core/store/b.cpp", "x = \"SELECT id FROM entry WHERE day IN (1) AND id NOT IN (2)\";\n"
                        "x = \" FROM entry as the one\"; x = \"WHERE day is not null\"; x = \" VALUES for the row\";\n"
                        "x = \" SET day to one\"; x = \" AND day is not null\"; x = \" ORDER BY day in turn\";\n"
                        "x = \"CREATE TABLE with the rest\"; x = \"pragma is for the store\";\n"),
    ("core/exchange/b.cpp", "x = \"BEGIN:VCALENDAR\"; x = \"UPDATED\"; // SELECT id FROM entry\nx = \"selected\"; x = \"COMMITTED\";\n"),
    ("app/b.cpp", "QObject::connect(a, b);\nconnect(a, b);\nx.socket(3);\nQSocketNotifier n(0);\nauto s = \"QTcpSocket\"; // QUdpSocket\n"
                  "model.bind(x); std::bind(x); Foo::connect(x);\n"),
    ("core/model/c.h", "class QFileInfo;\nstruct Information {};\nstruct Database {};\nauto data = x.data(); // class EntryInfo\n"
                       "enum class Kind { Data, Info };\nnamespace metadata {}\nvoid f_data();\nclass Plan : Info::Kept {};\n"),
    ("core/base/decimal_parts.cpp", ""),
]
