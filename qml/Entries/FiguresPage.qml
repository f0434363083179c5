// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Entries
import Morrow.Controls

/** What a sentence was made of: each figure, how it came about, and the entries behind it. */
PageFrame {
    id: root

    required property ReviewModel review

    signal back

    line: root.review.label
    beside: root.review.beside
    fraction: root.review.fraction
    progress: root.review.visits
    widest: Theme.columnWidth * Theme.textScale

    ActionButton {
        objectName: "back"
        Layout.leftMargin: Theme.margin
        rank: ActionButton.Worded
        //: A button that goes from the entries behind a figure back to the page they were opened on.
        text: qsTr("Back to the review")
        onClicked: root.back()
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        rank: Words.Lead
        text: root.review.figuresOf
    }
    Repeater {
        model: root.review.figures

        delegate: Sheet {
            id: figure

            required property string lead
            required property string text
            required property string below
            required property WordRows rows

            Layout.fillWidth: true
            title: figure.lead
            sentence: figure.text

            Words {
                Layout.fillWidth: true
                rank: Words.Second
                text: figure.below
            }
            Repeater {
                model: figure.rows

                delegate: EntryRow {
                    required property string lead

                    day: lead
                }
            }
        }
    }
}
