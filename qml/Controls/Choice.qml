// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import Morrow.Style

/**
 * One of several of which one is chosen: pressed like a Target, and told to a screen reader
 * as a radio button, which in Qt 6.4 only a RadioButton is.
 */
RadioButton {
    id: root

    property color fill: "transparent"
    property color outline: "transparent"
    /** Whether it is the chosen one; it never chooses itself. */
    property bool ticked: false

    function press() {
        if (root.enabled)
            root.clicked();
    }

    implicitWidth: Math.max(Theme.target, root.implicitContentWidth + root.leftPadding + root.rightPadding)
    implicitHeight: Math.max(Theme.target, root.implicitContentHeight + root.topPadding + root.bottomPadding)
    font.family: Theme.family
    font.pixelSize: Theme.bodySize
    checked: root.ticked
    onToggled: root.checked = Qt.binding(() => root.ticked) // whoever owns the answer chooses it

    Accessible.name: root.text
    Accessible.onPressAction: root.press()
    Accessible.onToggleAction: root.press()
    Keys.onReturnPressed: root.press()
    Keys.onEnterPressed: root.press()

    indicator: null
    background: TargetGround {
        color: root.fill
        border.color: root.outline
        ringed: root.visualFocus
    }
}
