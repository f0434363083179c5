// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtCharts
import Morrow.Style
import Morrow.Charts

/**
 * Pain above, work below, one time axis: each panel has one scale, gaps are gaps, visits and
 * unusual days are labelled uprights through both.
 *
 * A screen reader hears one graphic with its sentence; CourseTable is its accessible form.
 */
Item {
    id: root

    required property CourseModel course

    readonly property int greatestPain: 10
    readonly property real lineRoom: Math.ceil(labelSize.height)
    readonly property real gutter: Math.ceil(Math.max(root.spanOf(root.course.amountLabel(root.course.mostWork)),
        root.spanOf("10"))) + Theme.gap
    readonly property real plotLeft: Theme.mirrored ? 0 : root.gutter
    readonly property real plotWidth: Math.max(Theme.target, root.width - root.gutter)
    readonly property int markerSize: root.plotWidth / root.course.days >= Theme.gap ? Theme.gap + 1 : Theme.tinyGap + 1

    // Both ask for the height first, since that is what tells that the size of the letters changed.
    function spanOf(words: string): real {
        return root.lineRoom > 0 ? labelSize.advanceWidth(words) : 0;
    }
    function shortened(words: string, most: real): string {
        return root.lineRoom > 0 ? labelSize.elidedText(words, Text.ElideRight, most) : words;
    }

    /** What stands beside the upright of \a mark: of a long text its beginning, since all of it stands in the table. */
    function labelOf(mark: int): string {
        const most = root.plotWidth / 3;
        const words = root.course.markWords(mark);
        if (root.spanOf(words) <= most)
            return words;
        if (root.course.markIsVisit(mark))
            return root.course.markNumber(mark);
        const beginning = root.shortened(words, most);
        return beginning.length > root.leastLetters ? beginning : "";
    }

    /** Where the middle of \a day stands, counted from the first. */
    function place(day: real): real {
        const share = (day + 1 / 2) / root.course.days;
        return root.plotLeft + (Theme.mirrored ? 1 - share : share) * root.plotWidth;
    }

    /** Where each label of a mark stands: x, lane, width; in the first lane where it has room. */
    readonly property var labels: {
        const ends = [];
        const placed = [];
        for (let mark = 0; mark < root.course.marks; ++mark) {
            const words = root.labelOf(mark);
            const width = Math.ceil(root.spanOf(words)) + 1;
            const at = root.place(root.course.markDay(mark));
            // Beside its line, on the side where there is room.
            let left = Theme.mirrored ? at - Theme.tinyGap - width : at + Theme.tinyGap;
            if (left + width > root.plotLeft + root.plotWidth)
                left = at - Theme.tinyGap - width;
            if (left < root.plotLeft)
                left = at + Theme.tinyGap;
            let lane = 0;
            while (lane < ends.length && ends[lane].some(taken => left < taken.right + Theme.gap && left + width > taken.left - Theme.gap))
                ++lane;
            const shown = words !== "" && lane < root.mostLanes;
            if (shown) {
                if (lane === ends.length)
                    ends.push([]);
                ends[lane].push({
                    left: left,
                    right: left + width
                });
            }
            placed.push({
                words: words,
                left: left,
                lane: lane,
                shown: shown
            });
        }
        return {
            lanes: ends.length,
            placed: placed
        };
    }
    readonly property int mostLanes: 3
    readonly property int leastLetters: 6
    readonly property real labelRoom: root.labels.lanes * root.lineRoom
    //: A label on a chart for a day whose own words are too long for it.
    readonly property string unusualWords: qsTr("unusual day")

    /** Days that are labelled below: the first, the last, and whole weeks between them as there is room. */
    readonly property var ticks: {
        const last = root.course.days - 1;
        const room = root.spanOf("30 MMM") + Theme.smallSpace;
        const found = [0];
        const step = 7 * Math.max(1, Math.ceil(room / Math.max(1, root.plotWidth * 7 / root.course.days)));
        for (let day = step; day < last; day += step) {
            if ((last - day) * root.plotWidth / root.course.days >= room)
                found.push(day);
        }
        if (last > 0 && root.plotWidth >= 2 * room)
            found.push(last);
        return found;
    }

    function fill() {
        // Lines are kept for the next course: Qt Charts 6.4 may still draw one that was removed, and crash.
        while (pain.lines.length < root.course.runs) {
            const series = pain.createSeries(ChartView.SeriesTypeLine, "", pain.dayAxis, pain.scaleAxis);
            series.color = Qt.binding(() => Theme.ink);
            series.width = Theme.ring;
            pain.lines.push(series);
        }
        for (let run = 0; run < pain.lines.length; ++run)
            root.course.fillRun(pain.lines[run], run);
        root.course.fillSameDay(sameDay);
        root.course.fillLate(late);
        root.course.fillPaper(paper);
        root.course.fillWork(workDone);
        root.course.fillPrescribed(prescribed);
    }

    implicitHeight: below.y + below.height
    Accessible.role: Accessible.Graphic
    Accessible.name: root.course.sentence
    Accessible.description: root.course.sentence
    Component.onCompleted: root.fill()

    Connections {
        target: root.course

        function onChanged() {
            root.fill();
        }
    }

    FontMetrics {
        id: labelSize

        font.family: Theme.family
        font.pixelSize: Theme.smallestSize
    }

    Flow {
        id: key

        width: root.width
        spacing: Theme.smallSpace

        ChartKey {
            most: root.width
            sign: ChartKey.Filled
            //: In the key of a chart: what its points are.
            words: qsTr("pain, 0 to 10")
        }
        ChartKey {
            most: root.width
            visible: root.course.hasLate
            sign: ChartKey.Hollow
            //: In the key of a chart: hollow points.
            words: qsTr("entered late")
        }
        ChartKey {
            most: root.width
            visible: root.course.hasPaper
            sign: ChartKey.Square
            //: In the key of a chart: square points.
            words: qsTr("from paper")
        }
        ChartKey {
            most: root.width
            visible: root.course.hasWork
            sign: ChartKey.Bar
            //: In the key of a chart: what its bars are, and their unit.
            words: qsTr("work a week, %1").arg(root.course.workUnit)
        }
        ChartKey {
            most: root.width
            visible: root.course.hasWork
            sign: ChartKey.Dashes
            //: In the key of a chart: a dashed line, the work that the plan asks for.
            words: qsTr("prescribed")
        }
        ChartKey {
            most: root.width
            visible: root.course.hasVisits
            sign: ChartKey.Dots
            //: In the key of a chart: a dotted upright line.
            words: qsTr("visit")
        }
        ChartKey {
            most: root.width
            visible: root.course.hasUnusual
            sign: ChartKey.Line
            words: root.unusualWords
        }
    }

    // The uprights lie below the drawing, so that no answer hides behind one.
    Repeater {
        model: root.course.marks

        delegate: DottedLine {
            id: upright

            required property int index

            x: root.place(root.course.markDay(upright.index)) - width / 2
            y: pain.y - root.lineRoom / 2 - root.labelRoom + (root.labels.placed[upright.index]?.lane ?? 0) * root.lineRoom
            height: (root.course.hasWork ? work.y + work.height : pain.y + pain.height) - y
            dotted: root.course.markIsVisit(upright.index)
            color: upright.dotted ? Theme.visit : Theme.inkSoft
        }
    }
    Repeater {
        model: root.course.marks

        delegate: Rectangle {
            id: mark

            required property int index
            readonly property var label: root.labels.placed[mark.index] ?? null

            x: mark.label?.left ?? 0
            y: pain.y - root.lineRoom / 2 - root.labelRoom + (mark.label?.lane ?? 0) * root.lineRoom
            width: markWords.width
            height: markWords.height
            visible: mark.label?.shown ?? false
            color: Theme.sheet // other uprights end here

            Words {
                id: markWords

                text: mark.label?.words ?? ""
                font.pixelSize: Theme.smallestSize
                lineHeight: Theme.tightLineHeight
                wrapMode: Text.NoWrap
                color: root.course.markIsVisit(mark.index) ? Theme.visit : Theme.inkSoft
                Accessible.ignored: true
            }
        }
    }

    ChartPanel {
        id: pain

        property var lines: []

        x: root.plotLeft
        y: key.height + Theme.smallSpace + root.labelRoom + root.lineRoom / 2
        width: root.plotWidth
        height: Math.max(Theme.target * 4, pain.steps * (root.lineRoom + Theme.tinyGap))
        days: root.course.days
        most: root.greatestPain
        steps: 5

        ScatterSeries {
            id: sameDay

            axisX: pain.dayAxis
            axisY: pain.scaleAxis
            color: Theme.ink
            borderColor: Theme.ink
            markerSize: root.markerSize
        }
        ScatterSeries {
            id: late

            axisX: pain.dayAxis
            axisY: pain.scaleAxis
            color: Theme.sheet
            borderColor: Theme.ink
            borderWidth: Theme.edge
            markerSize: root.markerSize
        }
        ScatterSeries {
            id: paper

            axisX: pain.dayAxis
            axisY: pain.scaleAxis
            color: Theme.ink
            borderColor: Theme.ink
            markerShape: ScatterSeries.MarkerShapeRectangle
            markerSize: root.markerSize - 1
        }
    }
    Repeater {
        model: pain.steps + 1

        delegate: ScaleLabel {
            required property int index

            text: root.course.amountLabel(index * root.greatestPain / pain.steps)
            middle: pain.y + pain.height * (1 - index / pain.steps)
        }
    }

    ChartPanel {
        id: work

        x: root.plotLeft
        y: pain.y + pain.height + root.lineRoom * 3 / 2
        width: root.plotWidth
        height: root.course.hasWork ? Theme.target * 2 : 0
        visible: root.course.hasWork
        days: root.course.days
        most: root.course.mostWork
        steps: 2

        AreaSeries {
            axisX: work.dayAxis
            axisY: work.scaleAxis
            color: Theme.load
            borderColor: Theme.loadEdge
            borderWidth: Theme.edge
            upperSeries: LineSeries {
                id: workDone
            }
        }
        LineSeries {
            id: prescribed

            axisX: work.dayAxis
            axisY: work.scaleAxis
            color: Theme.loadEdge
            width: Theme.ring
            style: Qt.DashLine
        }
    }
    Repeater {
        model: root.course.hasWork ? 2 : 0

        delegate: ScaleLabel {
            required property int index

            text: root.course.amountLabel(index * root.course.mostWork)
            middle: work.y + work.height * (1 - index)
        }
    }

    Item {
        id: below

        y: (root.course.hasWork ? work.y + work.height : pain.y + pain.height) + root.lineRoom / 2
        width: root.width
        height: root.lineRoom

        Repeater {
            model: root.ticks

            delegate: Words {
                id: tick

                required property int modelData

                x: Math.max(root.plotLeft, Math.min(root.plotLeft + root.plotWidth - width, root.place(tick.modelData) - width / 2))
                text: root.course.dayLabel(tick.modelData)
                font.pixelSize: Theme.smallestSize
                lineHeight: Theme.tightLineHeight
                wrapMode: Text.NoWrap
                color: Theme.inkSoft
                Accessible.ignored: true
            }
        }
    }

    component ScaleLabel: Words {
        id: scaleLabel

        required property real middle

        x: Theme.mirrored ? root.width - root.gutter + Theme.gap : root.gutter - Theme.gap - width
        y: scaleLabel.middle - height / 2
        font.pixelSize: Theme.smallestSize
        lineHeight: Theme.tightLineHeight
        wrapMode: Text.NoWrap
        color: Theme.inkSoft
        Accessible.ignored: true
    }
}
