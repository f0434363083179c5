// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Charts
import Morrow.Controls
import Morrow.Entries

/**
 * The chart as a table: a row a day, its columns below each other where there is no room. A row is
 * pressed as a whole, and opens the entries behind its numbers.
 */
Column {
    id: root

    required property CourseModel course

    signal opened(row: int)

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

            required property int index
            required property string day
            required property string what
            required property string work
            required property string whole

            width: root.width
            spacing: Theme.tinyGap
            Accessible.role: Accessible.Row
            Accessible.name: row.day

            Rectangle {
                width: root.width
                height: Theme.hairWidth
                color: Theme.hair
            }
            Target {
                id: target

                objectName: `day ${row.index + 1}`
                width: root.width
                leftPadding: 0
                rightPadding: 0
                topPadding: Theme.smallSpace
                bottomPadding: Theme.smallSpace
                fill: target.down ? Theme.accentSoft : "transparent"
                text: row.whole
                //: What a screen reader says after a row whose numbers can be opened.
                Accessible.description: qsTr("Shows the entries")
                onClicked: root.opened(row.index)

                contentItem: Flow {
                    spacing: root.abreast ? Theme.smallSpace : 0

                    Words {
                        width: root.sideWidth
                        text: row.day
                        font.bold: !root.abreast
                        Accessible.ignored: true
                    }
                    SentenceWords {
                        width: root.middleWidth
                        visible: root.abreast || row.what !== ""
                        text: row.what
                        tokens: whatWords.tokens

                        NumberWords {
                            id: whatWords

                            text: row.what
                        }
                    }
                    SentenceWords {
                        width: root.sideWidth
                        visible: root.abreast || row.work !== ""
                        text: workWords.text
                        tokens: workWords.tokens

                        NumberWords {
                            id: workWords

                            text: {
                                if (root.abreast || row.work === "")
                                    return row.work;
                                //: In the narrow form of a table: the work of the week that begins on this day.
                                return qsTr("Work, week from this day: %1").arg(row.work);
                            }
                        }
                    }
                }
            }
        }
    }
}
