// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import Morrow.Style

/**
 * Something to press: 48 pixels or more, acting on release, by touch, mouse, Space, Enter
 * or a screen reader's press, with a ring where the keyboard is.
 *
 * What all pressable controls are made of; a page uses those.
 */
AbstractButton {
    id: root

    property color fill: "transparent"
    property color outline: "transparent"
    /** Whether it is ticked, for a screen reader, where it is checkable; it never ticks itself. */
    property bool ticked: false

    function press() {
        if (root.enabled)
            root.clicked();
    }

    implicitWidth: Math.max(Theme.target, root.implicitContentWidth + root.leftPadding + root.rightPadding)
    implicitHeight: Math.max(Theme.target, root.implicitContentHeight + root.topPadding + root.bottomPadding)
    font.family: Theme.family
    font.pixelSize: Theme.bodySize

    // Qt 6.4 tells a screen reader its own role of such a control, whatever Accessible.role says:
    // a button, or a check box where it is checkable.
    checked: root.ticked
    Accessible.name: root.text
    //: What a screen reader says of a button that cannot be pressed now.
    Accessible.description: root.enabled ? "" : qsTr("Unavailable") // Qt 6.4 tells no such state
    Accessible.onPressAction: root.press()
    onToggled: root.checked = Qt.binding(() => root.ticked) // whoever owns the answer ticks it
    Keys.onReturnPressed: root.press()
    Keys.onEnterPressed: root.press()

    background: TargetGround {
        color: root.fill
        border.color: root.outline
        ringed: root.visualFocus
    }
}
