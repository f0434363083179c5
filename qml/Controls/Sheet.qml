// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/**
 * One question or one exercise: its title in words, a sentence, and what answers it.
 *
 * Below 420 pixels it runs from edge to edge. Its children stand below each other.
 */
Item {
    id: root

    required property string title
    /** The dose, say; left out where it is empty. */
    property string sentence

    default property alias content: column.data

    readonly property bool edgeToEdge: root.width < Theme.narrow

    implicitWidth: Theme.columnWidth
    implicitHeight: column.implicitHeight + 2 * Theme.margin
    Accessible.role: Accessible.Grouping
    Accessible.name: root.title

    Rectangle {
        anchors.fill: parent
        // Its side edges lie outside, so that only the rules above and below are seen.
        anchors.leftMargin: root.edgeToEdge ? -2 * Theme.corner : 0
        anchors.rightMargin: anchors.leftMargin
        color: Theme.sheet
        radius: root.edgeToEdge ? 0 : Theme.corner
        border.color: Theme.hair
        border.width: Theme.hairWidth
    }

    ColumnLayout {
        id: column

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.margins: Theme.margin
        spacing: Theme.smallSpace

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: root.title
                font.bold: true
                Accessible.role: Accessible.Heading
            }
            Words {
                Layout.fillWidth: true
                visible: root.sentence !== ""
                text: root.sentence
                color: Theme.inkSoft
            }
        }
    }
}
