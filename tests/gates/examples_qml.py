# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""QML that a rule must name, and QML that looks alike and must pass. See examples.py for the marks."""

BREAKS = [
    ("room", "qml/Style/A.qml", "import QtQuick\nimport Morrow.Controls@@\n"),
    ("room", "qml/Controls/A.qml", "import Morrow.Style\nimport Morrow.Charts 1.0@@\n"),
    ("room", "qml/Figure/A.qml", 'import "../Controls"@@\nItem {}\n'),
    ("room", "qml/Charts/A.qml", "import Morrow.Controls@@\n"),
    ("room", "qml/Home/A.qml", "import Morrow.Desk as Desk@@\nimport Morrow.Nowhere@@\n"),
    ("room", "qml/Desk/A.qml", 'import "qrc:/qt/qml/Morrow/Home"@@\n'),
    ("room", "qml/Desk/a.js", '.import "../Home/words.js" as Words@@\n'),
    ("room", "qml/Words/A.qml", "@@import QtQuick\n"),

    ("library", "qml/Home/A.qml", "import QtCharts@@\n"),
    ("library", "qml/Home/B.qml", "import QtNetwork@@\nimport QtWebSockets 1.1@@\nimport QtWebEngine@@\n"),
    ("library", "tests/qml/tst_a.qml", "import QtCharts@@\n"),

    ("controls", "qml/Controls/A.qml", "import QtQuick.Controls@@\n"),
    ("controls", "qml/Home/A.qml", "import QtQuick.Controls 2.15 as C@@\n"),
    ("controls", "qml/Home/B.qml", "import QtQuick.Controls.Material@@\n"),
    ("controls", "tests/qml/tst_a.qml", "import QtTest\nimport QtQuick.Controls@@\n"),

    ("network", "qml/Home/A.qml", """
        Item {
            function f() { new XMLHttpRequest(); }@@
            WebSocket { id: a }@@
            WebEngineView { id: b }@@
            WebSocketServer { id: c }@@
            WebView { id: d }@@
            Image { source: "https://example.org/a.png" }@@
            Image { source: "ftp://example.org/a.png" }@@
            Image { source: "wss://example.org/a.png" }@@
            FontLoader { source: Qt.url('http://example.org/a.ttf') }@@
        }
        """),
    ("network", "qml/Home/a.js", "new XMLHttpRequest();@@\n"),
    ("network", "qml/Home/a.mjs", "new XMLHttpRequest();@@\n"),
    ("network", "app/A.qml", "WebView {}@@\n"),
    ("controls", "qml/Home/a.js", ".import QtQuick.Controls 2.15 as C@@\n"),
    ("controls", "qml/Home/a.mjs", ".import QtQuick.Controls 2.15 as C@@\n"),
    ("room", "qml/Home/a.mjs", ".import Morrow.Desk 1.0 as D@@\n"),
    ("sql", "qml/Home/a.js", 'x = "SELECT id";@@\n'),
    ("sql", "qml/Home/a.mjs", 'x = "SELECT id";@@\n'),
    ("sql", "qml/Home/A.qml", 'Item { property string a: "SELECT id FROM entry" }@@\n'),

    ("colour", "qml/Home/A.qml", """
        Rectangle {
            color: "#ff0000"@@
            border.color: "red"@@
            property color mark: "teal"@@
            readonly property var list: ["#abc"]@@
            function f() { root.color = "blue"; }@@
            Rectangle { color: root.ill ? "crimson" : Theme.ink }@@
            gradient: Gradient { GradientStop { color: Qt.rgba(1, 0, 0, 1) } }@@
            Text { textFormat: Text.PlainText; color: Qt.lighter(Theme.ink) }@@
            readonly property var all: [
                Qt.hsla(1, 0, 0, 1),@@
                Qt.hsva(1, 0, 0, 1),@@
                Qt.color(root.name),@@
                Qt.darker(Theme.ink),@@
                Qt.tint(Theme.ink, Theme.paper),@@
                Qt.alpha(Theme.ink, 0.5),@@
            ]
            function g() { return [/"/, root.list = ["#123"]]; }@@
            property string single: '#123456'@@
            property string tick: `#123456`@@
        }
        """),
    ("colour", "qml/Style/Other.qml", 'Item { property color a: "#fff" }@@\n'),
    ("colour", "qml/Figure/pose_item.cpp", """
        QColor a("red");@@
        auto b = QColor(1, 2, 3);@@
        auto c = QColor{1, 2, 3};@@
        auto d = QColorConstants::Red;@@
        """),

    ("colour", "qml/Figure/pose_item.h", "QColor a{1, 2, 3};@@\n"),

    ("size", "qml/Home/A.qml", """
        Rectangle {
            width: 48@@
            implicitHeight: 40.5@@
            radius: 4@@
            width: parent.width; spacing: 8@@
            anchors.baselineOffset: 3@@
            Item { visible: root.height > 600 }@@
            Image { sourceSize: Qt.rect(24, 24) }@@
            rightInset: root.wide && 24@@
            border.width: 1@@
            anchors.margins: 12@@
            anchors { leftMargin: 3 }@@
            anchors.horizontalCenterOffset: 2@@
            Layout.preferredWidth: parent.width - 12@@
            font.pixelSize: 14@@
            font { pointSize: 12 }@@
            x: 7@@
            height: Math.max(48, child.height)@@
            leftPadding: root.wide ? 24 : Theme.gap@@
            topInset: root.wide@@
                ? 24 : Theme.gap
            implicitWidth: 48 * 2@@
            property int rowHeight: 32@@
            readonly property real columnWidth: 120@@
            Item { visible: root.width < 600 }@@
            function f() { item.width = 90; }@@
            Image { sourceSize: Qt.size(24, 24) }@@
            Image { sourceSize: Qt.size(width, 24) }@@
            y: -3@@
            // width: 12
        }
        """),

    ("plain-text", "qml/Home/A.qml", """
        Item {
            Text { text: root.note }@@
            Label {@@
                text: root.note
                Item { property int textFormat: Text.PlainText }
            }
            T.Text { text: "a" }@@
            contentItem: Text {@@
                // textFormat: Text.PlainText
                text: "textFormat: Text.PlainText"
            }
            component Words: Text { id: words }@@
            Words { textFormat: Text.StyledText }@@
            Text { textFormat: Text.RichText }@@
            Text { textFormat: Text.PlainText; Text { id: inner }@@
            }
        }
        """),
    ("plain-text", "app/A.qml", "import QtQuick\n\nText {@@\n}\n"),

    ("name", "qml/Home/A.qml", """
        Item {
            component DialogManager: Item {}@@
            component DialogHelper: Item {}@@
            component DialogUtil: Item {}@@
            component DialogCommon: Item {}@@
            component DialogData: Item {}@@
            component DialogInfos: Item {}@@
        }
        """),
    ("name", "qml/Home/PageManager.qml", "@@import QtQuick\n"),
    ("name", "qml/Home/PageUtil.qml", "@@import QtQuick\n"),
    ("name", "qml/Home/PageCommon.qml", "@@import QtQuick\n"),
    ("name", "qml/Home/PageData.qml", "@@import QtQuick\n"),
    ("name", "qml/Home/PageInfo.qml", "@@import QtQuick\n"),
    ("name", "qml/Home/PageHelper.qml", "@@import QtQuick\n"),
]

