// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/**
 * A page: one large line over the horizon, and below it a column that scrolls with them.
 *
 * Its children stand below each other, edge to edge; a sheet brings its own margin, anything
 * else takes Theme.margin. Whatever is put into \l bar stays at the lower edge.
 */
FocusScope {
    id: root

    /** The page's line: the day, the name, the subject. */
    required property string line
    /** Stands at the other end of it: the date, the file number. */
    property string beside
    /** See Horizon. */
    required property real fraction
    required property string progress
    /** The widest the column gets. */
    property real widest: Theme.columnWidth

    default property alias content: column.data
    property alias bar: barPlace.data

    /** Shows the page from its line on. */
    function toTop() {
        scroll.contentY = 0;
    }

    LayoutMirroring.enabled: Theme.mirrored
    LayoutMirroring.childrenInherit: true
    Accessible.role: Accessible.Pane
    Accessible.name: root.line

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
    }

    ScrollArea {
        id: scroll

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.bottom: barPlace.top
        focus: true
        contentHeight: all.implicitHeight + Theme.largeSpace

        Column {
            id: all

            width: scroll.width
            spacing: Theme.space

            Column {
                width: parent.width
                topPadding: Theme.space
                spacing: Theme.gap

                Item {
                    id: head

                    readonly property real room: column.width - 2 * Theme.margin
                    /** Both stand on one line where the line need not shrink for it. */
                    readonly property bool abreast: lineNatural.width + besideWords.implicitWidth + Theme.space <= head.room

                    anchors.horizontalCenter: parent.horizontalCenter
                    width: head.room
                    height: Math.max(lineWords.height, besideWords.y + besideWords.height)

                    TextMetrics {
                        id: lineNatural

                        font.family: Theme.family
                        font.pixelSize: Theme.pageLineSize
                        text: root.line
                    }
                    Words {
                        id: lineWords

                        width: parent.width
                        rank: Words.PageLine
                        font.pixelSize: Math.max(Theme.leadSize, Math.min(Theme.pageLineSize, Theme.pageLineSize * head.room / lineNatural.width))
                        text: root.line
                    }
                    Words {
                        id: besideWords

                        y: head.abreast ? lineWords.baselineOffset - baselineOffset : lineWords.height
                        width: parent.width
                        height: root.beside === "" ? 0 : implicitHeight
                        visible: root.beside !== ""
                        horizontalAlignment: head.abreast ? Text.AlignRight : Text.AlignLeft
                        rank: Words.Second
                        text: root.beside
                    }
                }
                Horizon {
                    width: parent.width
                    inset: (parent.width - head.room) / 2
                    fraction: root.fraction
                    words: root.progress
                }
            }

            ColumnLayout {
                id: column

                anchors.horizontalCenter: parent.horizontalCenter
                width: Math.min(scroll.width, root.widest)
                spacing: Theme.smallSpace
            }
        }
    }

    Column {
        id: barPlace

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.bottom: parent.bottom
    }
}
