// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Controls

/**
 * The caseload: who needs a look stands first. The list moves on its own, so that thousands of
 * rows cost no more than those that are seen.
 */
FocusScope {
    id: root

    required property CaseloadModel caseload
    /** The person that is looked at. */
    required property string chosen
    /** Whether the pane is the whole window, and says so in a large line. */
    required property bool alone
    property string news

    signal opened(person: string)
    signal filesWanted

    Accessible.role: Accessible.Pane
    Accessible.name: title.text

    ColumnLayout {
        anchors.fill: parent
        spacing: Theme.smallSpace

        Words {
            id: title

            Layout.fillWidth: true
            Layout.topMargin: Theme.space
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            rank: root.alone ? Words.PageLine : Words.Lead
            font.pixelSize: root.alone ? Math.min(Theme.pageLineSize, Theme.leadSize * 3 / 2) : Theme.bodySize
            font.bold: !root.alone
            //: Title of the list of people at the desk.
            text: qsTr("Who needs a look")
            Accessible.role: Accessible.Heading
        }
        TextEntry {
            objectName: "search"
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            visible: root.caseload.persons > 0
            //: Label of the field that searches the list of people by name, birth year or file number.
            label: qsTr("Find somebody")
            text: root.caseload.search
            onEdited: root.caseload.search = text
        }
        Notice {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            failure: root.news
        }
        Words {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            visible: text !== ""
            rank: Words.Second
            text: {
                if (root.caseload.toRead > 0)
                    //: While the list of people is being read from the disk.
                    return qsTr("%n still being read …", "", root.caseload.toRead);
                if (root.caseload.persons > 0 && root.caseload.shown === 0)
                    //: The search found nobody.
                    return qsTr("Nobody is called so.");
                return "";
            }
        }

        ListView {
            id: list

            objectName: "caseload"
            Layout.fillWidth: true
            Layout.fillHeight: true
            model: root.caseload
            clip: true
            spacing: Theme.gap
            boundsBehavior: Flickable.StopAtBounds
            keyNavigationEnabled: true
            activeFocusOnTab: false
            topMargin: Theme.gap
            bottomMargin: Theme.gap
            Accessible.role: Accessible.List
            Accessible.name: title.text

            ScrollBar.vertical: ScrollBar {
                policy: list.contentHeight > list.height ? ScrollBar.AlwaysOn : ScrollBar.AlwaysOff
                padding: 0
                focusPolicy: Qt.NoFocus
                Accessible.ignored: true

                contentItem: Rectangle {
                    implicitWidth: Theme.tinyGap
                    radius: width / 2
                    color: Theme.line
                }
            }

            delegate: CaseRow {
                id: row

                required property int index
                required property string person
                required property string label

                objectName: `person ${row.index + 1}`
                width: ListView.view.width - Theme.gap
                x: Theme.mirrored ? Theme.gap : 0
                text: row.label
                chosen: row.person === root.chosen
                onClicked: root.opened(row.person)
                onActiveFocusChanged: {
                    if (row.activeFocus)
                        list.positionViewAtIndex(row.index, ListView.Contain);
                }
                Keys.onDownPressed: list.itemAtIndex(row.index + 1)?.forceActiveFocus(Qt.TabFocusReason)
                Keys.onUpPressed: list.itemAtIndex(row.index - 1)?.forceActiveFocus(Qt.BacktabFocusReason)
            }
        }

        ActionButton {
            objectName: "take in"
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            Layout.bottomMargin: Theme.margin
            //: A button that asks for files to take in.
            text: qsTr("Take in files")
            onClicked: root.filesWanted()
        }
    }
}
