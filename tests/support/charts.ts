import type { ChartSpec } from "../../src/kit/chart.ts";

const DAY_MS = 86_400_000;
export const NOW = Date.UTC(2026, 2, 4, 12);

/** Sixty days of one invented tank: five readings of every kind, two water changes, three weeks ahead. */
export const EXAMPLE: ChartSpec = {
  altText: "Nitrate, from 5 readings: about 40 mg/L now, and rising.",
  from: NOW - 60 * DAY_MS,
  until: NOW + 21 * DAY_MS,
  now: NOW,
  zone: "Europe/Lisbon",
  events: [
    { at: NOW - 30 * DAY_MS, label: "30 %" },
    { at: NOW - 10 * DAY_MS, label: "25 %" },
  ],
  panels: [
    {
      axisTitle: "nitrate, mg/L as NO₃",
      series: [
        {
          name: "readings",
          marks: [
            { kind: "below", at: NOW - 55 * DAY_MS, high: 5 },
            { kind: "interval", at: NOW - 45 * DAY_MS, low: 7.5, high: 15 },
            { kind: "interval", at: NOW - 35 * DAY_MS, low: 15, high: 30 },
            { kind: "point", at: NOW - 20 * DAY_MS, value: 24 },
            { kind: "at least", at: NOW - 5 * DAY_MS, low: 30 },
          ],
        },
      ],
      fitted: {
        name: "likely level",
        levels: [
          { at: NOW - 55 * DAY_MS, low: 2, middle: 4, high: 6 },
          { at: NOW, low: 32, middle: 40, high: 48 },
        ],
      },
      forecasts: [
        {
          name: "left alone",
          levels: [
            { at: NOW, low: 32, middle: 40, high: 48 },
            { at: NOW + 21 * DAY_MS, low: 45, middle: 62, high: 80 },
          ],
        },
      ],
      target: { low: 10, high: 30 },
      limit: 50,
    },
  ],
};