NEAR = [
    ("qml/Home/A.qml", "import QtQuick\nimport QtQuick.Controls.Basic\nimport QtQuick.Layouts\nimport Morrow.Style\n"
                       "import Morrow.Controls\nimport Morrow.Charts\nimport Morrow.Figure\nimport Morrow.Home\nimport \"pages\"\n"),
    ("qml/Home/B.qml", "// import Morrow.Desk\n/* import QtQuick.Controls\nimport QtCharts */\nItem {}\n"),
    ("qml/Charts/A.qml", "import QtCharts\nimport Morrow.Style\n"),
    ("tests/qml/tst_a.qml", "import Morrow.Home\nimport Morrow.Desk\nItem { width: 360; Text { color: \"red\" } }\n"),
    ("qml/Style/Theme.qml", "pragma Singleton\nItem { property color ink: \"#101010\"; property int gap: 8; width: 12\n"
                            "    property size icon: Qt.size(24, 24)\n"
                            "    property color pale: Qt.rgba(1, 1, 1, 1); visible: width < 600 }\n"),
    ("qml/Home/C.qml", """
        Rectangle {
            color: "transparent"
            border.color: Theme.line // not "#ff0000"
            Rectangle { color: root.mode === "dark" ? Theme.ink : Theme.sheet }
            property string name: "red"
            property string hint: "#1 of 3"
            function f() { return /["'#]/.test(name) ? "#" : 'it\\'s'; }
            Accessible.name: "a"
        }
        """),
    ("qml/Home/D.qml", """
        Item {
            width: parent.width
            height: 0
            implicitWidth: -1
            spacing: Theme.gap * 2
            radius: width / 2
            implicitHeight: (root.count - 1) * Theme.gap + 0.5 * Theme.target
            leftPadding: root.count > 3 ? Theme.gap : 0
            x: Math.round(parent.width / 3)
            Layout.fillWidth: true
            Layout.columnSpan: 2
            property int highest: 10
            opacity: 0.5
            property list<int> widths: [1, 2]
            topPadding: Theme.gaps[2]
            Accessible.description: "width: 48"
            visible: root.count < 600
            rightPadding: root.index % 2 === 0 ? Theme.gap : -1
            leftInset: 3 < root.count ? Theme.gap : 0
            topInset: root.count < 3 ? Theme.gap : 0
            bottomInset: root.count === 3 ? Theme.gap : 0
            rightInset: 3 === root.count ? Theme.gap : 0
            bottomPadding: 3 !== root.count ? Theme.gap : 0
            topMargin: 3 > root.count ? Theme.gap : 0
            leftMargin: 2 * Theme.gap
            rightMargin: 100 / root.count
            bottomMargin: Theme.gap * (root.count + 7)
            baselineOffset: parent.width / (root.count + 1)
            maximumWidth: 7 % root.count
            minimumWidth: root.index % 2
            property int tableWidths: Theme.gap
        }
        """),
    ("qml/Home/E.qml", """
        Item {
            // Text { }
            Text {
                font { bold: true }
                textFormat: Text.PlainText
            }
            Q.Label { textFormat: Q.Text.PlainText; horizontalAlignment: Text.AlignHCenter }
            TextField {}
            TextInput {}
            RichLabel {}
            property string a: "Text { }"
        }
        """),
    ("qml/Home/F.qml", "Item { property string a: qsTr(\"select a day from the list\")\n    Image { source: \"qrc:/a.png\" }\n"
                       "    property string source: \"see https://example.org\" // XMLHttpRequest\n    property string b: \"WebSocket\" }\n"),
]
