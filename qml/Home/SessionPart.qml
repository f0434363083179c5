// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Morrow.Style
import Morrow.Entries
import Morrow.Home
import Morrow.Controls

/** One session of the day: its exercises, a box a set, and what is said of it afterwards. */
ColumnLayout {
    id: root

    required property TodayModel today
    required property TodaySession session
    readonly property list<string> reasons: [
        //: Why a session was skipped.
        qsTr("too sore"),
        //: Why a session was skipped.
        qsTr("no time"),
        //: Why a session was skipped.
        qsTr("away"),
        //: Why a session was skipped.
        qsTr("other")
    ]
    property bool asksWhy: false
    /** Copies: what binds to them is not made again each time the session says that something changed. */
    readonly property bool skipped: root.session.skipped
    readonly property bool asksDuring: root.session.during.asked && (root.session.anyDone || root.session.during.value >= 0)
    readonly property bool asksAfter: root.session.after.asked && (root.session.anyDone || root.session.after.value >= 0)

    spacing: Theme.smallSpace

    component AllAsPlanned: ActionButton {
        required property TodaySession of

        Layout.fillWidth: true
        objectName: "all as planned"
        visible: !of.allDone || of.tickedAtOnce
        text: {
            if (of.allDone)
                //: A button that takes back what one tap on "All as planned" recorded.
                return qsTr("Take it back");
            //: A button: every set of this session was done as the plan says.
            return qsTr("All as planned");
        }
        //: What a screen reader says of a button about a session: "All as planned: morning".
        Accessible.name: qsTr("%1: %2").arg(text).arg(of.title)
        onClicked: {
            if (of.allDone)
                root.today.takeBackAll(of);
            else
                root.today.tickAll(of);
        }
    }

    Sheet {
        Layout.fillWidth: true
        visible: root.skipped
        title: root.session.title
        sentence: root.session.skipWords

        Notice {
            Layout.fillWidth: true
            said: root.session.said
            failure: root.session.failure
        }
        ActionButton {
            Layout.maximumWidth: parent.width
            rank: ActionButton.Worded
            //: A button that takes an answer back.
            text: qsTr("Take back")
            //: What a screen reader says of the button that takes back that a session was skipped.
            Accessible.name: qsTr("Take back: %1").arg(root.session.skipWords)
            onClicked: root.today.takeBackSkip(root.session)
        }
    }
    Sheet {
        Layout.fillWidth: true
        visible: root.session.several && !root.skipped
        title: root.session.title
        sentence: root.session.sentence

        AllAsPlanned {
            of: root.session
        }
        Notice {
            Layout.fillWidth: true
            failure: root.session.failure
        }
    }
    Words {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: !root.session.several && !root.skipped
        rank: Words.Second
        text: root.session.title
        Accessible.role: Accessible.Heading
    }
    Repeater {
        model: root.skipped ? null : root.session.cards

        delegate: Sheet {
            id: card

            required property TodayCard modelData
            /** The widest name of a side, so that the boxes of both stand in columns. */
            readonly property real sideWidth: {
                let width = 0;
                // Measured again with another size of the text.
                for (let i = 0; metrics.height > 0 && i < card.modelData.rows.length; ++i)
                    width = Math.max(width, Math.ceil(metrics.advanceWidth(card.modelData.rows[i].side)));
                return width;
            }

            Layout.fillWidth: true
            title: card.modelData.title
            sentence: card.modelData.sentence

            Words {
                Layout.fillWidth: true
                visible: card.modelData.keyPoint !== ""
                text: card.modelData.keyPoint
            }
            SentenceRow {
                objectName: "week"
                Layout.fillWidth: true
                visible: card.modelData.week !== ""
                second: true
                text: card.modelData.week
                onClicked: root.today.openWeek(card.modelData)
            }
            FontMetrics {
                id: metrics

                font.family: Theme.family
                font.pixelSize: Theme.bodySize
            }
            Repeater {
                model: card.modelData.rows

                delegate: GridLayout {
                    id: row

                    required property TodayRow modelData

                    Layout.fillWidth: true
                    // The side stands beside its boxes where there is room for three of them.
                    columns: card.width - 2 * Theme.margin - card.sideWidth >= 3 * (Theme.setBox * Theme.textScale + Theme.gap) + Theme.space ? 2 : 1
                    columnSpacing: Theme.space
                    rowSpacing: Theme.tinyGap

                    Words {
                        visible: row.modelData.side !== ""
                        Layout.minimumWidth: row.columns === 2 ? card.sideWidth : 0
                        text: row.modelData.side
                        wrapMode: Text.NoWrap
                        color: Theme.inkSoft
                    }
                    Flow {
                        Layout.fillWidth: true
                        spacing: Theme.gap

                        Repeater {
                            model: row.modelData.sets

                            delegate: TickBox {
                                id: box

                                required property TodaySet modelData

                                number: box.modelData.number
                                spoken: box.modelData.spoken
                                done: box.modelData.done
                                onClicked: root.today.tick(row.modelData, box.modelData)
                            }
                        }
                    }
                }
            }
            Notice {
                Layout.fillWidth: true
                said: card.modelData.said
                failure: card.modelData.failure
            }
            AllAsPlanned {
                visible: !root.session.several && (!of.allDone || of.tickedAtOnce)
                of: root.session
            }
            Notice {
                Layout.fillWidth: true
                failure: root.session.several ? "" : root.session.failure
            }
        }
    }
    // Made once they are asked: eleven boxes each are the most of a page.
    Repeater {
        model: root.asksDuring ? 1 : 0

        delegate: RatingSheet {
            Layout.fillWidth: true
            rating: root.session.during
            asksCannotSay: false
            onPicked: answer => root.today.rateDuring(root.session, answer)
            onTakenBack: root.today.takeBackDuring(root.session)
            onLastWanted: root.today.openLastDuring(root.session)
        }
    }
    Repeater {
        model: root.asksAfter ? 1 : 0

        delegate: RatingSheet {
            Layout.fillWidth: true
            rating: root.session.after
            asksCannotSay: false
            onPicked: answer => root.today.rateAfter(root.session, answer)
            onTakenBack: root.today.takeBackAfter(root.session)
            onLastWanted: root.today.openLastAfter(root.session)
        }
    }
    ActionButton {
        id: notToday

        Layout.leftMargin: Theme.margin
        Layout.maximumWidth: root.width - 2 * Theme.margin
        visible: !root.skipped && !root.session.anyDone
        rank: ActionButton.Worded
        //: A button: this session is not done today.
        text: qsTr("Not today")
        //: What a screen reader says of the button that skips a session: "Not today: morning".
        Accessible.name: qsTr("Not today: %1").arg(root.session.title)
        checkable: true
        ticked: root.asksWhy
        Accessible.onToggleAction: notToday.press()
        onClicked: root.asksWhy = !root.asksWhy
    }
    Flow {
        id: why

        Layout.fillWidth: true
        Layout.leftMargin: Theme.margin
        Layout.rightMargin: Theme.margin
        visible: notToday.visible && root.asksWhy
        spacing: Theme.gap

        Repeater {
            model: root.reasons

            delegate: ActionButton {
                id: reason

                required property string modelData

                width: Math.min(implicitWidth, why.width)
                text: reason.modelData
                //: What a screen reader says of a reason for skipping a session.
                Accessible.name: qsTr("Not today: %1").arg(reason.modelData)
                onClicked: {
                    root.asksWhy = false;
                    root.today.skip(root.session, reason.modelData);
                }
            }
        }
    }
}
