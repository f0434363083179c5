// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Home
import Morrow.Controls

/** Before there is a diary: the file that begins one, or a look at somebody else's. */
PageFrame {
    id: root

    required property HomeSession session

    signal fileWanted

    //: Title of the first page, before there is a diary.
    line: qsTr("Your diary")
    fraction: 0
    //: Before there is a diary.
    progress: qsTr("Nothing is entered yet.")

    Notice {
        objectName: "refusal"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        failure: root.session.refusal
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        //: How to begin.
        text: qsTr("Your clinic gave you a file with your plan. Open it here, or drop it on this window.")
    }
    ActionButton {
        objectName: "open file"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        rank: ActionButton.Main
        //: A button that asks for the file with the plan.
        text: qsTr("Open the file from your clinic")
        onClicked: root.fileWanted()
    }
    ActionButton {
        objectName: "demo"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        //: A button that shows the diary of somebody invented.
        text: qsTr("Look at an example first")
        onClicked: root.session.openDemo()
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        rank: Words.Second
        //: What the program is not.
        text: qsTr("Morrow keeps what you enter on this computer. It sends nothing, it does not judge, and it does not replace your clinic. In an emergency, call the emergency number.")
    }
}
