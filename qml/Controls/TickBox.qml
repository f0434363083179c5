// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/**
 * One set to be done: a box with its number, or with the stroke of a pen when it is done.
 *
 * Holds no answer of its own: show \l done, listen to clicked().
 */
Target {
    id: root

    required property int number
    /** What is ticked, in full, for a screen reader: "Wrist lowering, right, set 3 of 3". */
    required property string spoken
    required property bool done

    implicitWidth: Math.max(Theme.setBox, root.implicitContentWidth + 2 * Theme.gap)
    implicitHeight: root.implicitWidth
    text: root.number
    fill: root.done || root.down ? Theme.accentSoft : Theme.sheet
    outline: root.done ? Theme.accent : Theme.line

    checkable: true
    ticked: root.done
    Accessible.name: root.spoken
    Accessible.onToggleAction: root.press()

    contentItem: Words {
        text: root.text
        rank: Words.Lead
        opacity: root.done ? 0 : 1
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        Accessible.ignored: true
    }

    PenStroke {
        anchors.centerIn: parent
        width: parent.width
        height: parent.height
        opacity: root.done ? 1 : 0

        Behavior on opacity {
            NumberAnimation {
                duration: Theme.motion
            }
        }
    }
}
