// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Controls

/** Asks whose a file is: somebody new, with the name they go by here, or one of the known. */
ColumnLayout {
    id: root

    required property string saidName
    required property int saidBirthYear
    /** Those known here whom the search finds. */
    required property WordRows candidates
    required property bool anybodyKnown

    signal isNew(label: string, fileNumber: string, birthYear: int)
    signal isKnown(person: string)
    signal searched(text: string)
    signal declined

    property bool isOld: false

    spacing: Theme.smallSpace

    Words {
        Layout.fillWidth: true
        font.bold: true
        //: Asked of a file whose person is not known here.
        text: qsTr("Whose is it?")
        Accessible.role: Accessible.Heading
    }

    TextEntry {
        id: label

        objectName: "label"
        Layout.fillWidth: true
        visible: !root.isOld
        //: Label of a field: the name that somebody goes by at this desk.
        label: qsTr("Name at this desk")
        mostLetters: 200
        text: root.saidName
    }
    TextEntry {
        id: fileNumber

        objectName: "file number"
        Layout.fillWidth: true
        visible: !root.isOld
        //: Label of a field: the number of a person's file at the clinic.
        label: qsTr("File number")
        mostLetters: 200
    }
    TextEntry {
        id: birthYear

        objectName: "birth year"
        Layout.fillWidth: true
        visible: !root.isOld
        //: Label of a field.
        label: qsTr("Birth year")
        hints: Qt.ImhDigitsOnly
        mostLetters: 4
        validator: RegularExpressionValidator {
            regularExpression: /\d*/
        }
        text: root.saidBirthYear > 0 ? `${root.saidBirthYear}` : ""
    }
    Notice {
        id: mistaken

        Layout.fillWidth: true
    }
    ActionButton {
        objectName: "is new"
        Layout.fillWidth: true
        visible: !root.isOld
        rank: ActionButton.Main
        //: A button: the file is of somebody who was not known here.
        text: qsTr("Somebody new: take it in")
        onClicked: {
            const year = parseInt(birthYear.text === "" ? "0" : birthYear.text);
            if (label.text.trim() === "")
                //: Said where a name is needed and none was typed.
                mistaken.failure = qsTr("Type the name that this person goes by here.");
            else if (year !== 0 && (year < 1800 || year > 2200))
                //: Said where a year of birth cannot be one.
                mistaken.failure = qsTr("A birth year has four digits, such as 1968.");
            else
                root.isNew(label.text, fileNumber.text, year);
        }
    }

    TextEntry {
        objectName: "candidate search"
        Layout.fillWidth: true
        visible: root.isOld
        //: Label of the field that searches the people known here.
        label: qsTr("Find a name or file number")
        onEdited: root.searched(text)
    }
    Repeater {
        model: root.isOld ? root.candidates : null

        delegate: ListRow {
            id: candidate

            required property int index
            required property string key
            required text
            required below

            objectName: `candidate ${candidate.index + 1}`
            Layout.fillWidth: true
            outline: Theme.line
            onClicked: root.isKnown(candidate.key)
        }
    }
    Words {
        Layout.fillWidth: true
        visible: root.isOld && root.candidates.count === 0
        //: The search found nobody.
        text: qsTr("Nobody is called so.")
    }

    ActionButton {
        objectName: "is known"
        Layout.fillWidth: true
        visible: root.anybodyKnown
        text: root.isOld
            //: A button: the file is of somebody new after all.
            ? qsTr("No, somebody new")
            //: A button: the file is of somebody who is known here.
            : qsTr("One of the people here")
        onClicked: {
            mistaken.failure = "";
            root.isOld = !root.isOld;
            root.searched("");
        }
    }
    ActionButton {
        objectName: "leave"
        rank: ActionButton.Worded
        //: A button: the file is not taken in.
        text: qsTr("Do not take it in")
        onClicked: root.declined()
    }
}
