// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Home
import Morrow.Controls

/** Home: one page at a time, the bar below it, and files that are dropped anywhere on it. */
FocusScope {
    id: root

    required property HomeSession session

    enum View {
        Today,
        Visit,
        Signs
    }

    property int view: HomePage.Today
    /** Whether a file was asked for, so that the dialog is there. */
    property bool asks: false

    readonly property bool open: root.session.state === HomeSession.Open
    readonly property bool stops: root.open && root.session.safety.stops
    /** Whether a number is open; the page that it stands on waits under its entries. */
    readonly property bool opened: root.open && root.session.figures.shown

    signal fileWanted

    // What was written down stands at the head of the page of signs.
    onStopsChanged: {
        const page = signs.itemAt(0) as SafetyPage;
        if (!root.stops && page)
            page.toTop();
    }

    function show(view: int) {
        root.session.forgetReceived();
        root.session.figures.close();
        root.view = view;
        root.focusPage();
    }

    function focusPage() {
        for (const page of [pages.itemAt(0), visits.itemAt(0), signs.itemAt(0)]) {
            if (page)
                page.forceActiveFocus(Qt.TabFocusReason);
        }
    }

    onOpenedChanged: {
        if (!root.opened)
            root.focusPage();
    }

    function askForFile() {
        root.asks = true;
        root.fileWanted();
    }

    focus: true
    Accessible.role: Accessible.Pane
    //: What a screen reader calls the whole window.
    Accessible.name: qsTr("Diary")
    LayoutMirroring.enabled: Theme.mirrored
    LayoutMirroring.childrenInherit: true
    Keys.onPressed: event => {
        event.accepted = true;
        if (event.key === Qt.Key_Escape && root.opened)
            root.session.figures.close();
        else if (event.key === Qt.Key_Escape && root.view !== HomePage.Today)
            root.show(HomePage.Today);
        else if ((event.modifiers & Qt.AltModifier) && event.key >= Qt.Key_1 && event.key <= Qt.Key_3)
            root.show(event.key - Qt.Key_1);
        else
            event.accepted = false;
    }

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
    }

    ColumnLayout {
        anchors.fill: parent
        visible: !root.stops
        spacing: 0

        Rectangle {
            id: strip

            Layout.fillWidth: true
            implicitHeight: stripColumn.implicitHeight + 2 * Theme.gap
            visible: root.open && (root.session.isDemo || root.session.news !== "" || root.session.refusal !== "" || root.session.received !== "")
            color: Theme.sheet

            ColumnLayout {
                id: stripColumn

                anchors.left: parent.left
                anchors.right: parent.right
                anchors.top: parent.top
                anchors.margins: Theme.gap
                anchors.leftMargin: Theme.margin
                anchors.rightMargin: Theme.margin
                spacing: 0

                GridLayout {
                    Layout.fillWidth: true
                    visible: root.session.isDemo
                    // The button stands beside the words where there is room for both.
                    columns: stripColumn.width >= example.implicitWidth + leave.implicitWidth + columnSpacing ? 2 : 1
                    columnSpacing: Theme.space
                    rowSpacing: 0

                    Words {
                        id: example

                        Layout.fillWidth: true
                        rank: Words.Second
                        //: Over every page while the diary of somebody invented is shown.
                        text: qsTr("An example, invented.")
                    }
                    ActionButton {
                        id: leave

                        objectName: "leave demo"
                        Layout.maximumWidth: stripColumn.width
                        rank: ActionButton.Worded
                        //: A button that closes the diary of somebody invented.
                        text: qsTr("Leave the example")
                        onClicked: root.session.leaveDemo()
                    }
                }
                Notice {
                    objectName: "news"
                    Layout.fillWidth: true
                    said: root.session.received
                    failure: root.session.refusal !== "" ? root.session.refusal : root.session.news
                }
            }
        }
        Item {
            id: main

            Layout.fillWidth: true
            Layout.fillHeight: true

            // Pages come and go with Repeaters, since a Loader of Qt 6.4 makes no component of this file.
            Repeater {
                model: root.session.state === HomeSession.CannotOpen ? 1 : 0

                delegate: PageFrame {
                    anchors.fill: main
                    //: Title of the page that says why the diary cannot be used.
                    line: qsTr("The diary is not open")
                    fraction: 0
                    progress: root.session.problem

                    Notice {
                        objectName: "cannot"
                        Layout.fillWidth: true
                        Layout.leftMargin: Theme.margin
                        Layout.rightMargin: Theme.margin
                        failure: root.session.problem
                    }
                    ActionButton {
                        objectName: "again"
                        Layout.fillWidth: true
                        Layout.leftMargin: Theme.margin
                        Layout.rightMargin: Theme.margin
                        rank: ActionButton.Main
                        //: A button that tries once more to open the diary.
                        text: qsTr("Try again")
                        onClicked: root.session.open()
                    }
                }
            }
            Repeater {
                model: root.session.state === HomeSession.FirstRun ? 1 : 0

                delegate: FirstRunPage {
                    anchors.fill: main
                    focus: true
                    session: root.session
                    onFileWanted: root.askForFile()
                }
            }
            Repeater {
                id: pages

                model: root.open && root.view === HomePage.Today ? 1 : 0

                delegate: TodayPage {
                    anchors.fill: main
                    visible: !root.opened
                    focus: true
                    today: root.session.today
                    safety: root.session.safety
                    onSignsWanted: root.show(HomePage.Signs)
                }
            }
            Repeater {
                id: visits

                model: root.open && root.view === HomePage.Visit ? 1 : 0

                delegate: VisitPage {
                    anchors.fill: main
                    visible: !root.opened
                    focus: true
                    visit: root.session.visit
                    onFileWanted: root.askForFile()
                }
            }
            Repeater {
                id: signs

                model: root.open && root.view === HomePage.Signs ? 1 : 0

                delegate: SafetyPage {
                    anchors.fill: main
                    focus: true
                    safety: root.session.safety
                }
            }
            Repeater {
                model: root.opened ? 1 : 0

                delegate: FiguresPage {
                    anchors.fill: main
                    line: root.session.figures.subject
                    fraction: 0
                    //: What the page shows that comes after pressing a number.
                    progress: qsTr("The entries behind a number")
                    figures: root.session.figures.rows
                    //: A button that goes back from the entries behind a number.
                    backWords: qsTr("Back")
                    onBack: root.session.figures.close()
                    Component.onCompleted: forceActiveFocus(Qt.TabFocusReason)
                }
            }
        }
        HomeBar {
            Layout.fillWidth: true
            visible: root.open
            view: root.view
            onChosen: view => root.show(view)
        }
    }

    Repeater {
        model: root.stops ? 1 : 0

        delegate: StopPage {
            anchors.fill: root
            focus: true
            safety: root.session.safety
            Component.onCompleted: forceActiveFocus(Qt.TabFocusReason)
        }
    }

    DropArea {
        id: drop

        anchors.fill: parent
        enabled: root.session.state !== HomeSession.CannotOpen
        onEntered: event => event.accepted = event.hasUrls
        onDropped: event => {
            if (event.hasUrls) {
                root.session.openFiles(event.urls);
                event.acceptProposedAction();
            }
        }
    }
    Rectangle {
        anchors.fill: parent
        visible: drop.containsDrag
        color: Theme.paper
        border.color: Theme.accent
        border.width: Theme.markWidth

        Words {
            anchors.centerIn: parent
            width: Math.min(implicitWidth, parent.width - 2 * Theme.margin)
            rank: Words.Lead
            //: Shown while a file is held over the window.
            text: qsTr("Let go to open the file.")
        }
    }

    Repeater {
        model: root.asks ? 1 : 0

        delegate: Item {
            FileDialog {
                id: dialog

                //: Title of the dialog that asks for the file with the plan.
                title: qsTr("The file from your clinic")
                fileMode: FileDialog.OpenFile
                onAccepted: root.session.openFiles([selectedFile])
            }
            Connections {
                target: root

                function onFileWanted() {
                    dialog.open();
                }
            }
        }
    }
}
