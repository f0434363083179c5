// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Morrow.Style

/** A line of text with its label above. */
ColumnLayout {
    id: root

    required property string label
    property alias text: input.text
    property alias hints: input.inputMethodHints
    property alias validator: input.validator
    property alias mostLetters: input.maximumLength
    property alias input: input

    signal edited

    spacing: Theme.tinyGap

    Words {
        Layout.fillWidth: true
        text: root.label
        Accessible.ignored: true
    }
    TextField {
        id: input

        Layout.fillWidth: true
        implicitHeight: Math.max(Theme.target, input.contentHeight + 2 * Theme.gap)
        leftPadding: Theme.smallSpace
        rightPadding: Theme.smallSpace
        color: Theme.ink
        selectionColor: Theme.accent
        selectedTextColor: Theme.inkOnAccent
        font.family: Theme.family
        font.pixelSize: Theme.bodySize
        horizontalAlignment: Text.AlignLeft
        verticalAlignment: Text.AlignVCenter
        selectByMouse: true
        Accessible.role: Accessible.EditableText
        Accessible.name: root.label
        onTextEdited: root.edited()

        background: Rectangle {
            color: Theme.sheet
            radius: Theme.corner
            border.color: Theme.line
            border.width: Theme.edge

            FocusRing {
                shown: input.activeFocus
            }
        }
    }
}
