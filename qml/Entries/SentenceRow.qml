// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Entries
import Morrow.Controls

/**
 * A sentence of the review. Its figures are bold with a dotted line under them; the sentence as a
 * whole is what is pressed, and opens all of them.
 */
Target {
    id: root

    required property WordRows tokens
    /** Whether there is anything to open. */
    required property bool opens
    property bool strong: false
    property bool second: false

    readonly property int size: root.second ? Theme.secondSize : Theme.bodySize

    enabled: root.opens
    implicitHeight: Math.max(Theme.target, flow.implicitHeight + root.topPadding + root.bottomPadding)
    topPadding: Theme.gap
    bottomPadding: root.topPadding
    leftPadding: 0
    rightPadding: 0
    fill: root.down ? Theme.accentSoft : "transparent"
    focusPolicy: root.opens ? Qt.StrongFocus : Qt.NoFocus
    //: What a screen reader says after a sentence whose figures can be opened.
    Accessible.description: root.opens ? qsTr("Opens its figures") : ""

    TextMetrics {
        id: blank

        font.family: Theme.family
        font.pixelSize: root.size
        text: " "
    }

    contentItem: Item {
        implicitHeight: flow.implicitHeight

        Flow {
            id: flow

            width: parent.width
            spacing: 0

            Repeater {
                model: root.tokens

                delegate: Row {
                    id: token

                    required property string lead
                    required property string text
                    required property string below
                    required property bool marked

                    rightPadding: blank.advanceWidth

                    SentencePart {
                        text: token.lead
                        font.bold: root.strong
                    }
                    Column {
                        visible: token.text !== ""

                        SentencePart {
                            id: figure

                            text: token.text
                            font.bold: true
                        }
                        // Dots under what opens.
                        Row {
                            spacing: Theme.ring
                            width: figure.width
                            height: Theme.ring
                            clip: true

                            Repeater {
                                model: Math.ceil(figure.width / (2 * Theme.ring))

                                delegate: Rectangle {
                                    width: Theme.ring
                                    height: Theme.ring
                                    color: Theme.inkSoft
                                }
                            }
                        }
                    }
                    SentencePart {
                        text: token.below
                        font.bold: root.strong
                    }
                }
            }
        }
    }

    component SentencePart: Words {
        width: Math.min(implicitWidth, flow.width)
        visible: text !== ""
        font.pixelSize: root.size
        color: root.second ? Theme.inkSoft : Theme.ink
        Accessible.ignored: true
    }
}
