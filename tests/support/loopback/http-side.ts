/** The platform's HTTP side: reads requests, lets faults strike, keeps the log, answers. */

import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { performance } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import type { Backstage } from "./endpoint.ts";
import { type Fault, Faults } from "./faults.ts";
import type { Json } from "./json.ts";
import { type RequestBody, readBody, type UploadedFile } from "./multipart.ts";
import { Refusal, refuse } from "./refusals.ts";
import { routes } from "./routes.ts";

const REQUEST_BYTES = 25 * 1024 * 1024;
const KEPT_REQUESTS = 5000;

export interface LoggedRequest {
  readonly method: string;
  /** Below `/api/v10`. */
  readonly path: string;
  readonly query: string;
  readonly body: Json | undefined;
  readonly files: readonly UploadedFile[];
  /** By the platform's clock. */
  readonly at: number;
  /** The answer's status; 0 when the connection was cut instead. */
  status: number;
  /** The platform's own code of a refusal. */
  code: number | undefined;
}

/** A rate limit of the platform's own: so many requests per period on matching routes. */
export interface Bucket {
  readonly route: RegExp;
  readonly method?: string;
  readonly limit: number;
  readonly perMs: number;
}

interface CountedBucket {
  readonly bucket: Bucket;
  readonly name: string;
  used: number;
  resetAt: number;
}

export class HttpSide {
  readonly server: Server;
  readonly faults = new Faults();
  readonly log: LoggedRequest[] = [];
  readonly #token: string;
  readonly #latencyMs: number;
  readonly #buckets: CountedBucket[] = [];
  readonly #global: CountedBucket;
  #stage: Backstage | undefined;

  constructor(token: string, latencyMs: number, globalPerSecond: number) {
    this.#token = token;
    this.#latencyMs = latencyMs;
    const bucket = { route: /^(?!\/(interactions|webhooks)\/)/, limit: globalPerSecond, perMs: 1000 };
    this.#global = { bucket, name: "global", used: 0, resetAt: 0 };
    this.server = createServer({ keepAliveTimeout: 60_000 }, (request, response) => {
      void this.#answer(request, response);
    });
  }

  /** Opens the doors. */
  async listen(port: number): Promise<number> {
    await new Promise<void>((resolve, reject) => {
      this.server.once("error", reject);
      this.server.listen(port, "127.0.0.1", resolve);
    });
    const address = this.server.address();
    if (address === null || typeof address === "string") throw new Error("No port was given");
    return address.port;
  }

  serve(stage: Backstage): void {
    this.#stage = stage;
  }

  addBucket(bucket: Bucket): void {
    this.#buckets.push({ bucket, name: `bucket-${this.#buckets.length + 1}`, used: 0, resetAt: 0 });
  }

  async close(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise<void>((resolve) => this.server.close(() => resolve()));
  }

