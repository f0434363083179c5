// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Charts

/**
 * The chart as a table: a row a day, its columns below each other where there is no room.
 */
ColumnLayout {
    id: root

    required property CourseModel course

    readonly property bool abreast: root.width >= Theme.columnWidth * Theme.textScale
    readonly property real dayWidth: root.width * 3 / 10
    readonly property real workWidth: root.width * 3 / 10

    spacing: Theme.gap
    Accessible.role: Accessible.Table
    //: What a screen reader calls the table beside a chart.
    Accessible.name: qsTr("Pain and work, day by day")
    Accessible.description: root.course.sentence

    GridLayout {
        Layout.fillWidth: true
        visible: root.abreast
        columns: 3
        columnSpacing: Theme.smallSpace

        Words {
            Layout.preferredWidth: root.dayWidth
            //: Heading of a table column.
            text: qsTr("Day")
            font.bold: true
        }
        Words {
            Layout.fillWidth: true
            //: Heading of a table column.
            text: qsTr("Entered")
            font.bold: true
        }
        Words {
            Layout.preferredWidth: root.workWidth
            //: Heading of a table column.
            text: qsTr("Work, week from this day")
            font.bold: true
        }
    }

    Repeater {
        model: root.course.rows

        delegate: GridLayout {
            id: row

            required property string day
            required property string what
            required property string work

            Layout.fillWidth: true
            columns: root.abreast ? 3 : 1
            columnSpacing: Theme.smallSpace
            rowSpacing: 0
            Accessible.role: Accessible.Row
            //: What a screen reader says of a row: its day and what stands in it.
            Accessible.name: qsTr("%1: %2").arg(row.day).arg(row.what === "" || row.work === "" ? row.what + row.work : `${row.what}; ${row.work}`)

            Rectangle {
                Layout.fillWidth: true
                Layout.columnSpan: row.columns
                implicitHeight: Theme.hairWidth
                color: Theme.hair
            }
            Words {
                Layout.preferredWidth: root.abreast ? root.dayWidth : -1
                Layout.fillWidth: !root.abreast
                Layout.alignment: Qt.AlignTop
                text: row.day
                font.bold: !root.abreast
                Accessible.ignored: true
            }
            Words {
                Layout.fillWidth: true
                Layout.alignment: Qt.AlignTop
                visible: root.abreast || row.what !== ""
                text: row.what
                Accessible.ignored: true
            }
            Words {
                Layout.preferredWidth: root.abreast ? root.workWidth : -1
                Layout.fillWidth: !root.abreast
                Layout.alignment: Qt.AlignTop
                visible: root.abreast || row.work !== ""
                text: {
                    if (root.abreast || row.work === "")
                        return row.work;
                    //: In the narrow form of a table: the work of the week that begins on this day.
                    return qsTr("Work, week from this day: %1").arg(row.work);
                }
                Accessible.ignored: true
            }
        }
    }
}
