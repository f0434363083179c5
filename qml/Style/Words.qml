// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick

/**
 * Text in our type: plain, wrapping, along the reading direction of the layout.
 *
 * A screen reader hears it as it stands; inside a control that says its own name,
 * set Accessible.ignored.
 */
Text {
    id: root

    enum Rank {
        Body,
        Second,
        Lead,
        PageLine
    }

    property int rank: Words.Body

    textFormat: Text.PlainText
    wrapMode: Text.Wrap
    horizontalAlignment: Text.AlignLeft
    color: root.rank === Words.Second ? Theme.inkSoft : Theme.ink
    font.family: Theme.family
    font.pixelSize: {
        switch (root.rank) {
        case Words.Second:
            return Theme.secondSize;
        case Words.Lead:
            return Theme.leadSize;
        case Words.PageLine:
            return Theme.pageLineSize;
        default:
            return Theme.bodySize;
        }
    }
    lineHeight: Theme.lineHeight

    Accessible.role: root.rank === Words.PageLine ? Accessible.Heading : Accessible.StaticText
    Accessible.name: root.text
}
