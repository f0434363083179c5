// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Controls

/** A condition of the clinician's rule: a stroke where it holds, a dash and the word where it is open. */
RowLayout {
    id: root

    required property string words
    required property bool holds

    spacing: Theme.gap

    Item {
        Layout.alignment: Qt.AlignTop
        implicitWidth: Theme.space
        implicitHeight: Math.round(Theme.bodySize * 7 / 5)

        PenStroke {
            anchors.centerIn: parent
            visible: root.holds
            width: Theme.largeSpace
        }
        Rectangle {
            anchors.verticalCenter: parent.verticalCenter
            visible: !root.holds
            width: Theme.smallSpace
            height: Theme.ring
            color: Theme.ink
        }
    }
    Words {
        Layout.fillWidth: true
        font.bold: !root.holds
        //: A condition of a rule that does not hold yet.
        text: root.holds ? root.words : qsTr("Open: %1").arg(root.words)
        //: What a screen reader says of a condition of a rule that holds.
        Accessible.name: root.holds ? qsTr("Holds: %1").arg(root.words) : text
    }
}
