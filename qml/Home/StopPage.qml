// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Home
import Morrow.Controls

/** After a sign was written down: nobody was told, so call. Nothing else is shown until it is answered. */
FocusScope {
    id: root

    required property SafetyModel safety

    Accessible.role: Accessible.Pane
    Accessible.name: words.text
    LayoutMirroring.enabled: Theme.mirrored
    LayoutMirroring.childrenInherit: true
    Component.onCompleted: Theme.turned = true
    Component.onDestruction: Theme.turned = false

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
    }
    ScrollArea {
        id: scroll

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.bottom: answers.top
        anchors.bottomMargin: Theme.smallSpace
        focus: true
        contentHeight: column.implicitHeight + 2 * Theme.space

        ColumnLayout {
            id: column

            anchors.horizontalCenter: parent.horizontalCenter
            y: Theme.space
            width: Math.min(scroll.width, Theme.columnWidth) - 2 * Theme.space
            spacing: Theme.space

            Words {
                id: words

                objectName: "tells nobody"
                Layout.fillWidth: true
                rank: Words.PageLine
                font.bold: true
                font.pixelSize: Theme.leadSize + (Theme.pageLineSize - Theme.leadSize) / Theme.textScale
                //: Fills the screen after a sign was written down.
                text: qsTr("This diary tells nobody. Please call.")
            }
            Words {
                objectName: "you wrote"
                Layout.fillWidth: true
                rank: Words.Lead
                //: The sign that was written down.
                text: qsTr("You wrote: %1.").arg(root.safety.stopWords)
            }
            Notice {
                Layout.fillWidth: true
                failure: root.safety.failure
            }
            Rectangle {
                Layout.fillWidth: true
                implicitHeight: Theme.edge
                color: Theme.line
            }
            Words {
                Layout.fillWidth: true
                rank: Words.Lead
                font.bold: true
                text: {
                    if (root.safety.whom === "")
                        //: Whom to call, where the plan does not say.
                        return qsTr("Call your clinic.");
                    //: Whom to call: who issued the plan.
                    return qsTr("Call your clinic: %1.").arg(root.safety.whom);
                }
            }
            Words {
                Layout.fillWidth: true
                rank: Words.Lead
                font.bold: true
                //: Whom to call in an emergency; numbers differ between countries.
                text: qsTr("If it is urgent, call the emergency number.")
            }
            Rectangle {
                Layout.fillWidth: true
                implicitHeight: Theme.edge
                color: Theme.line
            }
            Words {
                Layout.fillWidth: true
                rank: Words.Lead
                //: What happens with the day's exercises after a sign was written down.
                text: qsTr("The exercises wait until you have heard what to do.")
            }
        }
    }
    ColumnLayout {
        id: answers

        anchors.horizontalCenter: parent.horizontalCenter
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Theme.space
        width: Math.min(parent.width, Theme.columnWidth) - 2 * Theme.space
        spacing: Theme.smallSpace

        ActionButton {
            objectName: "called"
            Layout.fillWidth: true
            rank: ActionButton.Main
            //: A button: the person has called the clinic.
            text: qsTr("I have called")
            onClicked: root.safety.called(true)
        }
        ActionButton {
            objectName: "not yet"
            Layout.fillWidth: true
            //: A button: the person has not called the clinic yet.
            text: qsTr("Not yet")
            onClicked: root.safety.called(false)
        }
    }
}
