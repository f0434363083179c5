// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style
import Morrow.Entries
import Morrow.Controls

/** A sentence with numbers; as a whole it is what is pressed, and opens all of them. */
Target {
    id: root

    /** The numbers of \l text, unless its owner knows better what opens. */
    property WordRows tokens: numbers.tokens
    /** Whether there is anything to open. */
    property bool opens: true
    property bool strong: false
    property bool second: false

    enabled: root.opens
    implicitHeight: Math.max(Theme.target, words.implicitHeight + root.topPadding + root.bottomPadding)
    topPadding: Theme.gap
    bottomPadding: root.topPadding
    leftPadding: 0
    rightPadding: 0
    fill: root.down ? Theme.accentSoft : "transparent"
    focusPolicy: root.opens ? Qt.StrongFocus : Qt.NoFocus
    //: What a screen reader says after a sentence whose numbers can be opened.
    Accessible.description: root.opens ? qsTr("Shows the entries") : ""

    NumberWords {
        id: numbers

        text: root.text
    }

    contentItem: SentenceWords {
        id: words

        text: root.text
        tokens: root.tokens
        opens: root.opens
        strong: root.strong
        second: root.second
    }
}
