// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Morrow.Style
import Morrow.Home
import Morrow.Entries
import Morrow.Controls

/** What to take to the clinic: what will be in the file, the questions, and the file itself. */
PageFrame {
    id: root

    required property VisitModel visit

    /** Whether another place was asked for, so that the dialog is there. */
    property bool asks: false

    signal fileWanted
    signal placeWanted

    //: Title of the page about the next visit to the clinic.
    line: qsTr("Visit")
    fraction: 0
    //: What the page is for.
    progress: qsTr("What you hand over at your next visit")
    Component.onCompleted: root.visit.shown = true
    Component.onDestruction: root.visit.shown = false

    Sheet {
        Layout.fillWidth: true
        //: Over what will be in the file for the clinic.
        title: qsTr("This will be handed over")
        sentence: root.visit.days

        Words {
            objectName: "holds"
            Layout.fillWidth: true
            text: root.visit.holds
        }
        SentenceRow {
            objectName: "left out"
            Layout.fillWidth: true
            visible: root.visit.leftOut !== ""
            second: true
            text: root.visit.leftOut
            onClicked: root.visit.openLeftOut()
        }
        ActionButton {
            id: every

            objectName: "every entry"
            Layout.maximumWidth: parent.width
            rank: ActionButton.Worded
            checkable: true
            ticked: root.visit.listed
            //: A button that lists, or hides, everything that will be in the file for the clinic.
            text: qsTr("Every entry")
            Accessible.onToggleAction: every.press()
            onClicked: root.visit.listed = !root.visit.listed
        }
        Repeater {
            model: root.visit.entries

            delegate: ColumnLayout {
                id: day

                required property string text
                required property WordRows rows

                Layout.fillWidth: true
                spacing: Theme.tinyGap

                Words {
                    Layout.fillWidth: true
                    text: day.text
                    font.bold: true
                    Accessible.role: Accessible.Heading
                }
                Repeater {
                    model: day.rows

                    delegate: EntryRow {}
                }
            }
        }
        ActionButton {
            objectName: "earlier"
            Layout.maximumWidth: parent.width
            visible: root.visit.earlier > 0
            rank: ActionButton.Worded
            //: A button under a list of days: lists those before them, of which there are so many.
            text: qsTr("%n earlier day(s)", "", root.visit.earlier)
            onClicked: root.visit.listEarlier()
        }
        TextEntry {
            objectName: "name"
            Layout.fillWidth: true
            //: Label of a line of text: a name that goes into the file.
            label: qsTr("Your name in the file, if you like")
            mostLetters: 80
            text: root.visit.name
            onEdited: root.visit.name = input.text
        }
        ActionButton {
            objectName: "save"
            Layout.fillWidth: true
            rank: ActionButton.Main
            //: A button that writes the file for the clinic.
            text: qsTr("Save the summary")
            onClicked: root.visit.save()
        }
        ActionButton {
            objectName: "save as"
            Layout.maximumWidth: parent.width
            rank: ActionButton.Worded
            //: A button that asks where to write the file for the clinic.
            text: qsTr("Save somewhere else")
            onClicked: {
                root.asks = true;
                root.placeWanted();
            }
        }
        Notice {
            objectName: "saved"
            Layout.fillWidth: true
            said: root.visit.saved
            failure: root.visit.saveFailure
        }
    }
    Sheet {
        Layout.fillWidth: true
        //: Over the questions to the clinic.
        title: qsTr("Questions for your clinic")
        //: When the clinic sees the questions.
        sentence: qsTr("They are read at the visit, not before.")

        Repeater {
            model: root.visit.questions

            delegate: ColumnLayout {
                id: question

                required property AskedQuestion modelData

                Layout.fillWidth: true
                spacing: Theme.tinyGap

                Words {
                    Layout.fillWidth: true
                    text: question.modelData.words
                }
                Words {
                    Layout.fillWidth: true
                    rank: Words.Second
                    text: question.modelData.when
                }
                ReplyLine {
                    Layout.fillWidth: true
                    visible: question.modelData.reply !== ""
                    head: question.modelData.replyHead
                    reply: question.modelData.reply
                }
                ActionButton {
                    Layout.maximumWidth: parent.width
                    visible: question.modelData.reply === ""
                    rank: ActionButton.Worded
                    //: A button that takes a question back.
                    text: qsTr("Take back")
                    //: What a screen reader says of the button that takes a question back.
                    Accessible.name: qsTr("Take back: %1").arg(question.modelData.words)
                    onClicked: root.visit.takeBack(question.modelData)
                }
            }
        }
        TextEntry {
            id: entry

            objectName: "question"
            Layout.fillWidth: true
            //: Label of a line of text: a question to the clinic.
            label: qsTr("A new question")
            mostLetters: 500
        }
        ActionButton {
            objectName: "write question"
            Layout.maximumWidth: parent.width
            //: A button that keeps the question that was typed.
            text: qsTr("Write it down")
            enabled: entry.text.trim() !== ""
            onClicked: {
                if (root.visit.ask(entry.text))
                    entry.text = "";
            }
        }
        Notice {
            Layout.fillWidth: true
            failure: root.visit.questionFailure
        }
    }
    Sheet {
        Layout.fillWidth: true
        //: Over what the clinic gives.
        title: qsTr("From your clinic")
        //: What a file from the clinic brings.
        sentence: qsTr("A file from your clinic brings a changed plan, the visit and replies.")

        ActionButton {
            objectName: "open file"
            Layout.fillWidth: true
            //: A button that asks for a file from the clinic.
            text: qsTr("Open a file")
            onClicked: root.fileWanted()
        }
    }
    Sheet {
        Layout.fillWidth: true
        visible: root.visit.handed.length > 0
        //: Over the list of files that were saved for the clinic before.
        title: qsTr("Saved before")

        Repeater {
            model: root.visit.handed

            delegate: Words {
                id: before

                required property string modelData

                Layout.fillWidth: true
                text: before.modelData
            }
        }
    }
    NobodyReads {}

    Repeater {
        model: root.asks ? 1 : 0

        delegate: Item {
            FileDialog {
                id: dialog

                //: Title of the dialog that asks where to save the summary.
                title: qsTr("Save the summary")
                fileMode: FileDialog.SaveFile
                onAccepted: root.visit.saveAs(selectedFile)
            }
            Connections {
                target: root

                function onPlaceWanted() {
                    dialog.open();
                }
            }
        }
    }
}
