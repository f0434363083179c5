// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Controls

/** What numbers were made of: each of them, how it came about, and the entries behind it. */
PageFrame {
    id: root

    /** A row a number: the number, how it came about, how many entries there are, and below it they. */
    required property WordRows figures
    /** The sentence that they stand in; left out where it is empty. */
    property string sentence
    /** Where the way back leads, in words. */
    required property string backWords

    signal back

    widest: Theme.columnWidth * Theme.textScale

    ActionButton {
        objectName: "back"
        Layout.leftMargin: Theme.margin
        rank: ActionButton.Worded
        text: root.backWords
        onClicked: root.back()
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: root.sentence !== ""
        rank: Words.Lead
        text: root.sentence
    }
    Repeater {
        model: root.figures

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
