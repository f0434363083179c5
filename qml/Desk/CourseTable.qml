// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Charts

/**
 * The chart as a table: a row a day, its columns below each other where there is no room.
 */
Column {
    id: root

    required property CourseModel course

    readonly property bool abreast: root.width >= Theme.columnWidth * Theme.textScale
    readonly property real sideWidth: root.abreast ? (root.width - 2 * Theme.smallSpace) * 3 / 10 : root.width
    readonly property real middleWidth: root.abreast ? root.width - 2 * root.sideWidth - 2 * Theme.smallSpace : root.width

    spacing: Theme.gap
    Accessible.role: Accessible.Table
    //: What a screen reader calls the table beside a chart.
    Accessible.name: qsTr("Pain and work, day by day")
    Accessible.description: root.course.sentence

    Row {
        visible: root.abreast
        spacing: Theme.smallSpace

        Words {
            width: root.sideWidth
            //: Heading of a table column.
            text: qsTr("Day")
            font.bold: true
        }
        Words {
            width: root.middleWidth
            //: Heading of a table column.
            text: qsTr("Entered")
            font.bold: true
        }
        Words {
            width: root.sideWidth
            //: Heading of a table column.
            text: qsTr("Work, week from this day")
            font.bold: true
        }
    }

    Repeater {
        model: root.course.rows

        delegate: Column {
            id: row

            required property string day
            required property string what
            required property string work

            width: root.width
            spacing: Theme.tinyGap
            Accessible.role: Accessible.Row
            //: What a screen reader says of a row: its day and what stands in it.
            Accessible.name: qsTr("%1: %2").arg(row.day).arg(row.what === "" || row.work === "" ? row.what + row.work : `${row.what}; ${row.work}`)

            Rectangle {
                width: root.width
                height: Theme.hairWidth
                color: Theme.hair
            }
            Flow {
                width: root.width
                spacing: root.abreast ? Theme.smallSpace : 0

                Words {
                    width: root.sideWidth
                    text: row.day
                    font.bold: !root.abreast
                    Accessible.ignored: true
                }
                Words {
                    width: root.middleWidth
                    visible: root.abreast || row.what !== ""
                    text: row.what
                    Accessible.ignored: true
                }
                Words {
                    width: root.sideWidth
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
}
