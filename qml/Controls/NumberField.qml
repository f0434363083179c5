// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Morrow.Style

/**
 * A number with its unit, typed or stepped.
 *
 * Counts in whole thousandths (2.5 kg is 2500), as the diary does, so that no number passes
 * through a fraction that binary cannot hold. Holds no number of its own: show \l value,
 * listen to entered() and emptied(); -1 shows an empty field and is never emitted. What is
 * typed is told when the field is left or Enter pressed; outside the limits it is never
 * moved to the nearest, the limits are said instead.
 */
ColumnLayout {
    id: root

    required property string label
    required property int value
    property string unit
    property int least: 0
    required property int greatest
    property int step: 1000
    /** See Notice. */
    property string said
    property string failure

    signal entered(thousandths: int)
    signal emptied

    /** Whether what stands in the field is a number within the limits, or nothing. */
    readonly property bool acceptable: input.text === "" || root.read(input.text) >= 0

    function words(thousandths: int): string {
        if (thousandths < 0)
            return "";
        const whole = Math.floor(thousandths / 1000);
        const rest = thousandths % 1000;
        if (rest === 0)
            return `${whole}`;
        const places = `${rest + 1000}`.slice(1).replace(/0+$/, "");
        return `${whole}${Qt.locale().decimalPoint}${places}`;
    }

    /** Thousandths, or -1 for what is no number within the limits. A comma is as good as a point. */
    function read(text: string): int {
        const parts = /^\s*(\d{1,6})(?:[.,](\d{1,3}))?\s*$/.exec(text);
        if (!parts)
            return -1;
        const read = parseInt(parts[1]) * 1000 + parseInt(((parts[2] ?? "") + "000").slice(0, 3));
        return read < root.least || read > root.greatest ? -1 : read;
    }

    function take() {
        const read = root.read(input.text);
        if (input.text.trim() === "") {
            if (root.value >= 0)
                root.emptied();
        } else if (read >= 0 && read !== root.value) {
            root.entered(read);
        }
    }

    /** One step from what stands in the field; from an empty one to the least. */
    function move(by: int) {
        const from = root.read(input.text);
        const to = from < 0 ? root.least : Math.max(root.least, Math.min(root.greatest, from + by));
        if (to !== root.value)
            root.entered(to);
    }

    spacing: Theme.tinyGap
    Accessible.role: Accessible.Grouping
    Accessible.name: root.label
    Accessible.description: limits.text // of the field itself, Qt 6.4 makes the placeholder
    onValueChanged: input.text = root.words(root.value)

    Words {
        Layout.fillWidth: true
        text: root.label
        Accessible.ignored: true
    }

    RowLayout {
        Layout.fillWidth: true
        Layout.maximumWidth: Theme.columnWidth / 2 * Theme.textScale
        spacing: Theme.gap

        ActionButton {
            //: A button that takes one step off a number.
            text: qsTr("–")
            leftPadding: Theme.gap
            enabled: root.value > root.least
            //: What a screen reader says of the button that takes one step off: "Less: weight".
            Accessible.name: qsTr("Less: %1").arg(root.label)
            onClicked: root.move(-root.step)
        }

        TextField {
            id: input

            Layout.fillWidth: true
            Layout.minimumWidth: Theme.numberWidth
            implicitHeight: Math.max(Theme.target, input.contentHeight + 2 * Theme.gap)
            leftPadding: Theme.smallSpace
            rightPadding: Theme.smallSpace + (root.unit === "" ? 0 : unit.width + Theme.tinyGap)
            text: root.words(root.value)
            color: Theme.ink
            selectionColor: Theme.accent
            selectedTextColor: Theme.inkOnAccent
            font.family: Theme.family
            font.pixelSize: Theme.leadSize
            horizontalAlignment: Text.AlignLeft
            verticalAlignment: Text.AlignVCenter
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            selectByMouse: true

            Accessible.role: Accessible.EditableText
            //: What a screen reader says of a number field: its label and its unit, "Weight, kg".
            Accessible.name: root.unit === "" ? root.label : qsTr("%1, %2").arg(root.label).arg(root.unit)

            onEditingFinished: root.take()
            onActiveFocusChanged: {
                if (input.activeFocus)
                    input.selectAll();
            }
            Keys.onUpPressed: root.move(root.step)
            Keys.onDownPressed: root.move(-root.step)

            background: Rectangle {
                color: Theme.sheet
                radius: Theme.corner
                border.color: root.acceptable ? Theme.line : Theme.ink
                border.width: root.acceptable ? Theme.edge : 2 * Theme.edge

                FocusRing {
                    shown: input.activeFocus
                }
            }

            Words {
                id: unit

                anchors.right: parent.right
                anchors.rightMargin: Theme.smallSpace
                anchors.verticalCenter: parent.verticalCenter
                rank: Words.Second
                text: root.unit
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }

        ActionButton {
            //: A button that adds one step to a number.
            text: qsTr("+")
            leftPadding: Theme.gap
            enabled: root.value < root.greatest
            //: What a screen reader says of the button that adds one step: "More: weight".
            Accessible.name: qsTr("More: %1").arg(root.label)
            onClicked: root.move(root.step)
        }
    }

    Notice {
        id: limits

        readonly property string text: {
            const least = root.words(root.least);
            const greatest = root.words(root.greatest);
            //: What a number field takes: "A number from 0 to 40."
            return qsTr("A number from %1 to %2.").arg(least).arg(greatest);
        }

        Layout.fillWidth: true
        said: root.said
        failure: root.acceptable ? root.failure : limits.text
    }
}
