// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/**
 * One answer on a scale of 0 to 10: eleven equal boxes, worded ends, and "can't say" apart.
 *
 * Holds no answer of its own: show \l value or \l declined, listen to picked() and cannotSay().
 * A value of -1 shows no answer, and is the only one this control can never emit. Arrow keys
 * walk, Space or Enter answers: walking past a box must not become an entry.
 */
ColumnLayout {
    id: root

    /** What is being rated, for a screen reader; the sheet around shows it. */
    required property string question
    required property int value
    property bool declined: false
    required property string lowest
    required property string highest
    /** Whether "can't say" is offered. */
    property bool asksCannotSay: true
    /** See Notice. */
    property string said
    property string failure

    signal picked(answer: int)
    signal cannotSay

    readonly property int greatest: 10
    readonly property int count: root.greatest + 1
    /** The boxes are bigger where six of the bigger ones stand in a row. */
    readonly property int least: root.fitting(Theme.scaleBox) >= 6 ? Theme.scaleBox : Theme.target
    readonly property int rows: Math.ceil(root.count / Math.max(1, Math.min(root.count, root.fitting(root.least))))
    readonly property int columns: Math.ceil(root.count / root.rows)
    readonly property int side: Math.min(Theme.scaleBoxWidest, Math.floor((root.width + Theme.gap) / root.columns) - Theme.gap)

    function fitting(side: int): int {
        return Math.floor((root.width + Theme.gap) / (side + Theme.gap));
    }

    function walk(to: int) {
        const box = boxes.itemAt(Math.max(0, Math.min(root.greatest, to)));
        if (box)
            box.forceActiveFocus(Qt.TabFocusReason);
    }

    spacing: Theme.gap
    Accessible.role: Accessible.Grouping
    Accessible.name: root.question

    Grid {
        id: grid

        /** The one box that Tab reaches. */
        property int stop: Math.max(0, root.value)

        Layout.fillWidth: true
        // Known at once: what a Grid finds out later a layout around it may not hear of any more.
        Layout.preferredHeight: root.rows * (root.side + Theme.gap) - Theme.gap
        columns: root.columns
        spacing: Theme.gap

        Repeater {
            id: boxes

            model: root.count

            delegate: Choice {
                id: box

                required property int index
                readonly property bool chosen: box.index === root.value

                width: root.side
                height: root.side
                padding: 0
                text: box.index
                focusPolicy: box.index === grid.stop ? Qt.StrongFocus : Qt.ClickFocus
                fill: {
                    if (box.chosen)
                        return Theme.accent;
                    return box.down ? Theme.accentSoft : Theme.sheet;
                }
                outline: box.chosen ? Theme.accent : Theme.line

                //: Screen-reader name of one step on a rating scale: "3 out of 10".
                Accessible.name: qsTr("%1 out of %2").arg(box.index).arg(root.greatest)
                Accessible.description: {
                    if (box.index === 0)
                        return root.lowest;
                    return box.index === root.greatest ? root.highest : "";
                }
                ticked: box.chosen

                onActiveFocusChanged: {
                    if (box.activeFocus)
                        grid.stop = box.index;
                }
                onClicked: root.picked(box.index)
                Keys.onRightPressed: root.walk(box.index + (Theme.mirrored ? -1 : 1))
                Keys.onLeftPressed: root.walk(box.index + (Theme.mirrored ? 1 : -1))
                Keys.onDownPressed: root.walk(box.index + root.columns)
                Keys.onUpPressed: root.walk(box.index - root.columns)
                Keys.onPressed: event => {
                    event.accepted = event.key === Qt.Key_Home || event.key === Qt.Key_End;
                    if (event.accepted)
                        root.walk(event.key === Qt.Key_Home ? 0 : root.greatest);
                }

                contentItem: Words {
                    text: box.text
                    rank: Words.Lead
                    font.bold: box.chosen
                    wrapMode: Text.NoWrap
                    lineHeight: Theme.tightLineHeight
                    fontSizeMode: Text.Fit // double the size in a box of 48
                    minimumPixelSize: Theme.smallestSize
                    color: box.chosen ? Theme.inkOnAccent : Theme.ink
                    horizontalAlignment: Text.AlignHCenter
                    verticalAlignment: Text.AlignVCenter
                    Accessible.ignored: true
                }
            }
        }
    }

    GridLayout {
        id: ends

        Layout.fillWidth: true
        Layout.maximumWidth: grid.implicitWidth
        // Below each other rather than in pieces.
        columns: low.implicitWidth + high.implicitWidth + Theme.space <= grid.implicitWidth ? 2 : 1
        columnSpacing: Theme.space
        rowSpacing: 0

        Words {
            id: low

            Layout.fillWidth: true
            rank: Words.Second
            //: The worded end of a rating scale: a number and what it means, "0 no pain".
            text: qsTr("%1 %2").arg(0).arg(root.lowest)
        }
        Words {
            id: high

            Layout.fillWidth: true
            rank: Words.Second
            horizontalAlignment: ends.columns === 2 ? Text.AlignRight : Text.AlignLeft
            //: The worded end of a rating scale: a number and what it means, "10 worst imaginable".
            text: qsTr("%1 %2").arg(root.greatest).arg(root.highest)
        }
    }

    GridLayout {
        Layout.fillWidth: true
        columns: notice.implicitWidth + cannotSay.implicitWidth + Theme.space <= root.width && !notice.failed ? 2 : 1
        columnSpacing: Theme.space
        rowSpacing: Theme.gap

        Notice {
            id: notice

            Layout.fillWidth: true
            said: root.said
            failure: root.failure
        }
        ActionButton {
            id: cannotSay

            Layout.alignment: Qt.AlignRight
            visible: root.asksCannotSay
            rank: ActionButton.Worded
            chosen: root.declined
            //: An answer to a question on a rating scale for somebody who cannot put a number to it.
            text: qsTr("Can’t say")
            checkable: true
            ticked: root.declined
            Accessible.onToggleAction: cannotSay.press()
            onClicked: root.cannotSay()
        }
    }
}
