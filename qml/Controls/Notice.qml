// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/**
 * What became of an answer, beside it: saved, or could not be saved.
 *
 * A failure takes the place of what was said before and stays until the owner takes it away.
 */
Item {
    id: root

    /** "Saved 07:12"; nothing shows while it and \l failure are empty. */
    property string said
    /** Why the answer is not kept and what to do, in words. */
    property string failure

    readonly property bool failed: root.failure !== ""

    implicitWidth: words.implicitWidth + words.anchors.leftMargin
    implicitHeight: words.implicitHeight
    visible: root.failed || root.said !== ""
    Accessible.role: root.failed ? Accessible.AlertMessage : Accessible.StaticText
    Accessible.name: words.text

    Rectangle {
        anchors.left: parent.left
        anchors.top: parent.top
        anchors.bottom: parent.bottom
        visible: root.failed
        width: Theme.markWidth
        color: Theme.ink
    }

    Words {
        id: words

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.leftMargin: root.failed ? Theme.markWidth + Theme.gap : 0
        rank: root.failed ? Words.Body : Words.Second
        font.bold: root.failed
        text: root.failed ? root.failure : root.said
        Accessible.ignored: true
    }
}
