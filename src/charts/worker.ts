import { parentPort, workerData } from "node:worker_threads";
import type { PictureSpec } from "../kit/chart.ts";
import { pngOf } from "./png.ts";
import { svgOf } from "./svg-of.ts";

/** Draws what it is sent, one after the other, away from the thread that answers members. */
parentPort?.on("message", (spec: PictureSpec) => {
  const svg = svgOf(spec);
  const png = pngOf(svg, String(workerData));
  parentPort?.postMessage({ svg, png });
});
