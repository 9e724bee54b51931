/** The platform's WebSocket side: sessions, sequence numbers, resuming.
 *  Source: Discord's documentation, pages Gateway and Opcodes and Status Codes, as of July–August 2026. */

import type { Server } from "node:http";
import { type WebSocket, WebSocketServer } from "ws";
import { isObject, type Json, type JsonObject, numberOf, parseJson, textOf } from "./json.ts";
import { wireGuild, wireUser } from "./wire.ts";
import type { World } from "./world.ts";

export const intent = {
  guilds: 1 << 0,
  guildMembers: 1 << 1,
  guildPresences: 1 << 8,
  guildMessages: 1 << 9,
  directMessages: 1 << 12,
  messageContent: 1 << 15,
} as const;

const PRIVILEGED = intent.guildMembers | intent.guildPresences | intent.messageContent;
/** Bits 0–16, 20, 21, 24 and 25 are in use. */
const KNOWN_INTENTS = 0x1_ffff | (1 << 20) | (1 << 21) | (1 << 24) | (1 << 25);
const PAYLOAD_BYTES = 4096;
const SENDS_PER_MINUTE = 120;
const KEPT_EVENTS = 2000;

const op = {
  dispatch: 0,
  heartbeat: 1,
  identify: 2,
  presence: 3,
  voice: 4,
  resume: 6,
  reconnect: 7,
  members: 8,
  invalidSession: 9,
  hello: 10,
  ack: 11,
} as const;

const close = {
  unknownOp: 4001,
  decode: 4002,
  notAuthenticated: 4003,
  badToken: 4004,
  twice: 4005,
  badSequence: 4007,
};

interface SentEvent {
  readonly sequence: number;
  readonly text: string;
  readonly onSent: (() => void) | undefined;
}

interface Session {
  readonly id: string;
  readonly shard: number;
  readonly shardCount: number;
  readonly intents: number;
  socket: WebSocket | undefined;
  /** What a resume can still replay, in order. */
  events: SentEvent[];
  /** Sequence number of the last event handed to the present socket. */
  delivered: number;
  sequence: number;
  isResumable: boolean;
}

export interface GatewayOptions {
  readonly token: string;
  readonly allowedPrivilegedIntents: number;
  readonly heartbeatMs: number;
  readonly latencyMs: number;
  readonly shards: number;
}

/** One dispatch, and who gets it. */
export interface Dispatch {
  readonly name: string;
  readonly data: JsonObject;
  readonly guildId?: string | undefined;
  /** Intent bits of which the session must hold one; none: everybody. */
  readonly intents?: number;
  /** The event as a session with these intents may see it. */
  readonly shape?: (data: JsonObject, intents: number) => JsonObject;
  /** Called when the event is first written to a socket. */
  readonly onSent?: () => void;
}

export class Gateway {
  /** Every dispatch is sent twice. */
  deliverTwice = false;
  /** Heartbeats stay unanswered, as on a connection that died without a word. */
  isDeaf = false;
  identifies = 0;
  resumes = 0;
  readonly #options: GatewayOptions;
  readonly #world: World;
  readonly #server: WebSocketServer;
  readonly #sessions = new Map<string, Session>();
  readonly #applicationId: string;
  #isPaused = false;

  constructor(server: Server, world: World, applicationId: string, options: GatewayOptions) {
    this.#world = world;
    this.#applicationId = applicationId;
    this.#options = options;
    this.#server = new WebSocketServer({ server, path: "/gateway", maxPayload: 1024 * 1024 });
    this.#server.on("connection", (socket) => this.#greet(socket));
  }

