// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Controls

/**
 * Every control once or more on one page, which owns their answers as a page of a program
 * would. The tests find controls by objectName.
 */
PageFrame {
    id: root

    property int pain: 3
    property bool cannotSay: false
    property int setsDone: 2
    property int load: 2500
    property int chosenRow: 1
    property int pressed: 0
    property bool erased: false

    objectName: "page"
    line: "Wednesday"
    beside: "4 March"
    fraction: root.setsDone / 6
    progress: `${root.setsDone} of 6 sets`

    Sheet {
        objectName: "check"
        Layout.fillWidth: true
        title: "How was your elbow when you woke?"

        ScaleBoxes {
            objectName: "pain"
            Layout.fillWidth: true
            question: "How was your elbow when you woke?"
            value: root.pain
            declined: root.cannotSay
            lowest: "no pain"
            highest: "worst imaginable"
            said: "Saved 07:12"
            onPicked: answer => {
                root.pain = answer;
                root.cannotSay = false;
            }
            onCannotSay: {
                root.pain = -1;
                root.cannotSay = true;
            }
        }
    }

    Sheet {
        Layout.fillWidth: true
        title: "Wrist lowering, slow"
        sentence: "3 sets of 12 with 2 kg. Three seconds down."

        Flow {
            Layout.fillWidth: true
            spacing: Theme.gap

            Repeater {
                model: 6

                delegate: TickBox {
                    id: box

                    required property int index

                    objectName: `set ${box.index + 1}`
                    number: box.index + 1
                    spoken: `Wrist lowering, right, set ${box.number} of 6`
                    done: box.index < root.setsDone
                    onClicked: root.setsDone = box.done ? box.index : box.index + 1
                }
            }
        }
        Notice {
            objectName: "not saved"
            Layout.fillWidth: true
            said: "Saved 07:15"
            failure: "Could not save set 3: the disk is full. Free some space and tick it again."
        }
        ActionButton {
            objectName: "edged"
            Layout.fillWidth: true
            text: "All as planned"
            onClicked: root.pressed += 1
        }
    }

    Sheet {
        Layout.fillWidth: true
        title: "Weight"

        NumberField {
            objectName: "load"
            Layout.fillWidth: true
            label: "Weight used"
            unit: "kg"
            value: root.load
            step: 500
            greatest: 40000
            said: "Saved 07:16"
            onEntered: thousandths => root.load = thousandths
            onEmptied: root.load = -1
        }
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.gap

        Repeater {
            model: ListModel {
                ListElement {
                    who: "Haug, Marit"
                    year: "1951"
                    why: "Sign not cleared"
                }
                ListElement {
                    who: "Ek, Tomas"
                    year: "1968"
                    why: "Response unsettled twice"
                }
                ListElement {
                    who: "Aleksandropoulou-Wintermantel, Konstantina"
                    year: "1979"
                    why: "No entry for 9 days"
                }
                ListElement {
                    who: "ليلى حداد"
                    year: "1984"
                    why: "الزيارة غدا"
                }
            }

            delegate: ListRow {
                id: row

                required property int index
                required property string who
                required property string year
                required property string why

                objectName: `row ${row.index + 1}`
                Layout.fillWidth: true
                text: row.who
                beside: row.year
                below: row.why
                chosen: row.index === root.chosenRow
                onClicked: root.chosenRow = row.index
            }
        }
    }

    ColumnLayout {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        spacing: Theme.gap

        ActionButton {
            objectName: "main"
            Layout.fillWidth: true
            rank: ActionButton.Main
            text: "Record a treatment"
            onClicked: root.pressed += 1
        }
        ActionButton {
            objectName: "disabled"
            Layout.fillWidth: true
            enabled: false
            text: "Print one page"
            onClicked: root.pressed += 1
        }
        ActionButton {
            objectName: "worded"
            rank: ActionButton.Worded
            text: "Erase everything"
            onClicked: dialog.open()
        }
    }

    ConfirmDialog {
        id: dialog

        objectName: "dialog"
        question: "Erase this diary?"
        consequence: "Every entry, every backup and the plan are deleted from this computer. Files you handed over stay where they are."
        confirmWords: "Erase everything"
        onConfirmed: root.erased = true
    }
}
