// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Home
import Morrow.Controls

/** One question about pain, and one tap away the limit of the plan for it. */
Sheet {
    id: root

    required property TodayRating rating
    property alias asksCannotSay: boxes.asksCannotSay
    readonly property bool answered: root.rating.value >= 0 || root.rating.declined

    signal picked(answer: int)
    signal cannotSay
    signal takenBack
    signal lastWanted

    title: root.rating.question

    ScaleBoxes {
        id: boxes

        Layout.fillWidth: true
        question: root.rating.question
        value: root.rating.value
        declined: root.rating.declined
        //: The lowest step of a scale of pain.
        lowest: qsTr("no pain")
        //: The highest step of a scale of pain.
        highest: qsTr("worst imaginable")
        said: root.rating.said
        failure: root.rating.failure
        onPicked: answer => root.picked(answer)
        onCannotSay: root.cannotSay()
    }
    Flow {
        Layout.fillWidth: true
        spacing: Theme.space

        ActionButton {
            id: ask

            objectName: "is it all right"
            width: Math.min(implicitWidth, parent.width)
            rank: ActionButton.Worded
            //: A button that shows the limit of the plan for this pain.
            text: qsTr("Is this pain all right?")
            checkable: true
            Accessible.onToggleAction: ask.press()
            onClicked: ask.ticked = !ask.ticked
        }
        ActionButton {
            width: Math.min(implicitWidth, parent.width)
            visible: root.answered
            rank: ActionButton.Worded
            //: A button that takes an answer back.
            text: qsTr("Take back")
            //: What a screen reader says of the button that takes an answer back: "Take back: pain this morning".
            Accessible.name: qsTr("Take back: %1").arg(root.rating.question)
            onClicked: root.takenBack()
        }
    }
    Words {
        objectName: "limit"
        Layout.fillWidth: true
        visible: ask.ticked
        text: root.rating.limit
    }
    Repeater {
        model: ask.ticked && root.rating.last !== "" ? 1 : 0

        delegate: SentenceRow {
            objectName: "last answers"
            Layout.fillWidth: true
            text: root.rating.last
            onClicked: root.lastWanted()
        }
    }
    Words {
        Layout.fillWidth: true
        visible: ask.ticked
        //: Under the limit of the plan for a pain.
        text: qsTr("If in doubt, call your clinic.")
    }
}
