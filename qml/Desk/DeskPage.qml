// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Morrow.Style
import Morrow.Desk
import Morrow.Entries
import Morrow.Controls

/**
 * The desk: the caseload, and beside it, or in its place where there is no room, the person or
 * the files that are looked at. Files dropped anywhere on it are taken in.
 */
FocusScope {
    id: root

    required property DeskSession session

    enum View {
        People,
        Files,
        Person,
        Figures
    }

    property int view: DeskPage.People

    readonly property bool wide: root.width >= 2 * Theme.columnWidth * Theme.textScale
    readonly property real paneWidth: Theme.columnWidth * Theme.textScale * 21 / 50
    readonly property bool works: root.session.problem === ""
    readonly property bool empty: root.works && root.session.caseload.persons === 0 && root.session.caseload.toRead === 0

    function look(person: string) {
        root.session.look(person);
        root.show(DeskPage.Person);
    }

    /** Shows \a view, with the keyboard in it. */
    function show(view: int) {
        root.view = view;
        for (const page of [figures.itemAt(0), pages.itemAt(0), files.itemAt(0)]) {
            if (page) {
                page.forceActiveFocus(Qt.TabFocusReason);
                return;
            }
        }
        pane.forceActiveFocus(Qt.TabFocusReason);
    }

    function askForFiles() {
        root.asks = true;
        root.filesWanted();
    }

    /** Whether files were asked for, so that the dialog is there. */
    property bool asks: false

    signal filesWanted

    Accessible.role: Accessible.Pane
    //: What a screen reader calls the whole window.
    Accessible.name: qsTr("Desk")
    LayoutMirroring.enabled: Theme.mirrored
    LayoutMirroring.childrenInherit: true
    Keys.onEscapePressed: {
        if (root.view === DeskPage.Figures)
            root.show(DeskPage.Person);
        else if (!root.wide && root.view !== DeskPage.People)
            root.show(DeskPage.People);
    }

    Connections {
        target: root.session

        function onFilesCame() {
            root.show(DeskPage.Files);
        }
    }

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
    }

    RowLayout {
        anchors.fill: parent
        spacing: 0

        CaseloadPane {
            id: pane

            Layout.fillHeight: true
            Layout.fillWidth: !root.wide
            Layout.preferredWidth: root.wide ? root.paneWidth : -1
            Layout.maximumWidth: root.wide ? root.paneWidth : Infinity
            visible: root.works && !root.empty && (root.wide || root.view === DeskPage.People)
            focus: true
            caseload: root.session.caseload
            chosen: root.view === DeskPage.Person || root.view === DeskPage.Figures ? root.session.review.person : ""
            alone: !root.wide
            news: root.session.news
            onOpened: person => root.look(person)
            onFilesWanted: root.askForFiles()
        }
        Rectangle {
            Layout.fillHeight: true
            visible: pane.visible && root.wide
            implicitWidth: Theme.hairWidth
            color: Theme.hair
        }
        Item {
            id: main

            Layout.fillWidth: true
            Layout.fillHeight: true
            visible: root.wide || !pane.visible

            // Pages come and go with Repeaters, since a Loader of Qt 6.4 makes no component of this file.
            Repeater {
                model: root.works ? 0 : 1

                delegate: PageFrame {
                    anchors.fill: main
                    //: Title of the page that says why the desk cannot be used.
                    line: qsTr("The desk is not open")
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
                        //: A button that tries once more to open the desk.
                        text: qsTr("Try again")
                        onClicked: root.session.open()
                    }
                }
            }
            Repeater {
                model: root.empty && root.view !== DeskPage.Files ? 1 : 0

                delegate: PageFrame {
                    anchors.fill: main
                    //: Title of the desk before any file was taken in.
                    line: qsTr("Nobody here yet")
                    fraction: 0
                    //: How many people the desk knows.
                    progress: qsTr("No file was taken in.")

                    Notice {
                        Layout.fillWidth: true
                        Layout.leftMargin: Theme.margin
                        Layout.rightMargin: Theme.margin
                        failure: root.session.news
                    }
                    Words {
                        objectName: "first run"
                        Layout.fillWidth: true
                        Layout.leftMargin: Theme.margin
                        Layout.rightMargin: Theme.margin
                        //: What to do at a desk where nobody is known yet.
                        text: qsTr("Drop the file that somebody handed over on this window, or choose it. Everything stays on this computer.")
                    }
                    ActionButton {
                        objectName: "first files"
                        Layout.fillWidth: true
                        Layout.leftMargin: Theme.margin
                        Layout.rightMargin: Theme.margin
                        rank: ActionButton.Main
                        //: A button that asks for files to take in.
                        text: qsTr("Take in files")
                        onClicked: root.askForFiles()
                    }
                }
            }
            Words {
                objectName: "choose"
                anchors.centerIn: parent
                width: Math.min(implicitWidth, parent.width - 2 * Theme.margin)
                visible: root.works && !root.empty && root.view === DeskPage.People
                color: Theme.inkSoft
                //: Beside the list of people, while nobody is looked at.
                text: qsTr("Choose somebody, or drop a file here.")
            }
            Repeater {
                id: files

                model: root.works && root.view === DeskPage.Files ? 1 : 0

                delegate: FilesPage {
                    anchors.fill: main
                    session: root.session
                    hasBack: !root.wide && !root.empty
                    onBack: root.show(DeskPage.People)
                    onOpened: whom => root.look(whom)
                    onFilesWanted: root.askForFiles()
                }
            }
            Repeater {
                id: pages

                // It stays under the entries behind its figures, as far down as it was and with its table.
                model: root.works && !root.empty && (root.view === DeskPage.Person || root.view === DeskPage.Figures) ? 1 : 0

                delegate: ReviewPage {
                    anchors.fill: main
                    visible: root.view === DeskPage.Person
                    review: root.session.review
                    hasBack: !root.wide
                    onBack: root.show(DeskPage.People)
                    onFiguresWanted: sentence => {
                        root.session.review.openFigures(sentence);
                        root.show(DeskPage.Figures);
                    }
                    onVisitsWanted: {
                        root.session.review.openVisits();
                        root.show(DeskPage.Figures);
                    }
                    onDayWanted: row => {
                        root.session.review.openDay(row);
                        root.show(DeskPage.Figures);
                    }
                }
            }
            Repeater {
                id: figures

                model: root.works && !root.empty && root.view === DeskPage.Figures ? 1 : 0

                delegate: FiguresPage {
                    anchors.fill: main
                    line: root.session.review.label
                    beside: root.session.review.beside
                    fraction: root.session.review.fraction
                    progress: root.session.review.visits
                    sentence: root.session.review.figuresOf
                    figures: root.session.review.figures
                    //: A button that goes from the entries behind a figure back to the page they were opened on.
                    backWords: qsTr("Back to the review")
                    onBack: root.show(DeskPage.Person)
                }
            }
        }
    }

    DropArea {
        id: drop

        anchors.fill: parent
        enabled: root.works
        onEntered: event => event.accepted = event.hasUrls
        onDropped: event => {
            if (event.hasUrls) {
                root.session.takeInFiles(event.urls);
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
            //: Shown while files are held over the window.
            text: qsTr("Let go to take the files in.")
        }
    }

    Repeater {
        model: root.asks ? 1 : 0

        delegate: Item {
            FileDialog {
                id: dialog

                //: Title of the dialog that asks for files to take in.
                title: qsTr("Files to take in")
                fileMode: FileDialog.OpenFiles
                onAccepted: root.session.takeInFiles(selectedFiles)
            }
            Connections {
                target: root

                function onFilesWanted() {
                    dialog.open();
                }
            }
        }
    }
}
