/** Things that go wrong between a bot and the platform, on request. */

export type FaultKind =
  /** Refused for now: the client waits `retryAfterS` and tries again. */
  | { readonly kind: "429"; readonly retryAfterS: number; readonly scope?: "user" | "shared" | "global" }
  | { readonly kind: "5xx"; readonly status?: number }
  /** The connection is reset before the request is looked at, or after it was carried out. */
  | { readonly kind: "reset-before" | "reset-after" }
  /** The connection is closed in good order without an answer, before or after the work. */
  | { readonly kind: "close-before" | "close-after" }
  | { readonly kind: "delay"; readonly ms: number }
  /** Any other answer of the platform, by status and code. */
  | { readonly kind: "refuse"; readonly status: number; readonly code: number; readonly message?: string };

export type Fault = FaultKind & {
  /** Matched against the path below `/api/v10`. */
  readonly route: RegExp;
  readonly method?: string;
  /** How many requests it strikes; one unless given. */
  readonly times?: number;
};

export class Faults {
  #waiting: { readonly fault: Fault; left: number }[] = [];

  add(fault: Fault): void {
    this.#waiting.push({ fault, left: fault.times ?? 1 });
  }

  clear(): void {
    this.#waiting = [];
  }

  /** The fault that strikes this request, counted down by one: the earliest added that matches. */
  take(method: string, path: string): Fault | undefined {
    const struck = this.#waiting.find(
      ({ fault }) => fault.route.test(path) && (fault.method === undefined || fault.method === method),
    );
    if (struck === undefined) return undefined;
    struck.left -= 1;
    if (struck.left <= 0) this.#waiting = this.#waiting.filter((entry) => entry !== struck);
    return struck.fault;
  }
}
