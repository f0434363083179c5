// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick

/**
 * The mark of what has the keyboard: a ring of accent outside its parent, with paper
 * between, so that it is seen on a filled box as well as on an empty one.
 *
 * It takes 4 of the 8 pixels between two controls.
 */
Rectangle {
    id: root

    required property bool shown

    anchors.fill: parent
    anchors.margins: -2 * Theme.ring
    visible: root.shown
    color: "transparent"
    radius: Theme.corner + 2 * Theme.ring
    border.color: Theme.accent
    border.width: Theme.ring

    Rectangle {
        anchors.fill: parent
        anchors.margins: Theme.ring
        color: "transparent"
        radius: Theme.corner + Theme.ring
        border.color: Theme.paper
        border.width: Theme.ring
    }
}
