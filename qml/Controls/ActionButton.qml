// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import Morrow.Style

/**
 * An action in words. One on a page has the rank Main, the others are edged or words.
 */
Target {
    id: root

    enum Rank {
        Main,
        Edged,
        Worded
    }

    property int rank: ActionButton.Edged
    /** Where the button is one of several answers: whether it is the one given. */
    property bool chosen: false

    readonly property bool filled: root.enabled && (root.chosen || root.rank === ActionButton.Main)
    readonly property bool edged: root.rank !== ActionButton.Worded || root.chosen

    leftPadding: root.edged ? Theme.space : 0
    rightPadding: root.leftPadding
    topPadding: Theme.gap
    bottomPadding: Theme.gap
    font.bold: root.edged
    font.underline: !root.edged

    fill: {
        if (root.filled)
            return Theme.accent;
        return root.down ? Theme.accentSoft : "transparent";
    }
    outline: {
        if (!root.edged)
            return "transparent";
        return root.enabled ? Theme.accent : Theme.hair;
    }

    contentItem: Words {
        text: root.text
        font: root.font
        color: {
            if (!root.enabled)
                return Theme.inkSoft;
            if (root.filled)
                return Theme.inkOnAccent;
            return root.down ? Theme.ink : Theme.accent;
        }
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        Accessible.ignored: true
    }

    // A filled button cannot fill itself while it is held down: it shows an inner edge.
    Rectangle {
        anchors.fill: parent
        anchors.margins: Theme.tinyGap
        visible: root.filled && root.down
        color: "transparent"
        radius: Theme.corner
        border.color: Theme.inkOnAccent
        border.width: Theme.edge
    }
}
