// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/**
 * One row of a list that opens something: who or what, a word beside it, a line below.
 */
Target {
    id: root

    /** Stands after \l text in second rank: a birth year, a day. */
    property string beside
    property string below
    property bool chosen: false
    /** Whether \l text is what is looked for in the list, and so stands out. */
    property bool emphasis: true

    implicitWidth: Theme.columnWidth
    leftPadding: Theme.margin
    rightPadding: Theme.margin
    topPadding: Theme.gap
    bottomPadding: Theme.gap
    fill: root.chosen || root.down ? Theme.accentSoft : "transparent"

    //: What a screen reader says of a row in a list: its title and the word beside it.
    Accessible.name: root.beside === "" ? root.text : qsTr("%1, %2").arg(root.text).arg(root.beside)
    Accessible.description: root.below
    Accessible.selectable: true
    Accessible.selected: root.chosen

    contentItem: ColumnLayout {
        spacing: 0

        RowLayout {
            spacing: Theme.gap

            Words {
                Layout.fillWidth: true
                Layout.maximumWidth: root.beside === "" ? Infinity : Math.ceil(implicitWidth)
                Layout.alignment: Qt.AlignBaseline
                text: root.text
                font.bold: root.emphasis
                Accessible.ignored: true
            }
            Words {
                Layout.alignment: Qt.AlignBaseline
                visible: root.beside !== ""
                text: root.beside
                color: root.chosen ? Theme.ink : Theme.inkSoft
                Accessible.ignored: true
            }
            Item {
                Layout.fillWidth: true
                visible: root.beside !== ""
            }
        }
        Words {
            Layout.fillWidth: true
            visible: root.below !== ""
            rank: Words.Second
            text: root.below
            color: Theme.ink
            Accessible.ignored: true
        }
    }

    Rectangle {
        anchors.left: parent.left
        anchors.top: parent.top
        anchors.bottom: parent.bottom
        visible: root.chosen
        width: Theme.markWidth
        color: Theme.accent
    }
}
