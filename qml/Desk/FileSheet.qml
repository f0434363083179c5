// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Controls

/** One file that came: what became of it, and what can be done. */
Sheet {
    id: root

    required property DeskSession session
    required property int row
    required property int fileState
    required property string words
    required property string says
    required property string saidName
    required property int saidBirthYear
    required property string person
    required property string failure

    signal opened(person: string)

    sentence: root.fileState === TakeInModel.Taken || root.fileState === TakeInModel.Refused ? "" : root.words

    Words {
        objectName: "outcome"
        Layout.fillWidth: true
        visible: root.sentence === "" && root.words !== ""
        font.bold: root.fileState === TakeInModel.Refused
        text: root.words
    }
    Words {
        Layout.fillWidth: true
        visible: root.fileState === TakeInModel.Asks
        text: root.says
    }
    Notice {
        objectName: "file failure"
        Layout.fillWidth: true
        failure: root.failure
    }
    Repeater {
        model: root.fileState === TakeInModel.Asks ? 1 : 0

        delegate: WhoseForm {
            Layout.fillWidth: true
            saidName: root.saidName
            saidBirthYear: root.saidBirthYear
            candidates: root.session.candidates
            anybodyKnown: root.session.caseload.persons > 0
            onIsNew: (label, fileNumber, birthYear) => root.session.takeIn.takeAsNew(root.row, label, fileNumber, birthYear)
            onIsKnown: known => root.session.takeIn.takeAs(root.row, known)
            onSearched: text => root.session.find(text)
            onDeclined: root.session.takeIn.leave(root.row)
        }
    }
    Flow {
        Layout.fillWidth: true
        visible: root.fileState === TakeInModel.Taken || root.fileState === TakeInModel.Failed
        spacing: Theme.gap

        ActionButton {
            objectName: "look"
            visible: root.fileState === TakeInModel.Taken
            rank: ActionButton.Main
            //: A button that opens the page of the person whose file was taken in.
            text: qsTr("Look at it")
            onClicked: root.opened(root.person)
        }
        ActionButton {
            objectName: "undo"
            visible: root.fileState === TakeInModel.Taken
            //: A button that takes back what a file brought.
            text: qsTr("Undo")
            //: What a screen reader says of the button that takes back what a file brought.
            Accessible.name: qsTr("Undo taking in %1").arg(root.title)
            onClicked: root.session.takeIn.undo(root.row)
        }
        ActionButton {
            objectName: "retry"
            visible: root.fileState === TakeInModel.Failed
            rank: ActionButton.Main
            //: A button that tries once more to keep a file.
            text: qsTr("Try again")
            onClicked: root.session.takeIn.retry(root.row)
        }
    }
}
