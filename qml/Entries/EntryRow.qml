// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/** One entry in words: its day, what it says, and below that how it came about. */
ColumnLayout {
    id: root

    /** The day; left out where it stands above. */
    property string day
    required property string text
    required property string below

    Layout.fillWidth: true
    spacing: 0

    Words {
        Layout.fillWidth: true
        //: An entry: its day, and what it says.
        text: root.day === "" ? root.text : qsTr("%1: %2").arg(root.day).arg(root.text)
    }
    Words {
        Layout.fillWidth: true
        rank: Words.Second
        text: root.below
    }
}
