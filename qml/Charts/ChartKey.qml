// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/** One sign of a chart and what it stands for. */
Row {
    id: root

    enum Sign {
        Filled,
        Hollow,
        Square,
        Bar,
        Dashes,
        Dots,
        Line
    }

    required property int sign
    required property string words
    /** The room there is for both. */
    required property real most

    spacing: Theme.gap
    // Its chart says the same in its sentence and its table.
    Accessible.ignored: true

    Item {
        width: Theme.space
        height: text.height

        Rectangle {
            anchors.centerIn: parent
            visible: root.sign <= ChartKey.Square
            width: Theme.gap
            height: Theme.gap
            radius: root.sign === ChartKey.Square ? 0 : width / 2
            color: root.sign === ChartKey.Hollow ? Theme.sheet : Theme.ink
            border.color: Theme.ink
            border.width: Theme.edge
        }
        Rectangle {
            anchors.centerIn: parent
            visible: root.sign === ChartKey.Bar
            width: Theme.space
            height: Theme.smallSpace
            color: Theme.load
            border.color: Theme.loadEdge
            border.width: Theme.edge
        }
        Row {
            anchors.centerIn: parent
            visible: root.sign === ChartKey.Dashes
            spacing: Theme.tinyGap

            Repeater {
                model: 2

                delegate: Rectangle {
                    width: Theme.gap
                    height: Theme.ring
                    color: Theme.loadEdge
                }
            }
        }
        DottedLine {
            anchors.centerIn: parent
            visible: root.sign >= ChartKey.Dots
            height: Theme.space
            dotted: root.sign === ChartKey.Dots
            color: dotted ? Theme.visit : Theme.ink
        }
    }
    Words {
        id: text

        text: root.words
        rank: Words.Second
        font.pixelSize: Theme.smallestSize
        width: Math.min(implicitWidth, root.most - Theme.space - Theme.gap)
        Accessible.ignored: true
    }
}
