// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Entries

/** A sentence word by word; its numbers are bold with a dotted line under them. It says nothing to a screen reader. */
Item {
    id: root

    /** It runs in the direction of its first letter, whatever that of the page. */
    required property string text
    required property WordRows tokens
    /** Whether its numbers open anything, and so stand out. */
    property bool opens: true
    property bool strong: false
    property bool second: false

    readonly property bool rightToLeft: /^[^A-Za-z\u00c0-\u058f]*[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/.test(root.text)
    readonly property int size: root.second ? Theme.secondSize : Theme.bodySize

    implicitHeight: flow.implicitHeight

    TextMetrics {
        id: blank

        font.family: Theme.family
        font.pixelSize: root.size
        text: " "
    }
    Flow {
        id: flow

        x: Theme.mirrored && !root.rightToLeft ? parent.width - implicitWidth : 0
        width: parent.width
        spacing: 0
        LayoutMirroring.enabled: root.rightToLeft
        LayoutMirroring.childrenInherit: true

        Repeater {
            model: root.tokens

            delegate: Row {
                id: token

                required property string lead
                required property string text
                required property string below

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
                        font.bold: root.opens || root.strong
                    }
                    // Dots under what opens.
                    Row {
                        visible: root.opens
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

    component SentencePart: Words {
        width: Math.min(implicitWidth, flow.width)
        visible: text !== ""
        font.pixelSize: root.size
        color: root.second ? Theme.inkSoft : Theme.ink
        Accessible.ignored: true
    }
}
