// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Morrow.Style

/**
 * One question that needs an answer before anything else, in the window that opened it.
 *
 * The keyboard starts on the answer that changes nothing; Escape gives it too. A dialog
 * higher than its window scrolls, and the keyboard starts at its question.
 */
T.Dialog {
    id: root

    required property string question
    /** What will be so afterwards. */
    required property string consequence
    required property string confirmWords
    //: Leaves everything as it is.
    property string refuseWords: qsTr("Leave it")

    /** The answer yes; every other way out is rejected(). */
    signal confirmed

    title: root.question // what a screen reader hears as the dialog's name
    parent: T.Overlay.overlay
    x: Math.round((parent.width - width) / 2)
    y: Math.round((parent.height - height) / 2)
    width: Math.min(Theme.columnWidth, parent.width - 2 * Theme.margin)
    height: Math.min(root.implicitHeight, parent.height - 2 * Theme.margin)
    implicitHeight: column.implicitHeight + 2 * Theme.space
    topPadding: Theme.space
    bottomPadding: Theme.space
    modal: true
    focus: true
    closePolicy: T.Popup.CloseOnEscape

    /** What had the keyboard before; it gets it back. */
    property Item opener: null

    onAboutToShow: root.opener = root.parent.Window.activeFocusItem
    onClosed: {
        if (root.opener)
            root.opener.forceActiveFocus(Qt.TabFocusReason);
    }
    // Where the answers are out of sight, the question is read first.
    onOpened: {
        if (words.interactive)
            words.forceActiveFocus(Qt.TabFocusReason);
        else
            refuse.forceActiveFocus(Qt.TabFocusReason);
    }

    T.Overlay.modal: Item { // the overlay sets the opacity of this one itself
        Rectangle {
            anchors.fill: parent
            color: Theme.paper
            opacity: Theme.veil
        }
    }

    enter: Transition {
        NumberAnimation {
            property: "opacity"
            from: 0
            to: 1
            duration: Theme.motion
        }
    }
    exit: Transition {
        NumberAnimation {
            property: "opacity"
            from: 1
            to: 0
            duration: Theme.motion
        }
    }

    background: Rectangle {
        color: Theme.sheet
        radius: Theme.corner
        border.color: Theme.line
        border.width: Theme.edge
    }

    contentItem: ScrollArea {
        id: words

        LayoutMirroring.enabled: Theme.mirrored // a dialog does not lie in the page that opened it
        LayoutMirroring.childrenInherit: true
        contentHeight: column.implicitHeight

        ColumnLayout {
            id: column

            x: Theme.space
            width: parent.width - 2 * Theme.space // the bar beside it, not on it
            spacing: Theme.smallSpace

            Words {
                Layout.fillWidth: true
                rank: Words.Lead
                font.bold: true
                text: root.question
                Accessible.role: Accessible.Heading
            }
            Words {
                Layout.fillWidth: true
                text: root.consequence
            }
            ActionButton {
                Layout.fillWidth: true
                rank: ActionButton.Main
                text: root.confirmWords
                onClicked: {
                    root.confirmed();
                    root.close();
                }
            }
            ActionButton {
                id: refuse

                Layout.fillWidth: true
                text: root.refuseWords
                onClicked: root.reject()
            }
        }
    }
}
