// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Entries
import Morrow.Controls
import Morrow.Charts

/**
 * One person in half a minute: sentences first, then the chart, and beside them, or below where
 * there is no room, what the rule says and what the person asked.
 */
PageFrame {
    id: root

    required property ReviewModel review
    /** Whether there is a way back to a list that is not beside this page. */
    required property bool hasBack

    signal back
    signal figuresWanted(sentence: string)
    signal dayWanted(row: int)
    signal visitsWanted

    property bool asTable: false
    readonly property bool abreast: root.width >= Theme.columnWidth * Theme.textScale * 3 / 2
    readonly property real sideWidth: Theme.columnWidth * Theme.textScale * 9 / 20

    line: root.review.label
    beside: root.review.beside
    fraction: root.review.fraction
    progress: root.review.visits
    widest: root.abreast ? root.width : Theme.columnWidth * Theme.textScale

    ActionButton {
        objectName: "back"
        Layout.leftMargin: Theme.margin
        visible: root.hasBack
        rank: ActionButton.Worded
        //: A button that leaves one person's page for the list of people.
        text: qsTr("All people")
        onClicked: root.back()
    }

    SentenceRow {
        objectName: "about"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.review.complaint !== ""
        opens: root.review.visited
        second: true
        //: Below a person's name: the complaint, and which visit it is.
        text: qsTr("%1. %2.").arg(root.review.complaint).arg(root.review.visits)
        onClicked: root.visitsWanted()
    }

    Notice {
        objectName: "problem"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        failure: root.review.problem
    }

    Words {
        objectName: "nothing"
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.review.problem === "" && !root.review.hasPlan
        text: root.review.complaint === ""
            //: A person's page when no file with a complaint was taken in.
            ? qsTr("Nothing is known of this person but the name.")
            //: A person's page when no plan has begun.
            : qsTr("No plan has begun for this complaint, so there is nothing to count.")
    }

    Flow {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.review.complaints.count > 1
        spacing: Theme.gap
        Accessible.role: Accessible.Grouping
        //: Which of a person's complaints is looked at.
        Accessible.name: qsTr("Complaint")

        Repeater {
            model: root.review.complaints

            delegate: Alternative {
                required property int index
                required property bool marked
                required text

                objectName: `complaint ${index + 1}`
                ticked: marked
                onClicked: root.review.complaintIndex = index
            }
        }
    }

    GridLayout {
        Layout.fillWidth: true
        visible: root.review.hasPlan
        columns: root.abreast ? 2 : 1
        columnSpacing: Theme.space
        rowSpacing: Theme.space

        ColumnLayout {
            Layout.fillWidth: true
            Layout.alignment: Qt.AlignTop
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: root.abreast ? 0 : Theme.margin
            spacing: Theme.gap

            ColumnLayout {
                Layout.fillWidth: true
                visible: root.review.exceptions.count > 0
                spacing: Theme.gap

                Repeater {
                    model: root.review.exceptions

                    delegate: Item {
                        id: exception

                        required property int index
                        required property string text
                        required property string key
                        required property WordRows rows

                        Layout.fillWidth: true
                        implicitHeight: exceptionRow.implicitHeight

                        Rectangle {
                            anchors.left: parent.left
                            anchors.top: parent.top
                            anchors.bottom: parent.bottom
                            width: Theme.markWidth
                            color: Theme.ink
                        }
                        SentenceRow {
                            id: exceptionRow

                            objectName: `exception ${exception.index + 1}`
                            anchors.left: parent.left
                            anchors.right: parent.right
                            anchors.leftMargin: Theme.markWidth + Theme.gap
                            text: exception.text
                            tokens: exception.rows
                            opens: exception.key !== ""
                            strong: true
                            onClicked: root.figuresWanted(exception.key)
                        }
                    }
                }
            }

            Repeater {
                model: root.review.sentences

                delegate: SentenceRow {
                    id: sentence

                    required property int index
                    required property string key
                    required property WordRows rows
                    required text

                    objectName: `sentence ${sentence.index + 1}`
                    Layout.fillWidth: true
                    tokens: sentence.rows
                    opens: sentence.key !== ""
                    onClicked: root.figuresWanted(sentence.key)
                }
            }

            Rectangle {
                Layout.fillWidth: true
                Layout.topMargin: Theme.gap
                visible: !root.asTable
                implicitHeight: chart.implicitHeight + 2 * Theme.margin
                color: Theme.sheet
                radius: Theme.corner
                border.color: Theme.hair
                border.width: Theme.hairWidth

                CourseChart {
                    id: chart

                    objectName: "chart"
                    anchors.left: parent.left
                    anchors.right: parent.right
                    anchors.top: parent.top
                    anchors.margins: Theme.margin
                    course: root.review.course
                }
            }
            Repeater {
                model: root.asTable ? 1 : 0

                delegate: CourseTable {
                    objectName: "table"
                    Layout.fillWidth: true
                    course: root.review.course
                    onOpened: row => root.dayWanted(row)
                }
            }
            ActionButton {
                objectName: "as table"
                rank: ActionButton.Worded
                text: root.asTable
                    //: A button that shows a chart in the place of its table.
                    ? qsTr("Show as a chart")
                    //: A button that shows a table in the place of its chart.
                    : qsTr("Show as a table")
                onClicked: root.asTable = !root.asTable
            }
            Repeater {
                model: root.review.quality

                delegate: SentenceRow {
                    id: quality

                    required property string key
                    required property WordRows rows
                    required text

                    objectName: "quality"
                    Layout.fillWidth: true
                    tokens: quality.rows
                    opens: quality.key !== ""
                    second: true
                    onClicked: root.figuresWanted(quality.key)
                }
            }

            Flow {
                Layout.fillWidth: true
                visible: root.review.hasVisit
                spacing: Theme.gap
                Accessible.role: Accessible.Grouping
                //: Which days the figures are about.
                Accessible.name: qsTr("Days")

                Alternative {
                    objectName: "whole"
                    //: Figures over all days of the plan.
                    text: qsTr("Whole plan")
                    ticked: !root.review.sinceVisit
                    onClicked: root.review.sinceVisit = false
                }
                Alternative {
                    objectName: "since"
                    //: Figures over the days since the last visit.
                    text: qsTr("Since the last visit")
                    ticked: root.review.sinceVisit
                    onClicked: root.review.sinceVisit = true
                }
            }
            Words {
                Layout.fillWidth: true
                rank: Words.Second
                text: root.review.days
            }
        }

        ColumnLayout {
            Layout.fillWidth: !root.abreast
            Layout.preferredWidth: root.abreast ? root.sideWidth : -1
            Layout.maximumWidth: root.abreast ? root.sideWidth : Infinity
            Layout.alignment: Qt.AlignTop
            Layout.leftMargin: root.abreast ? 0 : Theme.margin
            Layout.rightMargin: Theme.margin
            spacing: Theme.smallSpace

            Repeater {
                model: root.review.rules

                delegate: ColumnLayout {
                    id: rule

                    required property string lead
                    required property string below
                    required property WordRows rows

                    Layout.fillWidth: true
                    spacing: Theme.tinyGap

                    Words {
                        Layout.fillWidth: true
                        font.bold: true
                        //: Title over the clinician's rule for an exercise.
                        text: qsTr("Your rule: %1").arg(rule.lead)
                        Accessible.role: Accessible.Heading
                    }
                    Words {
                        Layout.fillWidth: true
                        Layout.bottomMargin: Theme.tinyGap
                        text: rule.below
                    }
                    Repeater {
                        model: rule.rows

                        delegate: ConditionRow {
                            required property bool marked
                            required property string text

                            Layout.fillWidth: true
                            words: text
                            holds: marked
                        }
                    }
                }
            }

            Words {
                Layout.fillWidth: true
                Layout.topMargin: Theme.gap
                font.bold: true
                //: Title over what the person asked the clinic.
                text: qsTr("Questions")
                Accessible.role: Accessible.Heading
            }
            Words {
                Layout.fillWidth: true
                visible: root.review.questions.count === 0
                color: Theme.inkSoft
                //: The person asked nothing.
                text: qsTr("None.")
            }
            Repeater {
                model: root.review.questions

                delegate: Item {
                    id: question

                    required property string lead
                    required property string text
                    required property string below

                    Layout.fillWidth: true
                    implicitHeight: asked.implicitHeight
                    Accessible.role: Accessible.Grouping
                    Accessible.name: question.text

                    Rectangle {
                        anchors.left: parent.left
                        anchors.top: parent.top
                        anchors.bottom: parent.bottom
                        width: Theme.markWidth
                        color: Theme.visit
                    }
                    ColumnLayout {
                        id: asked

                        anchors.left: parent.left
                        anchors.right: parent.right
                        anchors.leftMargin: Theme.markWidth + Theme.gap
                        spacing: 0

                        Words {
                            Layout.fillWidth: true
                            text: question.text
                        }
                        Words {
                            Layout.fillWidth: true
                            rank: Words.Second
                            text: question.lead
                        }
                        Words {
                            Layout.fillWidth: true
                            visible: question.below !== ""
                            text: question.below
                        }
                    }
                }
            }
        }
    }

    component Alternative: Choice {
        id: alternative

        leftPadding: Theme.smallSpace
        rightPadding: Theme.smallSpace
        topPadding: Theme.gap
        bottomPadding: Theme.gap
        width: Math.min(implicitWidth, parent?.width ?? implicitWidth)
        fill: alternative.ticked ? Theme.accentSoft : "transparent"
        outline: alternative.ticked ? Theme.accent : Theme.line

        contentItem: Words {
            text: alternative.text
            font.bold: alternative.ticked
            verticalAlignment: Text.AlignVCenter
            Accessible.ignored: true
        }
    }
}
