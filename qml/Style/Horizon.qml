// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick

/**
 * A half disc on its line, as far along as the day or the course has come.
 *
 * Runs from edge to edge; the way of the disc keeps \l inset from both ends, so that it
 * starts under the text. Back after an undo it moves as quietly as forward.
 */
Item {
    id: root

    /** From 0 to 1; what is outside counts as the nearest of them. */
    required property real fraction
    /** The same fact: "2 of 6 sets". */
    required property string words
    property real inset: Theme.margin

    readonly property real reached: Math.max(0, Math.min(1, root.fraction)) * (root.width - 2 * root.inset - Theme.horizonDisc)

    implicitWidth: Theme.columnWidth
    implicitHeight: Theme.horizonDisc / 2 + Theme.horizonLine / 2
    Accessible.role: Accessible.Graphic
    Accessible.name: root.words
    Accessible.description: root.words

    Rectangle {
        id: whole

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Theme.horizonLine / 2 - height / 2
        height: Theme.edge
        color: Theme.line
    }

    Rectangle {
        anchors.left: parent.left
        anchors.leftMargin: root.inset
        anchors.bottom: parent.bottom
        width: disc.anchors.leftMargin - root.inset + disc.width / 2
        height: Theme.horizonLine
        color: Theme.accent
    }

    Item {
        id: disc

        anchors.left: parent.left
        anchors.leftMargin: root.inset + root.reached
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Theme.horizonLine / 2
        width: Theme.horizonDisc
        height: Theme.horizonDisc / 2
        clip: true // its lower half is below the horizon

        Behavior on anchors.leftMargin {
            NumberAnimation {
                duration: Theme.motion
            }
        }

        Rectangle {
            width: parent.width
            height: parent.width
            radius: width / 2
            color: Theme.accent
        }
    }
}
