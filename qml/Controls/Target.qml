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
    /** What a screen reader calls it; set here, not as Accessible.role. */
    property int spokenRole: Accessible.Button

    function press() {
        if (root.enabled)
            root.clicked();
    }

    implicitWidth: Math.max(Theme.target, root.implicitContentWidth + root.leftPadding + root.rightPadding)
    implicitHeight: Math.max(Theme.target, root.implicitContentHeight + root.topPadding + root.bottomPadding)
    font.family: Theme.family
    font.pixelSize: Theme.bodySize

    Accessible.role: root.spokenRole
    Accessible.onRoleChanged: {
        // Qt 6.4 calls every such control a button when it is complete or a screen reader comes.
        if (root.Accessible.role !== root.spokenRole)
            root.Accessible.role = root.spokenRole;
    }
    Accessible.name: root.text
    //: What a screen reader says of a button that cannot be pressed now.
    Accessible.description: root.enabled ? "" : qsTr("Unavailable") // Qt 6.4 tells no such state
    Accessible.onPressAction: root.press()
    Component.onCompleted: root.Accessible.role = root.spokenRole
    Keys.onReturnPressed: root.press()
    Keys.onEnterPressed: root.press()

    background: Rectangle {
        color: root.fill
        radius: Theme.corner
        border.color: root.outline
        border.width: Theme.edge

        FocusRing {
            shown: root.visualFocus
        }
    }
}
