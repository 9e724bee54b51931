import { parentPort, workerData } from "node:worker_threads";
import type { ChartSpec } from "../kit/chart.ts";
import { pngOf } from "./png.ts";
import { chartSvg } from "./svg.ts";

/** Draws what it is sent, one after the other, away from the thread that answers members. */
parentPort?.on("message", (spec: ChartSpec) => {
  const svg = chartSvg(spec);
  const png = pngOf(svg, String(workerData));
  parentPort?.postMessage({ svg, png });
});
