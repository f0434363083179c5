// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

import QtQuick
import QtQuick.Layouts
import Morrow.Style

/** What a diary is not, at the end of every page on which something is entered. */
Words {
    objectName: "nobody reads"
    Layout.fillWidth: true
    Layout.leftMargin: Theme.margin
    Layout.rightMargin: Theme.margin
    rank: Words.Second
    //: At the end of a page.
    text: qsTr("This diary records what you enter. Nobody reads it between visits.")
}