  async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      await this.#process(request, response);
    } catch (error) {
      if (response.headersSent || response.destroyed) return;
      const refusal =
        error instanceof Refusal ? error : new Refusal(500, 0, `Loopback defect: ${String(error)}`);
      if (!(error instanceof Refusal)) console.error("Loopback platform:", error);
      send(response, refusal.status, refusal.body(), refusal.headers);
    }
  }

  async #process(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const stage = this.#stage;
    if (stage === undefined) throw new Error("Not serving yet");
    const bytes = await readAll(request);
    const receivedAt = performance.now();
    const method = request.method ?? "GET";
    const url = new URL(request.url ?? "/", stage.origin);
    if (url.pathname.startsWith("/cdn/")) return this.#serveFile(url.pathname, stage, response);

    // The client library writes `@original` percent-encoded.
    const path = /^\/api\/v10(\/.*)$/.exec(decoded(url.pathname))?.[1];
    if (path === undefined) throw refuse.unknownRoute();
    const body = await readBody(bytes, request.headers["content-type"] ?? "");
    const entry: LoggedRequest = {
      method,
      path,
      query: url.search,
      body: body.json,
      files: body.files,
      at: stage.world.now(),
      status: 0,
      code: undefined,
    };
    this.log.push(entry);
    if (this.log.length > 2 * KEPT_REQUESTS) this.log.splice(0, KEPT_REQUESTS);

    const fault = this.faults.take(method, path);
    if (await this.#strike(fault, request, response, entry)) return;
    const headers = this.#countAgainstLimits(method, path, response, entry);
    if (headers === undefined) return;
    this.#carryOut(stage, entry, body, url, request, receivedAt, (status, answer, more) => {
      if (fault?.kind === "reset-after") return void request.socket.resetAndDestroy();
      if (fault?.kind === "close-after") return void request.socket.destroy();
      entry.status = status;
      const respond = () => send(response, status, answer, { ...headers, ...more });
      if (this.#latencyMs > 0) setTimeout(respond, this.#latencyMs);
      else respond();
    });
  }

  #carryOut(
    stage: Backstage,
    entry: LoggedRequest,
    body: RequestBody,
    url: URL,
    request: IncomingMessage,
    receivedAt: number,
    finish: (status: number, answer: Json | undefined, headers: Readonly<Record<string, string>>) => void,
  ): void {
    try {
      const here = routes.filter((route) => route.path.test(entry.path));
      const route = here.find((candidate) => candidate.method === entry.method);
      if (route === undefined) throw here.length > 0 ? refuse.wrongMethod() : refuse.unknownRoute();
      if (route.needsBot && request.headers.authorization !== `Bot ${this.#token}`)
        throw refuse.unauthorized();
      const ids = route.path.exec(entry.path)?.slice(1) ?? [];
      const call = { json: body.json, files: body.files, query: url.searchParams, receivedAt };
      const answer = route.handle(stage, call, ...ids);
      finish(answer.status, answer.body, {});
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      entry.code = error.code;
      finish(error.status, error.body(), error.headers);
    }
  }

  /** Lets a fault strike before the work. True: the request is over. */
  async #strike(
    fault: Fault | undefined,
    request: IncomingMessage,
    response: ServerResponse,
    entry: LoggedRequest,
  ): Promise<boolean> {
    if (fault?.kind === "delay") await sleep(fault.ms);
    else if (fault?.kind === "reset-before") request.socket.resetAndDestroy();
    else if (fault?.kind === "close-before") request.socket.destroy();
    else if (fault?.kind === "429") tooMany(response, entry, fault.retryAfterS, fault.scope ?? "user");
    else if (fault?.kind === "5xx") {
      entry.status = fault.status ?? 502;
      send(response, entry.status, { message: "Internal Server Error", code: 0 }, {});
    } else if (fault?.kind === "refuse") {
      entry.status = fault.status;
      entry.code = fault.code;
      send(response, fault.status, { message: fault.message ?? "Refused", code: fault.code }, {});
    } else return false;
    return fault.kind !== "delay";
  }

  /** The headers that announce the limits of this route; undefined when one was exceeded and answered. */
  #countAgainstLimits(
    method: string,
    path: string,
    response: ServerResponse,
    entry: LoggedRequest,
  ): Record<string, string> | undefined {
    const headers: Record<string, string> = {};
    for (const counted of [this.#global, ...this.#buckets]) {
      const { bucket } = counted;
      if (!bucket.route.test(path) || (bucket.method !== undefined && bucket.method !== method)) continue;
      const now = performance.now();
      if (now >= counted.resetAt) {
        counted.used = 0;
        counted.resetAt = now + bucket.perMs;
      }
      const resetAfterS = (counted.resetAt - now) / 1000;
      counted.used += 1;
      if (counted.used > bucket.limit) {
        tooMany(response, entry, resetAfterS, counted === this.#global ? "global" : "user");
        return undefined;
      }
      if (counted === this.#global) continue;
      headers["x-ratelimit-bucket"] = counted.name;
      headers["x-ratelimit-limit"] = String(bucket.limit);
      headers["x-ratelimit-remaining"] = String(bucket.limit - counted.used);
      headers["x-ratelimit-reset-after"] = resetAfterS.toFixed(3);
    }
    return headers;
  }

  #serveFile(path: string, { world }: Backstage, response: ServerResponse): void {
    const file = world.files.get(path);
    if (file === undefined) throw refuse.unknownRoute();
    response.writeHead(200, { "content-type": file.contentType, "content-length": file.bytes.length });
    response.end(file.bytes);
  }
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    throw refuse.unknownRoute();
  }
}

async function readAll(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request) {
    if (!(chunk instanceof Buffer)) continue;
    length += chunk.length;
    if (length > REQUEST_BYTES) throw refuse.requestTooLarge();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function tooMany(
  response: ServerResponse,
  entry: LoggedRequest,
  retryAfterS: number,
  scope: "user" | "shared" | "global",
): void {
  entry.status = 429;
  const isGlobal = scope === "global";
  const headers = {
    "retry-after": String(retryAfterS),
    "x-ratelimit-scope": scope,
    ...(isGlobal ? { "x-ratelimit-global": "true" } : {}),
  };
  const body = {
    message: "You are being rate limited.",
    retry_after: retryAfterS,
    global: isGlobal,
    code: 0,
  };
  send(response, 429, body, headers);
}

function send(
  response: ServerResponse,
  status: number,
  body: Json | undefined,
  headers: Readonly<Record<string, string>>,
): void {
  if (response.destroyed) return;
  if (body === undefined) {
    response.writeHead(status, headers).end();
    return;
  }
  const text = JSON.stringify(body);
  response.writeHead(status, {
    ...headers,
    "content-type": "application/json",
    "content-length": Buffer.byteLength(text),
  });
  response.end(text);
}