  get connections(): number {
    return [...this.#sessions.values()].filter((session) => session.socket !== undefined).length;
  }

  dispatch(dispatch: Dispatch): void {
    for (const session of this.#sessions.values()) {
      if (!isForShard(dispatch.guildId, session)) continue;
      if (dispatch.intents !== undefined && (session.intents & dispatch.intents) === 0) continue;
      const data = dispatch.shape?.(dispatch.data, session.intents) ?? dispatch.data;
      this.#append(session, dispatch.name, data, dispatch.onSent);
      if (this.deliverTwice) this.#append(session, dispatch.name, data);
      this.#flush(session);
    }
  }

  /** Closes every connection. Without a code the line is cut with no closing words. */
  drop({ code, resumable = true }: { code?: number; resumable?: boolean } = {}): void {
    for (const session of this.#sessions.values()) {
      const { socket } = session;
      session.socket = undefined;
      session.isResumable &&= resumable;
      if (code === undefined) socket?.terminate();
      else socket?.close(code);
    }
  }

  /** Op 7: asks every client to come back and resume. */
  askToReconnect(): void {
    for (const { socket } of this.#sessions.values()) write(socket, { op: op.reconnect, d: null });
  }

  /** Op 9: the session is over, or is to be resumed at once. */
  invalidateSessions(resumable = false): void {
    for (const session of this.#sessions.values()) {
      session.isResumable &&= resumable;
      write(session.socket, { op: op.invalidSession, d: resumable });
    }
  }

  /** Events pile up and reach nobody until `resume`. */
  pause(): void {
    this.#isPaused = true;
  }

  resume(): void {
    this.#isPaused = false;
    for (const session of this.#sessions.values()) this.#flush(session);
  }

  async close(): Promise<void> {
    for (const client of this.#server.clients) client.terminate();
    await new Promise<void>((resolve) => this.#server.close(() => resolve()));
  }

  #greet(socket: WebSocket): void {
    let session: Session | undefined;
    let sends = 0;
    const window = setInterval(() => {
      sends = 0;
    }, 60_000);
    window.unref();
    socket.on("message", (raw, isBinary) => {
      sends += 1;
      if (sends > SENDS_PER_MINUTE) return socket.close(4008, "You are sending too much");
      const bytes = Array.isArray(raw)
        ? Buffer.concat(raw)
        : Buffer.from(raw instanceof ArrayBuffer ? new Uint8Array(raw) : raw);
      const payload =
        isBinary || bytes.length > PAYLOAD_BYTES ? undefined : parseJson(bytes.toString("utf8"));
      if (!isObject(payload)) return socket.close(close.decode, "Decode error");
      session = this.#receive(socket, session, payload);
    });
    socket.on("close", (code) => {
      clearInterval(window);
      if (session === undefined || session.socket !== socket) return;
      session.socket = undefined;
      if (code === 1000 || code === 1001) this.#sessions.delete(session.id);
    });
    write(socket, { op: op.hello, d: { heartbeat_interval: this.#options.heartbeatMs } });
  }

  #receive(socket: WebSocket, session: Session | undefined, payload: JsonObject): Session | undefined {
    const kind = numberOf(payload["op"]);
    const data = isObject(payload["d"]) ? payload["d"] : {};
    if (kind === op.heartbeat) {
      if (!this.isDeaf) write(socket, { op: op.ack });
      return session;
    }
    if (kind === op.identify) return this.#identify(socket, session, data);
    if (kind === op.resume) return this.#resumeSession(socket, data);
    if (kind !== op.presence && kind !== op.voice && kind !== op.members)
      socket.close(close.unknownOp, "Unknown opcode");
    else if (session === undefined) socket.close(close.notAuthenticated, "Not authenticated");
    return session;
  }

  #identify(socket: WebSocket, earlier: Session | undefined, data: JsonObject): Session | undefined {
    const refuseWith = (code: number, reason: string) => {
      socket.close(code, reason);
      return undefined;
    };
    if (earlier !== undefined) return refuseWith(close.twice, "Already authenticated");
    if (textOf(data["token"])?.replace(/^Bot /, "") !== this.#options.token) {
      return refuseWith(close.badToken, "Authentication failed");
    }
    const intents = numberOf(data["intents"]);
    if (intents === undefined || (intents & ~KNOWN_INTENTS) !== 0)
      return refuseWith(4013, "Invalid intent(s)");
    if ((intents & PRIVILEGED & ~this.#options.allowedPrivilegedIntents) !== 0) {
      return refuseWith(4014, "Disallowed intent(s)");
    }
    const [shard, shardCount] = Array.isArray(data["shard"]) ? data["shard"] : [0, 1];
    if (typeof shard !== "number" || typeof shardCount !== "number" || shard >= shardCount) {
      return refuseWith(4010, "Invalid shard");
    }

    this.identifies += 1;
    const id = `session-${this.identifies}`;
    const session: Session = {
      id,
      shard,
      shardCount,
      intents,
      socket,
      events: [],
      delivered: 0,
      sequence: 0,
      isResumable: true,
    };
    this.#sessions.set(id, session);
    this.#welcome(session);
    return session;
  }

  #welcome(session: Session): void {
    const guilds = [...this.#world.guilds.values()].filter(
      (guild) => guild.isBotMember && isForShard(guild.id, session),
    );
    this.#append(session, "READY", {
      v: 10,
      user: { ...wireUser(this.#world.bot), verified: true, mfa_enabled: true, email: null, flags: 0 },
      guilds: guilds.map((guild) => ({ id: guild.id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: this.url,
      shard: [session.shard, session.shardCount],
      application: { id: this.#applicationId, flags: 0 },
    });
    if ((session.intents & intent.guilds) !== 0) {
      for (const guild of guilds) this.#append(session, "GUILD_CREATE", wireGuild(this.#world, guild));
    }
    this.#flush(session, true);
  }

  #resumeSession(socket: WebSocket, data: JsonObject): Session | undefined {
    if (textOf(data["token"])?.replace(/^Bot /, "") !== this.#options.token) {
      socket.close(close.badToken, "Authentication failed");
      return undefined;
    }
    const session = this.#sessions.get(textOf(data["session_id"]) ?? "");
    const sequence = numberOf(data["seq"]);
    if (session === undefined || !session.isResumable || sequence === undefined) {
      if (session !== undefined) this.#sessions.delete(session.id);
      write(socket, { op: op.invalidSession, d: false });
      return undefined;
    }
    const oldest = session.events[0]?.sequence ?? session.sequence + 1;
    if (sequence > session.sequence || sequence < oldest - 1) {
      this.#sessions.delete(session.id);
      socket.close(close.badSequence, "Invalid seq");
      return undefined;
    }
    this.resumes += 1;
    session.socket = socket;
    session.delivered = sequence;
    this.#append(session, "RESUMED", {});
    this.#flush(session, true);
    return session;
  }

  /** The address clients connect to. */
  get url(): string {
    const address = this.#server.address();
    if (address === null || typeof address === "string") throw new Error("The platform is not listening");
    return `ws://127.0.0.1:${address.port}/gateway`;
  }

  #append(session: Session, name: string, data: JsonObject, onSent?: () => void): void {
    session.sequence += 1;
    const text = JSON.stringify({ op: op.dispatch, t: name, s: session.sequence, d: data });
    session.events.push({ sequence: session.sequence, text, onSent });
    if (session.events.length > 2 * KEPT_EVENTS) session.events = session.events.slice(-KEPT_EVENTS);
  }

  #flush(session: Session, isEvenPaused = false): void {
    const { socket } = session;
    if (socket === undefined || (this.#isPaused && !isEvenPaused)) return;
    const first = session.events.findLastIndex((event) => event.sequence <= session.delivered) + 1;
    for (const event of session.events.slice(first)) {
      session.delivered = event.sequence;
      const send = () => {
        if (socket.readyState !== socket.OPEN) return;
        socket.send(event.text);
        event.onSent?.();
      };
      if (this.#options.latencyMs > 0) setTimeout(send, this.#options.latencyMs);
      else send();
    }
  }
}

function isForShard(guildId: string | undefined, session: Session): boolean {
  if (guildId === undefined) return session.shard === 0;
  return Number((BigInt(guildId) >> 22n) % BigInt(session.shardCount)) === session.shard;
}

function write(socket: WebSocket | undefined, payload: { op: number; d?: Json }): void {
  if (socket?.readyState === socket?.OPEN) socket?.send(JSON.stringify(payload));
}
