// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Controls

/** The files that came in this sitting. */
PageFrame {
    id: root

    required property DeskSession session
    required property bool hasBack

    signal back
    signal opened(person: string)
    signal filesWanted

    readonly property int files: root.session.takeIn.files
    readonly property int finished: root.session.takeIn.finished

    //: Title of the page of files that came to the desk.
    line: qsTr("Files")
    fraction: root.files > 0 ? root.finished / root.files : 0
    //: How far the files that came are done with.
    progress: qsTr("%1 of %2 done").arg(root.finished).arg(root.files)
    beside: root.progress
    widest: Theme.columnWidth * Theme.textScale

    ActionButton {
        objectName: "back"
        Layout.leftMargin: Theme.margin
        visible: root.hasBack
        rank: ActionButton.Worded
        //: A button that leaves the files for the list of people.
        text: qsTr("All people")
        onClicked: root.back()
    }
    Repeater {
        model: root.session.takeIn

        delegate: FileSheet {
            id: sheet

            required property int index
            required property string file

            objectName: `file ${sheet.index + 1}`
            Layout.fillWidth: true
            session: root.session
            row: sheet.index
            title: sheet.file
            onOpened: whom => root.opened(whom)
        }
    }
    ActionButton {
        objectName: "more files"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        //: A button that asks for further files to take in.
        text: qsTr("Take in more files")
        onClicked: root.filesWanted()
    }
}
