import type { PedigreeSpec, PumpSpec, RotaSpec, SystemSpec } from "./system-spec.ts";

/** A moment of a chart: milliseconds since 1970, UTC. */
type Moment = number;

/** A reading drawn as what it is: a figure, the span a colour step stands for, or an open end. */
export type ChartMark =
  | { readonly kind: "point"; readonly at: Moment; readonly value: number }
  | { readonly kind: "interval"; readonly at: Moment; readonly low: number; readonly high: number }
  | { readonly kind: "at least"; readonly at: Moment; readonly low: number }
  | { readonly kind: "below"; readonly at: Moment; readonly high: number };

/** Readings of one instrument. */
export interface ChartSeries {
  /** Shown when there is more than one: a plain word of ours, never a member's own. */
  readonly name: string;
  readonly marks: readonly ChartMark[];
}

/** Where a level lies at one moment: its middle, and the range around it. */
export interface ChartLevel {
  readonly at: Moment;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A range through time; two levels at one moment draw a step. */
export interface ChartBand {
  readonly name: string;
  readonly levels: readonly ChartLevel[];
}

export interface ChartEvent {
  readonly at: Moment;
  /** Short and ours: "30 %", "harvest". */
  readonly label: string;
}

/** Where the level is meant to be; an open end is left out. */
export interface ChartTarget {
  readonly low?: number;
  readonly high?: number;
}

/** One measured thing on its own axis. */
export interface ChartPanel {
  /** With the unit: "nitrate, mg/L as NO₃". */
  readonly axisTitle: string;
  readonly series: readonly ChartSeries[];
  /** What the readings make likely. */
  readonly fitted?: ChartBand;
  /** What is to come, one band for each way of going on. */
  readonly forecasts: readonly ChartBand[];
  readonly target?: ChartTarget;
  /** A level not to be passed. */
  readonly limit?: number;
}

/** A picture as plain data: one panel large, or several small ones over the same days. */
export interface ChartSpec {
  /** States the finding, for those who cannot see the picture. */
  readonly altText: string;
  readonly from: Moment;
  readonly until: Moment;
  /** What lies after it is to come. */
  readonly now: Moment;
  /** IANA zone of the days on the axis. */
  readonly zone: string;
  readonly panels: readonly ChartPanel[];
  readonly events: readonly ChartEvent[];
}

/** All that can be drawn. */
export type PictureSpec = ChartSpec | SystemSpec | PumpSpec | RotaSpec | PedigreeSpec;

/** A drawn chart. */
export interface Picture {
  readonly svg: string;
  readonly png: Uint8Array;
}

/** Draws a chart; undefined when that cannot be done now: the words then stand alone. */
export type DrawChart = (spec: PictureSpec) => Promise<Picture | undefined>;
