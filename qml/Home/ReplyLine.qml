// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/** What the clinic wrote, marked as theirs. */
Item {
    id: root

    required property string head
    required property string reply

    implicitHeight: column.implicitHeight
    Accessible.role: Accessible.Grouping
    Accessible.name: root.head

    Rectangle {
        anchors.left: parent.left
        anchors.top: parent.top
        anchors.bottom: parent.bottom
        width: Theme.markWidth
        color: Theme.visit
    }
    ColumnLayout {
        id: column

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.leftMargin: Theme.markWidth + Theme.smallSpace
        spacing: 0

        Words {
            Layout.fillWidth: true
            rank: Words.Second
            text: root.head
        }
        Words {
            objectName: "reply"
            Layout.fillWidth: true
            text: root.reply
        }
    }
}
