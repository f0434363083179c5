// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic
import Morrow.Style

/**
 * What is higher than its place: scrolls up and down only, by touch, wheel and keys, and
 * brings whatever has the keyboard into view.
 */
Flickable {
    id: root

    readonly property Item focused: root.Window.activeFocusItem

    function reveal(item: Item) {
        for (let around = item; around !== root.contentItem; around = around.parent) {
            if (!around)
                return; // it lies elsewhere
        }
        const top = item.mapToItem(root.contentItem, 0, 0).y - Theme.gap;
        const bottom = top + item.height + 2 * Theme.gap;
        const lowest = Math.max(0, root.contentHeight - root.height);
        if (top < root.contentY)
            root.contentY = Math.max(0, top);
        else if (bottom > root.contentY + root.height)
            root.contentY = Math.min(lowest, Math.min(top, bottom - root.height));
    }

    function scroll(by: real) {
        root.contentY = Math.max(0, Math.min(root.contentHeight - root.height, root.contentY + by));
    }

    contentWidth: root.width
    implicitHeight: root.contentHeight
    clip: true
    interactive: root.contentHeight > root.height
    boundsBehavior: Flickable.StopAtBounds
    pixelAligned: true // a thin line between two pixels would not be drawn
    flickableDirection: Flickable.VerticalFlick
    onFocusedChanged: {
        if (root.focused)
            root.reveal(root.focused);
    }
    Keys.onPressed: event => {
        const page = root.height - Theme.target;
        if (event.key === Qt.Key_PageDown)
            root.scroll(page);
        else if (event.key === Qt.Key_PageUp)
            root.scroll(-page);
        else if (event.key === Qt.Key_Down)
            root.scroll(Theme.target);
        else if (event.key === Qt.Key_Up)
            root.scroll(-Theme.target);
        else
            return;
        event.accepted = true;
    }

    ScrollBar.vertical: ScrollBar {
        id: bar

        policy: root.interactive ? ScrollBar.AlwaysOn : ScrollBar.AlwaysOff
        padding: 0
        focusPolicy: Qt.NoFocus
        Accessible.ignored: true

        contentItem: Rectangle {
            implicitWidth: Theme.tinyGap
            radius: width / 2
            color: Theme.line
        }
    }
}
