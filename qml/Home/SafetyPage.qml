// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Home
import Morrow.Controls

/** Signs at which to stop and ask, and what became of those that were written down. */
PageFrame {
    id: root

    required property SafetyModel safety

    //: Title of the page of signs at which to stop and ask.
    line: qsTr("Stop and ask")
    fraction: root.safety.open === 0 ? 0 : 1
    progress: root.safety.progress

    Notice {
        objectName: "failure"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        failure: root.safety.failure
    }
    Repeater {
        model: root.safety.reports

        delegate: Sheet {
            id: sheet

            required property SignReport modelData

            Layout.fillWidth: true
            title: sheet.modelData.words
            sentence: sheet.modelData.state

            ActionButton {
                Layout.fillWidth: true
                visible: sheet.modelData.open && !sheet.modelData.told
                rank: ActionButton.Main
                //: A button: the person has called the clinic about the sign above.
                text: qsTr("I have called")
                onClicked: root.safety.calledAbout(sheet.modelData)
            }
            Words {
                Layout.fillWidth: true
                visible: sheet.modelData.open
                //: Over three buttons, one for each answer.
                text: qsTr("What did the clinic say?")
            }
            Flow {
                Layout.fillWidth: true
                visible: sheet.modelData.open
                spacing: Theme.gap

                ActionButton {
                    width: Math.min(implicitWidth, parent.width)
                    //: What the clinic said: go on with the exercises.
                    text: qsTr("Go on")
                    onClicked: root.safety.heard(sheet.modelData, SafetyModel.GoOn)
                }
                ActionButton {
                    width: Math.min(implicitWidth, parent.width)
                    //: What the clinic said: go on with less.
                    text: qsTr("Lighter")
                    onClicked: root.safety.heard(sheet.modelData, SafetyModel.Lighter)
                }
                ActionButton {
                    width: Math.min(implicitWidth, parent.width)
                    //: What the clinic said: wait with the exercises.
                    text: qsTr("Wait")
                    onClicked: root.safety.heard(sheet.modelData, SafetyModel.Wait)
                }
            }
            ActionButton {
                Layout.maximumWidth: parent.width
                visible: sheet.modelData.open
                rank: ActionButton.Worded
                //: A button that takes a reported sign back.
                text: qsTr("Written down by mistake")
                onClicked: root.safety.takeBack(sheet.modelData)
            }
        }
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        //: Over the list of signs at which to stop and ask.
        text: qsTr("If you notice one of these, choose it.")
    }
    Repeater {
        model: root.safety.groups

        delegate: Sheet {
            id: group

            required property SignGroup modelData

            Layout.fillWidth: true
            title: group.modelData.title

            Repeater {
                model: group.modelData.signs

                delegate: ListRow {
                    id: sign

                    required property string modelData

                    Layout.fillWidth: true
                    leftPadding: 0
                    rightPadding: 0
                    emphasis: false
                    text: sign.modelData
                    onClicked: {
                        ask.sign = sign.modelData;
                        ask.open();
                    }

                    Rectangle {
                        anchors.left: parent.left
                        anchors.right: parent.right
                        anchors.top: parent.top
                        height: Theme.hairWidth
                        color: Theme.hair
                    }
                }
            }
        }
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        rank: Words.Second
        //: Under the signs at which to stop and ask.
        text: qsTr("These texts are general and no clinician has approved them yet. What your clinic told you comes first.")
    }
    NobodyReads {}

    ConfirmDialog {
        id: ask

        property string sign

        question: ask.sign
        //: What follows when a sign is written down.
        consequence: qsTr("It is written in your diary. The exercises wait until you have asked your clinic.")
        //: A button that writes a sign into the diary.
        confirmWords: qsTr("Write it down")
        onConfirmed: root.safety.report(ask.sign)
    }
}
