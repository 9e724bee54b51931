import { existsSync } from "node:fs";
import { extname } from "node:path";
import { Worker } from "node:worker_threads";
import type { DrawChart, Picture, PictureSpec } from "../kit/chart.ts";

export interface ChartRoom {
  readonly draw: DrawChart;
  /** Ends the drawing thread. */
  close(): Promise<void>;
}

export interface ChartRoomParts {
  readonly fontFile: string;
  /** Told of what could not be drawn. */
  readonly report: (error: unknown) => void;
  /** Charts that may wait; one more is not drawn. */
  readonly mostWaiting?: number;
  /** How long one chart may take before its thread is given up, ms. */
  readonly patienceMs?: number;
  /** How long the thread is kept with nothing to draw, ms. */
  readonly idleMs?: number;
}

interface Job {
  readonly spec: PictureSpec;
  done(picture: Picture | undefined): void;
}

/** The file beside this one, in whichever form this one runs. */
const WORKER_FILE = new URL(`./worker${extname(import.meta.filename)}`, import.meta.url);

/** A thread that draws. Run from source, it has to be taught the language first. */
function drawingThread(fontFile: string): Worker {
  return WORKER_FILE.pathname.endsWith(".js")
    ? new Worker(WORKER_FILE, { workerData: fontFile, execArgv: [] })
    : new Worker(
        `import("tsx/esm/api").then(({ register }) => (register(), import(${JSON.stringify(WORKER_FILE.href)})));`,
        {
          eval: true,
          workerData: fontFile,
          execArgv: [],
        },
      );
}

/**
 * Draws charts one at a time on a thread of its own, started with the first chart. A chart that cannot be
 * drawn is reported and left out, never thrown: the words of a reply stand without it.
 * Throws: Error when the font is missing.
 */
export function openChartRoom(parts: ChartRoomParts): ChartRoom {
  const { fontFile, report, mostWaiting = 16, patienceMs = 20_000, idleMs = 300_000 } = parts;
  if (!existsSync(fontFile)) throw new Error(`the chart font is missing: ${fontFile}`);
  const waiting: Job[] = [];
  let worker: Worker | undefined;
  let current: Job | undefined;
  let timer: NodeJS.Timeout | undefined;

  function startWorker(): Worker {
    const started = drawingThread(fontFile);
    started.on("message", (picture: Picture) => {
      if (worker === started) finish(picture);
    });
    started.on("error", (error) => {
      if (worker === started) giveUp(error);
    });
    return started;
  }

  /** Ends the thread; the next chart gets a fresh one. */
  function endWorker(): Promise<unknown> {
    clearTimeout(timer);
    const ending = worker?.terminate();
    worker = undefined;
    return ending ?? Promise.resolve();
  }

  function giveUp(error: unknown): void {
    report(error);
    void endWorker();
    finish(undefined);
  }

  function finish(picture: Picture | undefined): void {
    clearTimeout(timer);
    const job = current;
    current = undefined;
    job?.done(picture);
    next();
  }

  function next(): void {
    if (current !== undefined) return;
    current = waiting.shift();
    if (current === undefined) {
      // A quiet thread keeps neither the process nor its memory for long.
      worker?.unref();
      timer = setTimeout(() => void endWorker(), idleMs);
      timer.unref();
      return;
    }
    clearTimeout(timer);
    worker ??= startWorker();
    worker.ref();
    timer = setTimeout(() => giveUp(new Error(`a chart took longer than ${patienceMs} ms`)), patienceMs);
    worker.postMessage(current.spec);
  }

  return {
    draw: (spec) =>
      new Promise((resolve) => {
        if (waiting.length >= mostWaiting) return resolve(undefined);
        waiting.push({ spec, done: resolve });
        next();
      }),
    async close() {
      for (const job of [...waiting.splice(0), ...(current === undefined ? [] : [current])])
        job.done(undefined);
      current = undefined;
      await endWorker();
    },
  };
}
