// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/** An upright line of dots, or where \l dotted is false a plain one. */
Item {
    id: root

    required property color color
    property bool dotted: true

    implicitWidth: Theme.ring
    clip: true

    Rectangle {
        anchors.fill: parent
        visible: !root.dotted
        color: root.color
    }
    Column {
        visible: root.dotted
        spacing: Theme.ring

        Repeater {
            model: root.dotted ? Math.ceil(root.height / (2 * Theme.ring)) : 0

            delegate: Rectangle {
                width: Theme.ring
                height: Theme.ring
                color: root.color
            }
        }
    }
}
