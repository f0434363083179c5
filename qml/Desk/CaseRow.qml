// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Controls

/** One person of the caseload: the name, what tells them from others, and why to look. */
Target {
    id: root

    required property string birthYear
    required property string fileNumber
    required property string reason
    property bool chosen: false

    leftPadding: Theme.margin
    rightPadding: Theme.margin
    topPadding: Theme.gap
    bottomPadding: Theme.gap
    fill: root.chosen || root.down ? Theme.accentSoft : "transparent"

    Accessible.name: {
        let words = root.text;
        if (root.birthYear !== "")
            //: What a screen reader says of a person in the list: the name and the birth year, or the file number after them.
            words = qsTr("%1, %2").arg(words).arg(root.birthYear);
        return root.fileNumber === "" ? words : qsTr("%1, %2").arg(words).arg(root.fileNumber);
    }
    Accessible.description: root.reason
    Accessible.selectable: true
    Accessible.selected: root.chosen

    contentItem: Column {
        Flow {
            id: head

            width: parent.width
            spacing: Theme.gap

            Words {
                width: Math.min(implicitWidth, head.width)
                text: root.text
                font.bold: true
                Accessible.ignored: true
            }
            Words {
                width: Math.min(implicitWidth, head.width)
                visible: root.birthYear !== ""
                text: root.birthYear
                color: root.chosen ? Theme.ink : Theme.inkSoft
                Accessible.ignored: true
            }
        }
        Flow {
            id: reason

            width: parent.width

            Words {
                width: Math.min(implicitWidth, reason.width)
                rightPadding: Theme.gap
                rank: Words.Second
                text: root.reason
                color: Theme.ink
                Accessible.ignored: true
            }
            Words {
                width: Math.min(implicitWidth, reason.width)
                visible: root.fileNumber !== ""
                rank: Words.Second
                text: root.fileNumber
                color: root.chosen ? Theme.ink : Theme.inkSoft
                Accessible.ignored: true
            }
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
