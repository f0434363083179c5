// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/** The stroke of a pen that says "done", drawn across the middle of a square. */
Item {
    id: root

    property color ink: Theme.accent

    component Line: Rectangle {
        required property point from
        required property point to

        readonly property real across: (to.x - from.x) * root.width
        readonly property real along: (to.y - from.y) * root.width

        x: from.x * root.width
        y: from.y * root.width - height / 2
        width: Math.hypot(across, along) + height / 2
        height: Theme.tinyGap
        radius: height / 2
        color: root.ink
        antialiasing: true
        transformOrigin: Item.Left
        rotation: Math.atan2(along, across) * 180 / Math.PI
    }

    implicitWidth: Theme.setBox
    implicitHeight: root.width

    Line {
        from: Qt.point(0.33, 0.47)
        to: Qt.point(0.44, 0.59)
    }
    Line {
        from: Qt.point(0.435, 0.61)
        to: Qt.point(0.66, 0.32)
    }
}
