// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Home
import Morrow.Controls

/** The ways between the pages; it wraps where they do not stand in a row. */
Rectangle {
    id: root

    /** A HomePage.View. */
    required property int view

    signal chosen(view: int)

    implicitWidth: Theme.columnWidth
    implicitHeight: flow.implicitHeight + 2 * Theme.tinyGap
    width: parent ? parent.width : implicitWidth
    color: Theme.sheet
    Accessible.role: Accessible.PageTabList
    //: What a screen reader calls the row of buttons between the pages.
    Accessible.name: qsTr("Pages")

    Rectangle {
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        height: Theme.hairWidth
        color: Theme.hair
    }
    Flow {
        id: flow

        anchors.top: parent.top
        anchors.topMargin: Theme.tinyGap
        anchors.horizontalCenter: parent.horizontalCenter
        width: Math.min(parent.width - 2 * Theme.margin, Theme.columnWidth)
        spacing: Theme.gap

        Repeater {
            model: [
                //: A page, in the bar: what the day asks.
                qsTr("Today"),
                //: A page, in the bar: what is handed over at the next visit to the clinic.
                qsTr("Visit"),
                //: A page, in the bar: signs at which to stop and ask.
                qsTr("Stop?")
            ]

            delegate: ActionButton {
                id: way

                required property int index
                required property string modelData
                readonly property bool here: way.index === root.view
                readonly property real share: (flow.width - 2 * flow.spacing) / 3

                width: Math.max(way.share, way.implicitWidth)
                rank: ActionButton.Worded
                text: way.modelData
                font.bold: way.here || way.index === HomePage.Signs
                font.underline: false
                checkable: true
                ticked: way.here
                Accessible.onToggleAction: way.press()
                onClicked: root.chosen(way.index)

                Rectangle {
                    anchors.top: parent.top
                    anchors.topMargin: -Theme.tinyGap
                    anchors.left: parent.left
                    anchors.right: parent.right
                    visible: way.here
                    height: Theme.markWidth
                    color: Theme.accent
                }
            }
        }
    }
}
