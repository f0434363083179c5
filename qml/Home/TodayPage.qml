// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Home
import Morrow.Controls

/** The day: the clinic's reply, the check, and the sets that are due. Every answer is kept at once. */
PageFrame {
    id: root

    required property TodayModel today
    required property SafetyModel safety

    /** A copy: what binds to it is not made again each time the model says that something changed. */
    readonly property bool waits: root.safety.waits

    signal signsWanted

    line: root.today.line
    beside: root.today.beside
    fraction: root.today.fraction
    progress: root.today.progress

    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: !root.today.asksSets
        rank: Words.Second
        text: root.today.progress
        Accessible.ignored: true // the horizon says it
    }
    SentenceRow {
        objectName: "sets"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.today.asksSets
        second: true
        text: root.today.progress
        onClicked: root.today.openSets()
    }
    ReplyLine {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.today.reply !== ""
        head: root.today.replyHead
        reply: root.today.reply
    }
    Sheet {
        Layout.fillWidth: true
        visible: root.today.empty
        //: Today's page before there is a plan.
        title: qsTr("There is no plan yet")
        //: What to do where there is no plan.
        sentence: qsTr("Open the file from your clinic on the page Visit.")
    }
    Repeater {
        model: root.today.complaints

        delegate: ColumnLayout {
            id: complaint

            required property TodayComplaint modelData

            Layout.fillWidth: true
            spacing: Theme.smallSpace

            Words {
                Layout.fillWidth: true
                Layout.leftMargin: Theme.margin
                Layout.rightMargin: Theme.margin
                visible: complaint.modelData.name !== ""
                rank: Words.Lead
                font.bold: true
                text: complaint.modelData.name
                Accessible.role: Accessible.Heading
            }
            RatingSheet {
                Layout.fillWidth: true
                visible: complaint.modelData.check.asked
                rating: complaint.modelData.check
                onPicked: answer => root.today.check(complaint.modelData, answer)
                onCannotSay: root.today.checkDeclined(complaint.modelData)
                onTakenBack: root.today.takeBackCheck(complaint.modelData)
                onLastWanted: root.today.openLastChecks(complaint.modelData)

                NumberField {
                    Layout.fillWidth: true
                    visible: complaint.modelData.stiffnessAsked
                    //: Label of a number: how long the part was stiff in the morning.
                    label: qsTr("Stiff for")
                    //: Unit of a number field.
                    unit: qsTr("min")
                    value: complaint.modelData.stiffness
                    greatest: 600000
                    step: 5000
                    onEntered: thousandths => root.today.stiffness(complaint.modelData, thousandths)
                    onEmptied: root.today.stiffness(complaint.modelData, -1)
                }
            }
            Repeater {
                model: root.waits ? null : complaint.modelData.sessions

                delegate: SessionPart {
                    id: part

                    required property TodaySession modelData

                    Layout.fillWidth: true
                    today: root.today
                    session: part.modelData
                }
            }
            Words {
                objectName: "quiet"
                Layout.fillWidth: true
                Layout.leftMargin: Theme.margin
                Layout.rightMargin: Theme.margin
                visible: complaint.modelData.quiet !== ""
                text: complaint.modelData.quiet
            }
        }
    }
    Sheet {
        Layout.fillWidth: true
        visible: root.waits
        //: In the place of the day's exercises, after a sign was reported.
        title: qsTr("Wait with the exercises")
        sentence: root.safety.waitingWords

        ActionButton {
            Layout.fillWidth: true
            rank: ActionButton.Main
            //: A button that leads to where the clinic's answer is entered.
            text: qsTr("What did the clinic say?")
            onClicked: root.signsWanted()
        }
    }
    ActionButton {
        Layout.leftMargin: Theme.margin
        Layout.maximumWidth: parent.width - 2 * Theme.margin
        visible: !root.today.empty
        rank: ActionButton.Worded
        text: {
            if (root.today.yesterday)
                //: A button that shows today again.
                return qsTr("Back to today");
            //: A button that shows yesterday, for what was forgotten.
            return qsTr("Yesterday");
        }
        onClicked: root.today.yesterday = !root.today.yesterday
    }
    NobodyReads {}
}
