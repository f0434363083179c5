// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

import QtQuick
import Morrow.Style

/** What lies under a pressable control: its fill, its edge, and a ring where the keyboard is. */
Rectangle {
    id: root

    required property bool ringed

    radius: Theme.corner
    border.width: Theme.edge

    FocusRing {
        shown: root.ringed
    }
}
