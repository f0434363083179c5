// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma ComponentBehavior: Bound

import QtQuick
import QtCharts
import Morrow.Style

/**
 * One panel of a chart with one scale: its drawing fills the panel from edge to edge, and days run
 * along it from half a day before the first to half a day after the last. Labels stand outside.
 */
ChartView {
    id: root

    required property int days
    required property real most
    /** Grid lines above the lowest. */
    required property int steps

    readonly property alias dayAxis: dayAxis
    readonly property alias scaleAxis: scaleAxis

    function roomOf(width: real, height: real): rect {
        return Qt.rect(0, 0, width, height);
    }

    antialiasing: true
    legend.visible: false
    animationOptions: ChartView.NoAnimation
    backgroundColor: "transparent"
    backgroundRoundness: 0
    dropShadowEnabled: false
    margins.left: 0
    margins.right: 0
    margins.top: 0
    margins.bottom: 0
    plotArea: root.roomOf(root.width, root.height)
    Accessible.ignored: true

    ValuesAxis {
        id: dayAxis

        min: -1 / 2
        max: root.days - 1 / 2
        reverse: Theme.mirrored
        labelsVisible: false
        gridVisible: false
        lineVisible: false
    }
    ValuesAxis {
        id: scaleAxis

        min: 0
        max: root.most
        tickCount: root.steps + 1
        labelsVisible: false
        gridLineColor: Theme.hair
        lineVisible: false
    }
    // An axis without a series draws no grid.
    LineSeries {
        axisX: dayAxis
        axisY: scaleAxis
    }
}
