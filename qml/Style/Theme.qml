// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

pragma Singleton
pragma ComponentBehavior: Bound

import QtQuick

/**
 * Every colour, size, font and duration there is.
 *
 * A program sets \l mode, \l textPercent, \l lessMotion and, while a stop-and-ask
 * page is shown, \l turned; everything else is read. Colours are one table of
 * three columns, and \l turned picks the other theme's column, so that such a page
 * looks like no other page without a colour that means danger.
 */
QtObject {
    id: root

    enum Mode {
        Light,
        Dark,
        HighContrast
    }

    property int mode: Theme.Light
    /** Text size in percent of the sizes below; what is outside 100..200 counts as the nearest of them. */
    property int textPercent: 100
    property bool lessMotion: false
    /** Device pixels for each of ours, from the screen the window is on. */
    property real pixelRatio: 1
    /** Whether the page shown is a stop-and-ask page. */
    property bool turned: false

    /** Whether layouts mirror: a root item binds LayoutMirroring.enabled to it. */
    readonly property bool mirrored: Application.layoutDirection === Qt.RightToLeft

    component TokenColumn: QtObject {
        required property color paper
        required property color sheet
        required property color ink
        required property color inkSoft
        required property color line
        required property color hair
        required property color accent
        required property color inkOnAccent
        required property color accentSoft
        required property color load
        required property color loadEdge
        required property color visit
    }

    readonly property TokenColumn lightColumn: TokenColumn {
        paper: "#F8F5EE"
        sheet: "#FFFFFF"
        ink: "#201C2E"
        inkSoft: "#4B4659"
        line: "#85808F"
        hair: "#DCD6CB"
        accent: "#5A2A66"
        inkOnAccent: "#FFFFFF"
        accentSoft: "#EBDFF0"
        load: "#E6D7AC"
        loadEdge: "#7D6214"
        visit: "#1F5F6B"
    }
    readonly property TokenColumn darkColumn: TokenColumn {
        paper: "#14121B"
        sheet: "#1E1B28"
        ink: "#F4F0E7"
        inkSoft: "#C8C2D2"
        line: "#85809A"
        hair: "#383347"
        accent: "#DDB8EA"
        inkOnAccent: "#201C2E"
        accentSoft: "#412F4B"
        load: "#54491F"
        loadEdge: "#D8BE74"
        visit: "#8FD0DC"
    }
    readonly property TokenColumn highContrastColumn: TokenColumn {
        paper: "#000000"
        sheet: "#000000"
        ink: "#FFFFFF"
        inkSoft: "#FFFFFF"
        line: "#FFFFFF"
        hair: "#FFFFFF"
        accent: "#FFD84A"
        inkOnAccent: "#000000"
        accentSoft: "#3A3200"
        load: "#333333"
        loadEdge: "#FFFFFF"
        visit: "#7FE3F2"
    }
    /** High contrast with paper and ink exchanged; yellow and the pale blue would vanish on white. */
    readonly property TokenColumn highContrastTurnedColumn: TokenColumn {
        paper: "#FFFFFF"
        sheet: "#FFFFFF"
        ink: "#000000"
        inkSoft: "#000000"
        line: "#000000"
        hair: "#000000"
        accent: "#000000"
        inkOnAccent: "#FFFFFF"
        accentSoft: "#E4E4E4"
        load: "#CCCCCC"
        loadEdge: "#000000"
        visit: "#00424D"
    }
    readonly property TokenColumn column: {
        if (root.mode === Theme.HighContrast)
            return root.turned ? root.highContrastTurnedColumn : root.highContrastColumn;
        return (root.mode === Theme.Dark) !== root.turned ? root.darkColumn : root.lightColumn;
    }

    /** The page. */
    readonly property color paper: root.column.paper
    /** What can be acted on or read as one thing. */
    readonly property color sheet: root.column.sheet
    /** Text, and the line of a chart. */
    readonly property color ink: root.column.ink
    /** Second text. */
    readonly property color inkSoft: root.column.inkSoft
    /** Edges of controls. */
    readonly property color line: root.column.line
    /** Rules that carry no meaning. */
    readonly property color hair: root.column.hair
    /** Chosen, the one main action, the horizon, the focus ring. */
    readonly property color accent: root.column.accent
    readonly property color inkOnAccent: root.column.inkOnAccent
    /** Done, or a selected row; text on it is ink. */
    readonly property color accentSoft: root.column.accentSoft
    /** Work done, edged with loadEdge; work prescribed is dashed in loadEdge. */
    readonly property color load: root.column.load
    readonly property color loadEdge: root.column.loadEdge
    /** What comes from the clinic; as text on sheet only. */
    readonly property color visit: root.column.visit
    /** How far what lies under a dialog fades. */
    readonly property real veil: 0.85

    readonly property FontLoader regularFace: FontLoader {
        source: "qrc:/morrow/fonts/NotoSans-Regular.ttf"
    }
    readonly property FontLoader boldFace: FontLoader {
        source: "qrc:/morrow/fonts/NotoSans-Bold.ttf"
    }
    readonly property FontLoader arabicFace: FontLoader {
        source: "qrc:/morrow/fonts/NotoSansArabic-Regular.ttf"
    }
    readonly property FontLoader arabicBoldFace: FontLoader {
        source: "qrc:/morrow/fonts/NotoSansArabic-Bold.ttf"
    }
    /** Noto Sans; Noto Sans Arabic stands in for the letters it has not. */
    readonly property string family: root.regularFace.name

    readonly property real textScale: Math.max(100, Math.min(200, root.textPercent)) / 100
    /** The page's line, which may shrink to leadSize before it breaks. */
    readonly property int pageLineSize: Math.round(34 * root.textScale)
    readonly property int leadSize: Math.round(19 * root.textScale)
    readonly property int bodySize: Math.round(17 * root.textScale)
    readonly property int secondSize: Math.round(15 * root.textScale)
    /** On charts; nothing is smaller. */
    readonly property int smallestSize: Math.round(14 * root.textScale)
    /** Lines 1.4 of the text size apart, as a share of Noto Sans's own 1.36; letters of other scripts keep their room. */
    readonly property real lineHeight: 1.03
    /** Of one line that fills a box. */
    readonly property real tightLineHeight: 1

    readonly property int tinyGap: 4
    readonly property int gap: 8
    readonly property int smallSpace: 14
    readonly property int space: 20
    readonly property int largeSpace: 28
    /** Between text and the edge of a page or sheet. */
    readonly property int margin: 16

    readonly property int corner: 4
    /** 1.5, on whole device pixels: else one side of a box comes out twice as heavy as the other. */
    readonly property real edge: Math.round(1.5 * root.pixelRatio) / root.pixelRatio
    readonly property int hairWidth: 1
    readonly property int ring: 2
    /** A bar that marks a chosen row, the clinic's words, what could not be saved. */
    readonly property int markWidth: 4

    /** The least side of what can be pressed. */
    readonly property int target: 48
    readonly property int setBox: 56
    /** Sides of a box on a scale where there is room. */
    readonly property int scaleBox: 56
    readonly property int scaleBoxWidest: 64
    readonly property int horizonDisc: 26
    readonly property int horizonLine: 3
    readonly property int numberWidth: 96

    /** Below it a sheet runs from edge to edge. */
    readonly property int narrow: 420
    /** The widest column of text and controls. */
    readonly property int columnWidth: 560

    /** The longest a fade or the half disc may take, in milliseconds. */
    readonly property int motion: root.lessMotion ? 0 : 150
}
